"""What is bought, from whom, how many and for how much (common practice, no source)."""

from __future__ import annotations

from typing import Any

import pytest

from tests.words.garage import best


@pytest.mark.parametrize(
    ("line", "told"),
    [
        (
            "Tansyfield Steel offers 1.2 mm sheet £18 post £9, 4 days",
            {"item": "sheet", "supplier": "Tansyfield Steel", "price": 18.0, "post": 9.0, "days": 4.0},
        ),
        (
            "tansyfield steel offers 1.2 mm sheet £18 post £9, 4 days",
            {"item": "sheet", "supplier": "tansyfield steel"},
        ),
        (
            "ordered 2 pinion seals from Ottermere Seals £14",
            {"item": "pinion seal", "number": 2, "supplier": "Ottermere Seals", "at": ("pinion seal",)},
        ),
        ("ordered fuel hose, Saltbeck Rubber, 7.60", {"supplier": "Saltbeck Rubber", "price": 7.6}),
        ("ordered 4 bushes off Hatherdown Rubbers", {"supplier": "Hatherdown Rubbers", "number": 4}),
        ("paid £85 to the plater", {"amount": 85.0, "to": "plater", "what": ""}),
        ("paid two pound fifty for split pins", {"amount": 2.5, "what": "split pins"}),
        ("own 12 locking nuts", {"item": "locking nut", "number": 12}),
        ("own 4 m fuel hose", {"item": "fuel hose", "size": "4 m"}),
        ("own 2 L gear oil", {"item": "gear oil", "size": "2 L"}),
        ("ordered 4 u-bolt nuts from Dunnock Fasteners", {"item": "u-bolt nut", "number": 4}),
    ],
)
def test_a_line_of_buying_gives_its_fields(line: str, told: dict[str, Any]) -> None:
    fact = best(line).fact
    assert {key: getattr(fact, key) for key in told} == told


def test_the_sentence_says_several_in_the_plural() -> None:
    assert best("own 12 locking nuts").sentence == "Owned: 12 locking nuts."


@pytest.mark.parametrize("line", ["ordered 3 hub seals from Ottermere Seals", "own 12 locking nuts"])
def test_it_reads_back_as_the_same_fact(line: str) -> None:
    reading = best(line)
    assert best(reading.sentence).facts == reading.facts
