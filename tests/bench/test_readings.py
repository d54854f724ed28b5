"""What a person types for the rarer inputs."""

import pytest

from witnessmark.bench import readings
from witnessmark.ground.errors import BadInput


@pytest.mark.parametrize(
    ("typed", "value"),
    [("68 cSt", 68.0), ("68mm2/s", 68.0), ("0,9 cSt", 0.9), ("1.1 St", 110.0), ("1 1/2 cSt", 1.5)],
)
def test_viscosities(typed: str, value: float) -> None:
    assert readings.viscosity("at40", typed).value == pytest.approx(value)


@pytest.mark.parametrize(
    ("typed", "value"),
    [("5 mm/s", 5.0), ("30 cm/min", 5.0), ("0.3 m/min", 5.0), ("12 ipm", 5.08), ("12 in/min", 5.08)],
)
def test_speeds(typed: str, value: float) -> None:
    assert readings.speed("speed", typed).value == pytest.approx(value)


def test_heat_and_loss_and_degrees() -> None:
    assert readings.heat("heat", "2 kJ/in").value == pytest.approx(2 / 25.4)
    assert readings.surface_loss("loss", "12 W/m²K").value == 12
    assert readings.degrees("sheet_margin", "5 F").value == pytest.approx(25 / 9)


@pytest.mark.parametrize("typed", ["32 cSt @ 40 C", "32 cSt at 40 C", "32cSt@104F"])
def test_a_viscosity_at_a_temperature(typed: str) -> None:
    assert readings.viscosity_point("at1", typed).value == pytest.approx((32, 40))


def test_cure_points_come_coldest_first() -> None:
    found = readings.cure_points("sheet", "24 h @ 20 C; 2 days @ 10 C, 40 min @ 86 °F").value
    assert found == (pytest.approx((10, 2880)), pytest.approx((20, 1440)), pytest.approx((30, 40)))


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("C 0.15 Mn 1.2", (("carbon", 0.15), ("manganese", 1.2))),
        ("C=0,15; Mn=1,2 %", (("carbon", 0.15), ("manganese", 1.2))),
        ("s235jr", "S235JR"),
        ("dc04", "DC04"),
    ],
)
def test_compositions(typed: str, value: object) -> None:
    assert readings.composition("composition", typed).value == value


@pytest.mark.parametrize("typed", ["steel, brass", "steel and brass", "Steel/brass, steel"])
def test_metals(typed: str) -> None:
    assert readings.metals("metals", typed).value == ("steel", "brass")


FILE = "# drips\nname, chance, minutes, finds\nrear seal, 40 %, 20, 80 %\nbreather, 0.2, 2 min, 0.95\n"


def test_suspects_from_a_file_and_from_a_line_are_the_same() -> None:
    line = "rear seal 40 % 20 min 80 %; breather 0.2 2 min 0.95;"
    from_file, from_line = (readings.suspects("suspects", text).value for text in (FILE, line))
    assert [(s.name, s.chance, s.minutes, s.finds) for s in from_file] == [
        (s.name, s.chance, s.minutes, s.finds) for s in from_line
    ]


def test_looks() -> None:
    found = readings.looks("results", "rear seal: dry; breather wet").value
    assert found == (("rear seal", False), ("breather", True))


HEADED = "Hour,Air F,Humidity %,Steel (°F)\n22:00,50,78 %,41\n23:00,10 C,80,\n"


def test_hours_with_their_own_units() -> None:
    first, second = readings.hours("forecast", HEADED).value
    assert first == ("22:00", pytest.approx(10), 78, pytest.approx(5))
    assert second == ("23:00", pytest.approx(10), 80, None)


@pytest.mark.parametrize(
    ("read", "typed"),
    [
        (readings.viscosity, "68"),
        (readings.viscosity, "68 furlongs"),
        (readings.viscosity, "thick"),
        (readings.viscosity_point, "32 cSt"),
        (readings.viscosity_point, "32 cSt @ 40"),
        (readings.speed, "5"),
        (readings.surface_loss, "10 W"),
        (readings.degrees, "3"),
        (readings.cure_points, "24 h"),
        (readings.cure_points, "24 @ 20 C"),
        (readings.cure_points, "24 h @ 20 C, 48 h @ 20 C"),
        (readings.composition, "Xx 0.2"),
        (readings.composition, "C 0.2 C 0.3"),
        (readings.composition, "rusty"),
        (readings.metals, " , "),
        (readings.suspects, "rear seal"),
        (readings.suspects, "name,chance\nrear seal,0.2\n"),
        (readings.suspects, "name,chance,minutes,finds\n,0.2,3,0.5\n"),
        (readings.looks, "rear seal maybe"),
        (readings.looks, " "),
        (readings.hours, "time,air\n22:00,9\n"),
        (readings.hours, "time,air,humidity\n"),
        (readings.hours, "time,air,humidity\n22:00,cold,78\n"),
        (readings.hours, "time,air,humidity\n22:00,9 N,78\n"),
    ],
)
def test_what_cannot_be_read_is_refused_in_three_parts(read: object, typed: str) -> None:
    with pytest.raises(BadInput) as trouble:
        read("it", typed)  # type: ignore[operator]
    assert trouble.value.given
    assert trouble.value.holds
    assert trouble.value.do
