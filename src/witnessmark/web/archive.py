"""The whole record taken away: one ZIP with every line and every photo."""

from __future__ import annotations

import tempfile
from pathlib import Path

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_http_methods

from witnessmark.restoration.carrying import export_file
from witnessmark.restoration.restoration import Restoration
from witnessmark.web.going import unhurried
from witnessmark.web.photos import folder_asked
from witnessmark.web.record import with_record
from witnessmark.web.showing import page


@require_http_methods(["GET", "HEAD", "POST"])
@unhurried("the archive")
@with_record
def archive_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """What an archive is; by POST the archive itself."""
    flow = restoration.flow()
    if request.method != "POST":
        return page(request, "archive.html", flow, lines=len(restoration.entries))
    with tempfile.TemporaryDirectory() as place:
        made = Path(place) / "record.zip"
        export_file(restoration, folder_asked(request), made)
        content = made.read_bytes()
    name = f"record-{flow.today:%Y-%m-%d}-line-{flow.line}.zip"
    return HttpResponse(
        content,
        content_type="application/zip",
        headers={"Content-Disposition": f'attachment; filename="{name}"'},
    )
