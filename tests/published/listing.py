"""Every published check, gathered from the files beside this one."""

from __future__ import annotations

from collections import Counter
from importlib import import_module
from pathlib import Path
from types import ModuleType

HERE = Path(__file__).parent


def modules() -> list[ModuleType]:
    """The files that hold a source."""
    names = sorted(path.stem for path in HERE.glob("test_*.py"))
    found = [import_module(f"tests.published.{name}") for name in names]
    return [module for module in found if hasattr(module, "SOURCE")]


def by_question() -> Counter[str]:
    """How many values count for each question."""
    return Counter(one.question for module in modules() for one in module.PRINTED)


def report() -> str:
    """Sources, standing, and numbers counted and not counted."""
    lines = []
    for module in modules():
        s = module.SOURCE
        where = ", ".join(p for p in (s.issuer, s.title, s.where, s.edition) if p)
        beside = len(getattr(module, "BESIDE", ()))
        wrong = len(getattr(module, "NOT_REPRODUCED", ()))
        lines.append(f"{where} [{s.standing}, seen: {s.seen}, read {s.read}]")
        lines.append(f"    counted {len(module.PRINTED)}, beside {beside}, not reproduced {wrong}")
    questions = by_question()
    lines += ["", *(f"{n:4d}  {question}" for question, n in sorted(questions.items()))]
    return "\n".join([*lines, f"{questions.total():4d}  values count, over {len(questions)} questions"])
