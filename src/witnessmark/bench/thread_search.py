"""Which thread is this: measured sizes against every tabled thread, forgiving of wear."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.bench.thread_list import Thread, all_threads
from witnessmark.bench.threads import ten_pitches
from witnessmark.ground.units import Degree, Mm, demand_range

PITCH_REACH = 0.04
ANGLE_REACH = 6.0
CLEAR = 3.0
"""By how much the next one's cost must be greater for the best to stand alone."""


class Candidate(Struct, frozen=True, kw_only=True):
    """One thread that could be it.

    off_by  mm, measured less nominal: over the crests of a bolt, or in the bore of a nut
    cost    how badly it agrees; 0 is what a bolt in fair order would read
    """

    thread: Thread
    off_by: Mm
    cost: float


def identify(
    diameter: Mm, pitch: Mm, angle: Degree | None = None, across_flats: Mm | None = None, *, internal: bool
) -> tuple[Candidate, ...]:
    """Threads that agree with what was measured, best first.

    diameter      mm, over the crests of a bolt, or the bore of a nut
    pitch         mm, from a gauge or over ten threads
    angle         ° between the flanks, or None
    across_flats  mm, of the head or nut, or None; heads get changed, so it weighs little

    A worn crest reads small on a bolt and large in a nut: that side is forgiven, the other is not.
    Raises BadInput for sizes no thread has.
    """
    demand_range("diameter", diameter, "mm", 1, 100, "Measure over the crests again.")
    demand_range("pitch", pitch, "mm", 0.2, 8, "Measure over ten threads and divide by ten.")
    if angle is not None:
        demand_range("angle", angle, "°", 20, 90, "It is 60, 55 or 47.5 on most vehicles.")
    if across_flats is not None:
        demand_range("across_flats", across_flats, "mm", 2, 120, "Measure flat to flat.")
    found = (_candidate(t, diameter, pitch, angle, across_flats, internal=internal) for t in all_threads())
    return tuple(sorted((c for c in found if c), key=lambda c: (c.cost, c.thread.name)))


def _candidate(
    thread: Thread, diameter: Mm, pitch: Mm, angle: Degree | None, flats: Mm | None, *, internal: bool
) -> Candidate | None:
    wrong_pitch = abs(pitch / thread.pitch - 1)
    off = diameter - (thread.bore if internal else thread.diameter)
    worn = off if internal else -off
    reach = 0.14 + 0.28 * thread.pitch
    if wrong_pitch > PITCH_REACH or not -0.1 <= worn <= reach:
        return None
    if angle is not None and abs(angle - thread.form.angle) > ANGLE_REACH:
        return None
    cost = _size_cost(worn, thread.pitch) + (wrong_pitch / 0.01) ** 2
    if angle is not None:
        cost += ((angle - thread.form.angle) / 2) ** 2
    if flats is not None and thread.jaw is not None:
        cost += min(4.0, (min(abs(flats - j) for j in thread.jaw) / 0.4) ** 2)
    return Candidate(thread=thread, off_by=Mm(off), cost=cost)


def _size_cost(worn: float, pitch: float) -> float:
    """Nothing at the size a new part has, slow up to nominal and where worn, steep beyond nominal."""
    usual = 0.03 + 0.06 * pitch
    cost = ((worn - usual) / (0.06 + 0.1 * pitch)) ** 2
    return cost if worn >= 0 else cost + (worn / (0.03 + 0.03 * pitch)) ** 2


def tell_apart(one: Thread, other: Thread) -> str:
    """What to look at when two threads both agree.

    >>> from witnessmark.bench.thread_list import find_thread
    >>> tell_apart(find_thread("M8 x 1"), find_thread("5/16 BSC"))
    'ten pitches 10.00 mm against 9.77 mm; crests 8.00 mm against 7.94 mm, where they are not worn'
    """
    signs = []
    ours, theirs = ten_pitches(one.pitch), ten_pitches(other.pitch)
    if abs(ours - theirs) >= 0.15:
        signs.append(f"ten pitches {ours:.2f} mm against {theirs:.2f} mm")
    if abs(one.form.angle - other.form.angle) >= 2:
        signs.append(
            f"flank angle {one.form.angle:g}° against {other.form.angle:g}°: hold a gauge to the light"
        )
    if abs(one.diameter - other.diameter) >= 0.05:
        signs.append(f"crests {one.diameter:.2f} mm against {other.diameter:.2f} mm, where they are not worn")
    if one.spanner and other.spanner and one.spanner != other.spanner:
        signs.append(f"spanner {one.spanner} against {other.spanner}")
    return "; ".join(signs) or "nothing on the thread tells them apart; they pass for each other"


def look_alikes(thread: Thread) -> tuple[Thread, ...]:
    """Threads a quick look takes for this one, most alike first: pitch within 12 %, crests within 6 %."""
    likes = []
    for other in all_threads():
        pitch, crest = abs(other.pitch / thread.pitch - 1), abs(other.diameter / thread.diameter - 1)
        if other.name != thread.name and pitch <= 0.12 and crest <= 0.06:
            likes.append((pitch + crest, other.name, other))
    return tuple(other for _, _, other in sorted(likes, key=lambda like: like[:2]))
