"""Lines as a tired person types them, each with the reading that was wanted of it (invented, no source)."""

from __future__ import annotations

from typing import Any

import pytest

from tests.words.judging import faults, read, rows

PRACTICE = rows("practice_lines.json")
INVENTED = rows("invented_lines.json")


@pytest.mark.parametrize("row", PRACTICE + INVENTED, ids=lambda row: row["line"])
def test_a_line_is_never_read_wrongly_and_surely(row: dict[str, Any]) -> None:
    best = read(row).best
    assert not (best.sure and faults(row, best)), (best.sentence, faults(row, best))


@pytest.mark.parametrize("lines", [PRACTICE, INVENTED], ids=["practice", "invented"])
def test_nineteen_lines_in_twenty_are_read_as_wanted(lines: list[dict[str, Any]]) -> None:
    wrong = [row["line"] for row in lines if faults(row, read(row).best)]
    assert len(wrong) <= len(lines) // 20, wrong


@pytest.mark.parametrize("lines", [PRACTICE, INVENTED], ids=["practice", "invented"])
def test_most_lines_need_no_second_look(lines: list[dict[str, Any]]) -> None:
    sure = sum(read(row).best.sure for row in lines)
    assert sure * 10 >= len(lines) * 7


@pytest.mark.parametrize("row", PRACTICE, ids=lambda row: row["line"])
def test_an_unsure_line_says_why_and_offers_other_ways(row: dict[str, Any]) -> None:
    understood = read(row)
    assert bool(understood.best.doubts) != understood.best.sure
    assert len(understood.others) <= 2
    if not understood.best.sure and understood.best.verb != "remarked":
        assert understood.others
    assert all(other.facts != understood.best.facts and not other.sure for other in understood.others)
