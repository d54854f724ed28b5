"""Sizes as found and measured: the last one told of each thing, threads and thicknesses apart."""

from __future__ import annotations

from tests.building import described, state_of
from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.journal.facts import AnyFact
from witnessmark.state.sizes import Sizes
from witnessmark.vehicle.things import Joint, Part

SEAL = Joint(name="hub seal, left", kind="shaft-seal")
SEAM = Joint(name="floor seam", kind="welded-patch", holds=("floor section",))


def sizes(*facts: AnyFact) -> Sizes:
    things = described(SEAL, SEAM, Part(name="floor section"), Part(name="steering box shims"))
    return state_of(things, *facts).sizes


def mm(typed: str) -> Quantity:
    return Quantity(f"{typed} mm", float(typed), "mm")


def test_the_last_size_told_of_a_thing_counts_with_its_line() -> None:
    got = sizes(
        f.Found(at=("hub seal, left",), condition="worn", size="44.5 x 65 x 8"),
        f.Measured(at=("hub seal, left",), size="44.5 x 65 x 10 mm"),
    )
    found = got.of["hub seal, left", ""]
    assert (found.text, found.line) == ("44.5 x 65 x 10 mm", 4)


def test_a_size_found_on_an_item_is_the_items() -> None:
    got = sizes(f.Found(at=("hub seal, left",), condition="bent", item="split pin", size="3.2 x 50"))
    assert got.of["hub seal, left", "split pin"].text == "3.2 x 50"
    assert ("hub seal, left", "") not in got.of


def test_a_thread_is_told_from_a_size() -> None:
    got = sizes(f.Measured(at=("hub seal, left",), size="44,5 x 65 x 8, 3/8 UNF"))
    assert got.of["hub seal, left", ""].text == "44,5 x 65 x 8"
    assert got.threads["hub seal, left"].text == "3/8 UNF"


def test_a_thickness_is_kept_only_where_it_is_called_one() -> None:
    got = sizes(
        f.Measured(at=("floor section",), what="thickness", figures=(mm("1.2"),)),
        f.Measured(at=("floor seam",), figures=(mm("620"),)),
        f.Measured(at=("hub seal, left",), what="depth", figures=(mm("4"),)),
    )
    assert {name: thick.quantity.typed for name, thick in got.thick.items()} == {"floor section": "1.2 mm"}
    assert got.of == {}


def test_a_shim_is_known_by_its_thickness() -> None:
    got = sizes(f.Measured(at=("steering box shims",), figures=(mm("0.25"),)))
    assert got.of["steering box shims", ""].text == "0.25 mm"


def test_a_shims_other_dimensions_are_no_size() -> None:
    got = sizes(f.Measured(at=("steering box shims",), what="width", figures=(mm("30"),)))
    assert got.of == {}


def test_plugs_are_kept_as_they_were_counted() -> None:
    got = sizes(f.Welded(at=("floor seam",), plugs=16), f.Welded(at=("hub seal, left",)))
    assert got.plugs == {"floor seam": 16}
