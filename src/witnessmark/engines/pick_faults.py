"""A second reading of a choice: does it keep capacity, stocks and rules, and are its figures true?"""

from __future__ import annotations

from collections import Counter

from witnessmark.engines.pick import Picked, PickProblem


def pick_faults(problem: PickProblem, answer: Picked) -> tuple[str, ...]:
    """What is wrong with an answer, each in one line; nothing when it holds.

    >>> from witnessmark.engines.pick import PickItem
    >>> problem = PickProblem(items=(PickItem(minutes=50, values=(1,)),), capacity=40)
    >>> pick_faults(problem, Picked(items=(0,), values=(1,), safe=0, minutes=50))
    ('50 minutes are more than 40',)
    """
    wrong: list[str] = []
    chosen = frozenset(answer.items)
    if len(chosen) != len(answer.items) or not chosen <= set(range(len(problem.items))):
        return ("an item is chosen twice, or is none",)
    minutes = sum(problem.items[i].minutes for i in chosen)
    if minutes > problem.capacity:
        wrong.append(f"{minutes} minutes are more than {problem.capacity}")
    if minutes != answer.minutes:
        wrong.append(f"the minutes said are {answer.minutes}, they are {minutes}")
    used: Counter[int] = Counter()
    for item in chosen:
        for resource, amount in problem.items[item].uses:
            used[resource] += amount
    wrong += [f"resource {r} is used {n} times" for r, n in sorted(used.items()) if n > problem.stocks[r]]
    wrong += [
        f"item {rule.then} is missing beside {rule.if_all}"
        for rule in problem.rules
        if chosen.issuperset(rule.if_all) and rule.then not in chosen
    ]
    paid: Counter[int] = Counter()
    for item in chosen:
        paid.update(dict(enumerate(problem.items[item].values)))
    if tuple(paid[r] for r in range(problem.ranks)) != answer.values:
        wrong.append("the values said are not those of the items")
    unsafe = sum(
        any(c not in chosen and (o is None or o in chosen) for o, c in group.pairs)
        for group in problem.groups
    )
    if len(problem.groups) - unsafe != answer.safe:
        wrong.append("the groups said to be safe are not")
    return tuple(wrong)
