"""The rule of the session sheet as a loop in plain Python: what compiled loops are compared with.

It is written from the rule's description alone and shares nothing with `witnessmark.engines.dispatch`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

SPELL = 60
LEAST_PART = 5


class Future:
    """One future: what each operation takes, what it turns up, when things come, who is there."""

    def __init__(
        self,
        rows: Sequence[dict[str, Any]],
        sessions: Sequence[tuple[int, int]],
        *,
        taken: Sequence[int],
        extra: Sequence[int],
        wait: Sequence[int],
        arrival: Sequence[int],
        held: Sequence[int],
        helped: Sequence[int],
    ) -> None:
        self.rows, self.sessions = rows, sessions
        self.extra, self.wait, self.held, self.helped = extra, wait, held, helped
        self.left = list(taken)
        self.guess = [row["planned"] for row in rows]
        self.free = [max((arrival[n] for n in row.get("needs", ())), default=0) for row in rows]
        self.stage = ["untouched"] * len(rows)
        self.done: dict[int, tuple[int, int]] = {}
        self.begun: list[int] = []
        self.todo = list(range(len(rows)))
        self.longest = max(minutes for _, minutes in sessions)

    def run(self) -> dict[int, tuple[int, int]]:
        """For each operation that ended: its session, and after how many minutes of it."""
        for number in range(len(self.sessions)):
            if not self.todo:
                break
            if self.held[number]:
                self._session(number)
        return self.done

    def _session(self, number: int) -> None:
        self.number = number
        self.start, self.full = self.sessions[number]
        self.spare = self.full
        self.here = {i for i in self.todo if self._could(i)}
        for i in [i for i in self.begun if i not in self.done]:
            if self.free[i] <= self._clock() and self._hands(i):
                self._half_done(i)
        if self.helped[number]:
            for i in list(self.todo):
                if self.rows[i].get("hands", 1) > 1:
                    self._begin(i)
        for i in list(self.todo):
            self._begin(i)
        self.begun = [i for i in self.begun if i not in self.done]
        self.todo = [i for i in self.todo if i not in self.done]

    def _clock(self) -> int:
        return int(self.start + self.full - self.spare)

    def _hands(self, i: int) -> bool:
        return self.rows[i].get("hands", 1) < 2 or bool(self.helped[self.number])

    def _could(self, i: int) -> bool:
        """What comes before is done, and its things have come."""
        clock = self._clock() if self.spare < self.full else self.start
        return self.free[i] <= clock and all(b in self.done for b in self.rows[i].get("before", ()))

    def _asks(self, i: int) -> int:
        row = self.rows[i]
        whole = row["planned"] + sum(self.rows[b]["planned"] for b in row.get("bound", ()))
        return int(min(whole, SPELL if row.get("long") else self.longest))

    def _begin(self, i: int) -> None:
        if i in self.done or self.stage[i] != "untouched" or i not in self.here or not self._hands(i):
            return
        long, guess = self.rows[i].get("long"), self.guess[i]
        if self._asks(i) > self.spare or (long and self.full >= guess > self.spare):
            return
        self._give(i, SPELL if long and guess > self.full else None)

    def _half_done(self, i: int) -> None:
        if self.rows[i].get("long") and self.guess[i] > self.full:
            if self.spare >= SPELL:
                self._give(i, SPELL)
        elif min(self.guess[i], self.full) <= self.spare:
            self._give(i, None)

    def _give(self, i: int, most: int | None, *, forced: bool = False) -> None:
        ends = forced or (self.rows[i].get("whole") and self.stage[i] != "turned up")
        over = self._spend(i, most, ends=bool(ends))
        if over and self.stage[i] != "turned up" and self.extra[i]:
            self._stand(i, "turned up")
            self.left[i], self.guess[i] = self.extra[i], self.rows[i].get("more", 0)
            self.free[i] = self._clock() + self.wait[i]
            over = not self.wait[i] and self.guess[i] <= self.spare and self._spend(i, None, ends=False)
        elif not over:
            self._stand(i, "turned up" if self.stage[i] == "turned up" else "half done")
        if over:
            self._end(i)

    def _spend(self, i: int, most: int | None, *, ends: bool) -> bool:
        time = self.left[i] if most is None else min(self.left[i], most)
        time = time if ends else min(time, self.spare)
        self.spare = max(0, self.spare - time)
        self.left[i] -= time
        self.guess[i] = max(self.guess[i] - time, self.rows[i]["planned"] // LEAST_PART, 1)
        return self.left[i] == 0

    def _stand(self, i: int, stage: str) -> None:
        if self.stage[i] == "untouched":
            self.begun.append(i)
        self.stage[i] = stage

    def _end(self, i: int) -> None:
        self.done[i] = (self.number, self.full - self.spare)
        bound = self.rows[i].get("bound", ())
        for j in self.todo:
            if j not in self.done and i in self.rows[j].get("before", ()) and self._could(j):
                self.here.add(j)
        for b in bound:
            if b not in self.done and all(p in self.done for p in self.rows[b].get("before", ())):
                self.here.discard(b)
                self._give(b, None, forced=True)
