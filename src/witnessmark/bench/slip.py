"""A slip: the answer to one question of the bench, as a plain value that can be shown anywhere."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal, TypeAlias

from msgspec import Struct, to_builtins

from witnessmark.tables.sources import cautions, sources

Verdict: TypeAlias = Literal["fits", "marginal", "no"]
Plain: TypeAlias = float | str | bool | None
Row: TypeAlias = Mapping[str, Plain]


class Asked(Struct, frozen=True):
    """One thing that was given: the words as typed, and what they were understood to be.

    value is a number in `unit`, a word, or a list of these
    """

    typed: str
    value: Any
    unit: str = ""


class Band(Struct, frozen=True):
    """A number with its unit; low and high only where the physics or the tolerances scatter it."""

    value: float
    unit: str
    low: float | None = None
    high: float | None = None


Result: TypeAlias = Band | str | tuple[Row, ...]


class Slip(Struct, frozen=True, kw_only=True):
    """What was asked, what came out, and what stands behind it.

    results   snake_case key to a Band, a text, or rows of plain values
    units     unit of each key of the rows
    because   one sentence: why the verdict, or what the answer leans on
    working   the steps, each with its numbers in it
    sources   keys of tables/sources
    cautions  keys of tables/cautions.toml
    picture   SVG text to scale, or None
    found     False where no answer exists; the slip then says why
    """

    subject: str
    question: str
    results: Mapping[str, Result]
    because: str
    asked: Mapping[str, Asked] = {}
    units: Mapping[str, str] = {}
    verdict: Verdict | None = None
    working: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    picture: str | None = None
    found: bool = True

    def band(self, name: str) -> Band:
        """A result that is a number."""
        found = self.results[name]
        if not isinstance(found, Band):
            raise TypeError(f"{name} is not a number with a unit")
        return found

    def rows(self, name: str = "rows") -> tuple[Row, ...]:
        """A result that is a list of rows."""
        found = self.results[name]
        if not isinstance(found, tuple):
            raise TypeError(f"{name} is not a list of rows")
        return found


def to_plain(slip: Slip) -> dict[str, Any]:
    """The slip as plain values, as the JSON of the command gives it."""
    return {
        "subject": slip.subject,
        "question": slip.question,
        "asked": {name: to_builtins(one) for name, one in slip.asked.items()},
        "results": {name: _plain_result(result) for name, result in slip.results.items()},
        "units": dict(slip.units),
        "verdict": slip.verdict,
        "because": slip.because,
        "working": list(slip.working),
        "sources": [_plain_source(key) for key in slip.sources],
        "cautions": [{"id": key, "text": cautions()[key]} for key in slip.cautions],
    }


def _plain_result(result: Result) -> Any:
    if isinstance(result, Band):
        plain: dict[str, Any] = {"value": result.value, "unit": result.unit}
        if result.low is not None and result.high is not None:
            plain |= {"low": result.low, "high": result.high}
        return plain
    return result if isinstance(result, str) else [dict(row) for row in result]


def _plain_source(key: str) -> dict[str, str]:
    source = sources()[key]
    title = f"{source.issuer}: {source.title}" if source.issuer else source.title
    where = ", ".join(p for p in (source.section, source.edition) if p)
    return {"key": key, "title": title, "where": where, "standing": source.standing, "seen": source.seen}
