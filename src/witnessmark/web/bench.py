"""The bench on pages: every question as a form that keeps what was typed; the answer kept with a joint."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.template import engines
from django.views.decorators.http import require_http_methods, require_safe
from markupsafe import Markup
from msgspec import Struct

from witnessmark.bench.questions import SUBJECTS, questions_about
from witnessmark.bench.slip import Band, Row, Slip
from witnessmark.bench.slip_text import NOTES, VERDICT, band_text, figure
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.benching import Benched, benched, keep_slip
from witnessmark.restoration.devices import new_id, usable_id
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.tables.sources import cautions, sources
from witnessmark.web.asked import words_of
from witnessmark.web.record import with_record
from witnessmark.web.showing import page

_NAMED = 'xmlns="http://www.w3.org/2000/svg" '


class Told(Struct, frozen=True, kw_only=True):
    """A slip made ready for a page: single results, tables, and what stands behind them."""

    verdict: str
    because: str
    singles: tuple[tuple[str, str], ...]
    tables: tuple[tuple[str, tuple[str, ...], tuple[tuple[tuple[str, ...], str], ...]], ...]
    working: tuple[str, ...]
    sources: tuple[str, ...]
    cautions: tuple[str, ...]
    picture: Markup


@require_safe
@with_record
def bench_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """Every question by the moment a person is in."""
    subjects = [(subject, questions_about(subject)) for subject in SUBJECTS]
    return page(request, "bench.html", restoration.flow(), subjects=subjects)


@require_http_methods(["GET", "HEAD", "POST"])
@with_record
def question_page(
    request: HttpRequest, restoration: Restoration, subject: str, question: str
) -> HttpResponse:
    """One question; with `answer=only` the answer and the troubles alone, for a page that redraws itself."""
    flow = restoration.flow()
    if request.method == "POST":
        return _kept(request, restoration, benched(flow, subject, question, request.POST.dict()))
    asked = benched(flow, subject, question, request.GET.dict())
    values = _values(asked)
    if request.GET.get("answer") == "only":
        return JsonResponse(
            {
                "answer": _drawn("answer.html", values),
                "troubles": {n: _drawn("told.html", {"trouble": t}) for n, t in asked.troubles.items()},
            }
        )
    return _shown(request, flow, values)


def _kept(request: HttpRequest, restoration: Restoration, asked: Benched) -> HttpResponse:
    """Keep the answer with a joint or part; where that will not do, it still stands on the page."""
    kept_with = words_of(request.POST.get("kept_with", ""))
    try:
        written = keep_slip(restoration, asked, kept_with, usable_id(request.POST.get("id", "")))
    except BadInput as trouble:
        values = _values(asked) | {"not_kept": trouble, "kept_with": kept_with}
        return _shown(request, restoration.flow(), values, code=400)
    return HttpResponse(status=303, headers={"Location": f"/line?written={written[-1].line}"})


def _shown(request: HttpRequest, flow: Flow, values: dict[str, Any], *, code: int = 200) -> HttpResponse:
    names = sorted({*flow.vehicle.joints, *flow.vehicle.parts})
    which = values["asked"].question
    own = f"/bench/{which.subject}/{which.question}"
    values |= {"example": urlencode({i.name: i.example for i in which.inputs if i.either or not i.optional})}
    return page(request, "question.html", flow, code=code, **values, own=own, names=names, new_id=new_id())


def _values(asked: Benched) -> dict[str, Any]:
    told = told_slip(asked.slip) if asked.slip else None
    return {"asked": asked, "told": told, "troubles": asked.troubles}


def _drawn(template: str, values: dict[str, Any]) -> str:
    return str(engines["jinja2"].get_template(template).render(values))


def told_slip(slip: Slip) -> Told:
    """A slip for a page."""
    results = slip.results.items()
    return Told(
        verdict=VERDICT[slip.verdict] if slip.verdict else "",
        because=slip.because,
        singles=tuple(
            (_words(name), result if isinstance(result, str) else band_text(result))
            for name, result in results
            if isinstance(result, str | Band)
        ),
        tables=tuple(
            (_words(name), _heads(result, slip), tuple(_cells(result)))
            for name, result in results
            if isinstance(result, tuple) and result
        ),
        working=slip.working,
        sources=tuple(_cited(key) for key in slip.sources),
        cautions=tuple(cautions()[key] for key in slip.cautions),
        picture=Markup((slip.picture or "").replace(_NAMED, "")),
    )


def _columns(rows: tuple[Row, ...]) -> list[str]:
    return [name for name in rows[0] if name not in NOTES]


def _heads(rows: tuple[Row, ...], slip: Slip) -> tuple[str, ...]:
    return tuple(f"{_words(n)} {slip.units.get(n, '')}".strip() for n in _columns(rows))


def _cells(rows: tuple[Row, ...]) -> Iterator[tuple[tuple[str, ...], str]]:
    columns = _columns(rows)
    for row in rows:
        notes = " ".join(str(row[note]) for note in NOTES if row.get(note))
        yield tuple(_cell(row.get(name)) for name in columns), notes


def _cell(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return figure(value) if isinstance(value, float | int) else str(value or "")


def _words(name: str) -> str:
    return name.replace("_", " ")


def _cited(key: str) -> str:
    source = sources()[key]
    title = f"{source.issuer}, {source.title}" if source.issuer else source.title
    return f"{title} ({source.standing}, seen: {source.seen})"
