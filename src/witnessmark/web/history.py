"""The history file: looked through here, printed as one PDF for an inspector or a buyer."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_http_methods
from msgspec.structs import replace

from witnessmark.press.printing import to_pdf
from witnessmark.press.setting import Paper
from witnessmark.restoration.history import history_screen, printed_photos
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.sheet import keep_printed
from witnessmark.sheets.rows import Sheet
from witnessmark.web.answers import sheet_shown
from witnessmark.web.going import go_on, unhurried
from witnessmark.web.photos import folder_asked
from witnessmark.web.record import with_record

MOST_ROWS = 150


@require_http_methods(["GET", "HEAD", "POST"])
@unhurried("the history file")
@with_record
def history_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """One section at a time on the phone; by POST the whole as PDF, which the record then says."""
    flow = restoration.flow()
    sheet = history_screen(flow)
    if request.method != "POST":
        return sheet_shown(request, flow, _for_glass(sheet), "history.html")
    go_on(request)
    made = _printed(request, sheet)
    go_on(request, final=True)
    keep_printed(restoration, sheet)
    return made


def _for_glass(sheet: Sheet) -> Sheet:
    """Tables cut to what a page can carry; the paper has them whole."""
    sections = tuple(
        replace(one, rows=one.rows[:MOST_ROWS], note=f"the first {MOST_ROWS}; all of them are on paper")
        if len(one.rows) > MOST_ROWS
        else one
        for one in sheet.sections
    )
    return replace(sheet, sections=sections)


def _printed(request: HttpRequest, sheet: Sheet) -> HttpResponse:
    paper: Paper = "us-letter" if request.POST.get("paper") == "letter" else "a4"
    made = to_pdf(sheet, paper=paper, photos=printed_photos(folder_asked(request), sheet))
    name = f"history-{sheet.code}.pdf"
    return HttpResponse(
        made,
        content_type="application/pdf",
        headers={"Content-Disposition": f'attachment; filename="{name}"'},
    )
