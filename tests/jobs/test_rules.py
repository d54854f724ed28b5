"""Order rules of the trade, each on a vehicle small enough to see. Common practice, no source."""

from itertools import pairwise

from tests.building import described
from tests.jobs.garages import from_lists
from tests.jobs.test_jobs import comes_before, ids, jobs, operation
from witnessmark.journal import facts as f
from witnessmark.journal.facts import AnyFact
from witnessmark.vehicle.things import Joint, Part

SECTION = from_lists(("outrigger-repair", "left rear"))
AXLE = from_lists(("drive-axle", ""))
SILL = (
    Joint(name="sill patch", kind="welded-patch", assembly="sill"),
    Joint(name="sill seam", kind="seam-sealing", assembly="sill"),
    Joint(name="sill paint", kind="primed-metal", assembly="sill"),
    Joint(name="door seal", kind="door-seal", assembly="sill"),
    Joint(name="loom", kind="wiring-splice", assembly="sill"),
    Joint(name="sill wax", kind="cavity-wax", assembly="sill"),
)
OPEN_SILL: tuple[AnyFact, ...] = (described(*SILL), *(f.Opened(at=(j.name,)) for j in SILL))


def test_weld_before_coat_before_loom_and_rubber_and_wax() -> None:
    found = jobs(*OPEN_SILL)
    order = ["sill patch", "sill seam", "sill paint", "door seal", "sill wax"]
    for earlier, later in pairwise(order):
        assert comes_before(found, f"close/{earlier}", f"close/{later}")
    assert comes_before(found, "close/sill paint", "close/loom")


def test_a_weld_at_another_place_waits_for_nothing_here() -> None:
    elsewhere = described(Joint(name="floor patch", kind="welded-patch", assembly="floor"))
    found = jobs(*OPEN_SILL, elsewhere, f.Opened(at=("floor patch",)))
    assert not comes_before(found, "close/sill paint", "close/floor patch")
    assert not comes_before(found, "close/floor patch", "close/sill paint")


def test_brace_before_cutting_and_off_after_welding() -> None:
    found = jobs(*SECTION, f.Wanted(at=("closing plate seam, left rear",), job="make good"))
    place = "outrigger repair, left rear"
    assert comes_before(found, f"brace/{place}", "open/closing plate seam, left rear")
    assert comes_before(found, "close/closing plate seam, left rear", f"unbrace/{place}")


def test_a_brace_that_stands_is_not_put_in_again() -> None:
    wanted = f.Wanted(at=("closing plate seam, left rear",), job="make good")
    found = jobs(*SECTION, wanted, f.Braced(at=("outrigger repair, left rear",)))
    assert not any(i.startswith("brace/outrigger") and "brace outrigger" in operation(found, i).what
                   for job in found.values() for i in ids(job))  # fmt: skip


def test_trial_fit_before_coat() -> None:
    found = jobs(*OPEN_SILL)
    assert comes_before(found, "dry fit/sill", "close/sill paint")
    assert not any(i.startswith("dry fit") for job in jobs(described(SILL[2])).values() for i in ids(job))


def test_hot_work_has_its_way_cleared_before_and_is_watched_after() -> None:
    found = jobs(*OPEN_SILL)
    assert comes_before(found, "clear/sill", "close/sill patch")
    watch = operation(found, "watch/sill")
    assert "close/sill patch" in watch.follows
    assert watch.minutes.likely == 60
    assert not watch.put_down
    assert "fire-watch" in watch.cautions
    assert "hot-work" in operation(found, "clear/sill").cautions


def test_what_is_named_to_be_cleared_is_what_still_stands_there() -> None:
    tank = (Joint(name="tank straps", kind="fuel-tank", assembly="sill"), SILL[0])
    standing = jobs(described(*tank), f.Opened(at=("sill patch",)))
    assert "tank straps" in operation(standing, "clear/sill").what
    gone = jobs(described(*tank), f.Opened(at=("sill patch",)), f.Opened(at=("tank straps",)))
    assert "tank straps" not in operation(gone, "clear/sill").what


def test_the_inside_is_coated_before_it_is_welded_shut() -> None:
    found = jobs(*SECTION, f.Wanted(at=("section inside coat, left rear",), job="coat"))
    opened = found["coat/section inside coat, left rear"].opens
    skin = next(j for j in opened if j.startswith(("outer skin plug welds", "closing plate seam")))
    assert comes_before(found, "close/section inside coat, left rear", f"close/{skin}")


def test_the_fill_plug_is_proven_to_open_before_the_drain() -> None:
    drain = Joint(name="drain plug", kind="fill-and-drain-plug", assembly="gearbox")
    fill = Joint(name="fill plug", kind="fill-and-drain-plug", assembly="gearbox")
    found = jobs(described(drain, fill), f.Wanted(at=("drain plug",), job="renew"))
    assert comes_before(found, "try/fill plug", "open/drain plug")
    both = jobs(described(drain, fill), f.Wanted(at=("drain plug", "fill plug"), job="renew"))
    assert comes_before(both, "open/fill plug", "open/drain plug")
    out = jobs(described(drain, fill), f.Opened(at=("fill plug",)), f.Wanted(at=("drain plug",), job="renew"))
    assert not any(i.startswith("try/") for job in out.values() for i in ids(job))


def test_a_case_is_drained_before_its_cover_is_opened() -> None:
    found = jobs(*AXLE, f.Wanted(at=("axle cover gasket",), job="renew"))
    assert comes_before(found, "open/axle drain plug", "open/axle cover gasket")
    assert comes_before(found, "open/axle fill plug", "open/axle drain plug")


def test_both_sides_of_an_axle_are_asked_together() -> None:
    both = from_lists(("drum-brake-corner", "left rear"), ("drum-brake-corner", "right rear"))
    left = f.Wanted(at=("wheel cylinder fixings, left rear",), job="renew")
    found = jobs(*both, left)
    job = found["renew/wheel cylinder fixings, left rear"]
    assert "wheel cylinder fixings, right rear" in job.open_anyway
    assert "right rear too" in operation(found, "work/wheel cylinder fixings, left rear/renew").note
    right = f.Wanted(at=("wheel cylinder fixings, right rear",), job="renew")
    asked = jobs(*both, left, right)
    assert "too" not in operation(asked, "work/wheel cylinder fixings, left rear/renew").note


def test_it_is_photographed_and_the_other_side_looked_at_before_it_is_stripped() -> None:
    both = from_lists(("drum-brake-corner", "left rear"), ("drum-brake-corner", "right rear"))
    found = jobs(*both, f.Wanted(at=("wheel nuts, left rear",), job="renew"))
    shot = operation(found, "photograph/wheel nuts, left rear")
    assert "look at wheel nuts, right rear first" in shot.what
    assert shot.id in operation(found, "open/wheel nuts, left rear").after
    known = jobs(
        *both, f.Opened(at=("wheel nuts, left rear",)), f.Closed(at=("wheel nuts, left rear",), seen=True),
        f.Wanted(at=("wheel nuts, left rear",), job="renew"),
    )  # fmt: skip
    assert not any(i.startswith("photograph/") for job in known.values() for i in ids(job))


def test_the_pedal_is_held_when_every_union_is_closed_and_bled() -> None:
    both = from_lists(("drum-brake-corner", "left rear"), ("drum-brake-corner", "right rear"))
    found = jobs(
        *both, f.Opened(at=("brake pipe union, left rear",)), f.Opened(at=("brake pipe union, right rear",))
    )
    proof = "prove/pedal hold/brake pipe union, left rear"
    assert operation(found, proof).hands == 2
    for before in (
        "close/brake pipe union, left rear",
        "close/brake pipe union, right rear",
        "put_right/bleed brakes",
    ):
        assert comes_before(found, before, proof)


def test_no_petrol_is_let_in_while_a_fuel_joint_stands_open() -> None:
    tank = from_lists(("fuel-tank-and-lines", ""))
    found = jobs(*tank, f.Opened(at=("tank straps",)), f.Opened(at=("tank outlet union",)))
    brim = "prove/brim fill/tank straps"
    assert comes_before(found, "close/tank outlet union", brim)


def test_oil_stays_in_its_own_case() -> None:
    plugs = [
        Joint(name=f"{case} plug", kind="fill-and-drain-plug", assembly=case) for case in ("gearbox", "axle")
    ]
    found = jobs(described(*plugs), *(f.Opened(at=(plug.name,)) for plug in plugs))
    proof = next(o.id for o in found["close/gearbox"].operations if o.id.startswith("prove/no weep"))
    assert comes_before(found, "close/gearbox plug", proof)
    assert not comes_before(found, "close/axle plug", proof)


def test_nothing_is_filled_while_its_case_stands_open() -> None:
    found = jobs(
        *AXLE, f.Drained(at=("axle",)), f.Opened(at=("pinion seal",)), f.Opened(at=("axle drain plug",))
    )
    assert comes_before(found, "close/pinion seal", "fluid/fill axle")
    assert comes_before(found, "close/axle drain plug", "fluid/fill axle")


def test_the_drain_is_closed_before_the_fill_plug() -> None:
    plugs = (f.Opened(at=("axle drain plug",)), f.Opened(at=("axle fill plug",)))
    found = jobs(*AXLE, *plugs)
    assert comes_before(found, "close/axle drain plug", "close/axle fill plug")


def test_blanking_plugs_come_out_before_the_joint_is_closed() -> None:
    union = described(Joint(name="pipe union", kind="brake-union"), Part(name="pipe"))
    found = jobs(union, f.Opened(at=("pipe union",)), f.Blanked(at=("pipe union",), number=2))
    assert comes_before(found, "blank/blanks pipe union", "close/pipe union")


def test_every_rule_is_used() -> None:
    """A rule nobody calls is a note, not a rule."""
    from witnessmark.jobs import rules, rules_metal

    written = {
        name
        for module in (rules, rules_metal)
        for name, thing in vars(module).items()
        if callable(thing) and thing.__module__ == module.__name__ and not name.startswith("_")
    } - {"order_by_trade"}
    assert written == {rule.__name__ for rule in rules.RULES}
