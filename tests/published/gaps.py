"""Packs for a measured gap, as service manuals work them."""

from witnessmark.bench.shim_search import stacks_between, to_microns
from witnessmark.bench.shims import pack_for
from witnessmark.ground.units import Mm


def pack(measured: float, wanted: float, fitted: float = 0.0) -> float:
    """mm of shims."""
    return pack_for(Mm(measured), Mm(wanted), Mm(fitted))


def stack(total: float, steps: tuple[float, ...]) -> str:
    """The fewest shims of these steps that make a total, thickest first."""
    found = stacks_between([(step, 4) for step in steps], to_microns(total), to_microns(total))
    return found[0].words()
