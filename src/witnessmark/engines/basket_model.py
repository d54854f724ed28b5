"""The basket as an integer programme."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil

from witnessmark.engines.basket import BasketProblem, lost_sessions, parcels, post_of
from witnessmark.engines.mixed import Programme, Solved


class BasketModel:
    """Packs of each offer, one tier for each sender, a column for each session that could be lost."""

    def __init__(self, problem: BasketProblem, unmet: tuple[int, ...]) -> None:
        self.problem = problem
        self.most = problem.most_pieces()
        self.model = Programme()
        self.pack = {
            number: self.model.column(offer.price + offer.duty, upper=problem.most_packs(offer))
            for number, offer in enumerate(problem.offers)
            if offer.need >= 0
        }
        self.by_supplier: dict[int, list[int]] = {}
        for number in self.pack:
            self.by_supplier.setdefault(problem.offers[number].supplier, []).append(number)
        self.tier = {
            (supplier, number): self.model.column(tier.post)
            for supplier in self.by_supplier
            for number, tier in enumerate(problem.suppliers[supplier].tiers)
        }
        sessions = sorted({s for number in self.pack for s in problem.offers[number].misses})
        self.lost = {session: self.model.column(problem.worth) for session in sessions}
        self._enough(set(unmet))
        for supplier, numbers in self.by_supplier.items():
            self._parcel(supplier, numbers)
        self._sessions()

    def _enough(self, unmet: set[int]) -> None:
        """Enough of each thing, and no more than full packs make unavoidable."""
        for need, numbers in self._by_need().items():
            if need in unmet:
                continue
            needed, most = self.problem.needs[need], self.most[need]
            row = {self.pack[n]: float(self.problem.offers[n].pack) for n in numbers}
            if len(set(row.values())) == 1:
                self.model.exactly(ceil(needed / row[self.pack[numbers[0]]]), dict.fromkeys(row, 1.0))
                continue
            self.model.at_least(needed, {c: min(pieces, needed) for c, pieces in row.items()})
            self.model.at_most(most, row)

    def _by_need(self) -> dict[int, list[int]]:
        found: dict[int, list[int]] = {}
        for number in self.pack:
            found.setdefault(self.problem.offers[number].need, []).append(number)
        return found

    def _parcel(self, supplier: int, numbers: list[int]) -> None:
        """One tier where anything is sent; the tier's weight and goods, and the minimum, are kept."""
        sender, model, offers = self.problem.suppliers[supplier], self.model, self.problem.offers
        tiers = {number: self.tier[supplier, number] for number in range(len(sender.tiers))}
        model.at_most(1, dict.fromkeys(tiers.values(), 1.0))
        for number in numbers:
            most = self.problem.most_packs(offers[number])
            able = [
                column
                for n, column in tiers.items()
                if (sender.tiers[n].most_weight or offers[number].weight) >= offers[number].weight
            ]
            model.at_most(0, {self.pack[number]: 1.0, **dict.fromkeys(able, -float(most))})
        heaviest = sum(self.problem.most_packs(offers[n]) * offers[n].weight for n in numbers)
        if any(tier.most_weight is not None for tier in sender.tiers):
            limits = {
                column: -float(min(heaviest, sender.tiers[n].most_weight or 0))
                if sender.tiers[n].most_weight is not None
                else -float(heaviest)
                for n, column in tiers.items()
            }
            weights = {self.pack[n]: float(offers[n].weight) for n in numbers if offers[n].weight}
            model.at_most(0, {**weights, **limits})
        least = {
            column: -float(max(sender.minimum, sender.tiers[n].least_goods)) for n, column in tiers.items()
        }
        if any(least.values()):
            goods = {self.pack[n]: float(offers[n].price) for n in numbers}
            model.at_least(0, {**goods, **least})

    def _sessions(self) -> None:
        """A session is lost where anything bought misses it: told for all offers of a need at once."""
        for need, numbers in self._by_need().items():
            most = self.most[need]
            offers = {n: self.problem.offers[n] for n in numbers}
            for session in sorted({s for offer in offers.values() for s in offer.misses}):
                late = {self.pack[n]: float(o.pack) for n, o in offers.items() if session in o.misses}
                self.model.at_most(0, {**late, self.lost[session]: -float(most)})
        if self.problem.most_lost is not None and self.lost:
            self.model.at_most(self.problem.most_lost, dict.fromkeys(self.lost.values(), 1.0))

    def solve(
        self, first: Mapping[int, int] | None, *, nodes: int, seconds: float | None, seed: int
    ) -> Solved:
        """Solve it, from a basket known already."""
        hint = self._columns(first) if first is not None else ()
        return self.model.solve(nodes=nodes, seconds=seconds, gap=0.9, hint=hint, seed=seed)

    def _columns(self, packs: Mapping[int, int]) -> list[float]:
        values = [0.0] * len(self.model.costs)
        for number, count in packs.items():
            values[self.pack[number]] = float(count)
        for supplier, parcel in parcels(self.problem, packs).items():
            fitting = post_of(self.problem.suppliers[supplier], *parcel)
            if fitting is not None:
                values[self.tier[supplier, fitting[0]]] = 1.0
        for session in lost_sessions(self.problem, packs):
            values[self.lost[session]] = 1.0
        return values

    def packs(self, solved: Solved) -> dict[int, int] | None:
        """The proposal rounded to whole packs; None where there is none."""
        if not solved.values:
            return None
        counted = {number: round(solved.values[column]) for number, column in self.pack.items()}
        return {number: count for number, count in counted.items() if count > 0}
