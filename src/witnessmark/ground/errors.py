"""Everything this program raises on purpose.

WitnessMarkError
├─ BadInput        a person can mend it: what was given, what would hold, what to do
├─ LostRace        somebody else wrote first: nothing of ours was written, nothing is lost
└─ RecordDamaged   the record does not read back whole: stop, change nothing
"""

from __future__ import annotations


class WitnessMarkError(Exception):
    """Base of every error raised on purpose."""


class BadInput(WitnessMarkError):
    """Something a person gave cannot be used; the three parts say what to do.

    >>> print(BadInput(given="torque is 50", holds="a number with its unit, as 50 N·m", do="Add the unit."))
    torque is 50. What would hold: a number with its unit, as 50 N·m. Add the unit.
    """

    def __init__(self, *, given: str, holds: str, do: str, near: tuple[str, ...] = ()) -> None:
        self.given = given
        self.holds = holds
        self.do = do
        self.near = near
        super().__init__(f"{given.rstrip('.')}. What would hold: {holds.rstrip('.')}. {do}")

    def parts(self) -> dict[str, object]:
        """The three parts and the near names as plain values, for JSON."""
        return {"given": self.given, "holds": self.holds, "do": self.do, "near": list(self.near)}


class LostRace(WitnessMarkError):
    """Another hand wrote to the record between our reading and our writing."""


class RecordDamaged(WitnessMarkError):
    """A line of the record cannot be read. Nothing was written."""
