"""The week's story: read here first, then taken away as files to publish."""

from __future__ import annotations

from datetime import timedelta

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.week import packed, published, story_of, with_photos
from witnessmark.sheets.week import DAYS
from witnessmark.sheets.week_told import AHEAD, NUMBER, WRONG, days_of, title_of
from witnessmark.web.asked import day_of
from witnessmark.web.going import unhurried
from witnessmark.web.photos import folder_asked
from witnessmark.web.record import with_record
from witnessmark.web.showing import page


@require_safe
@with_record
def week_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """Seven days as a story; earlier weeks by their last day."""
    flow = restoration.flow()
    story = story_of(flow, day_of(request.GET.get("ending", "")))
    return page(
        request,
        "week.html",
        flow,
        story=story,
        title=title_of(story),
        days_told=days_of(story),
        headings=(NUMBER, WRONG, AHEAD),
        earlier=story.last - timedelta(days=DAYS),
        later=story.last + timedelta(days=DAYS) if story.last < flow.today else None,
    )


@require_safe
@unhurried("the week")
@with_record
def week_files(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """The story as HTML and Markdown with the photos that were left ticked, in one ZIP."""
    story = story_of(restoration.flow(), day_of(request.GET.get("ending", "")))
    story = with_photos(story, request.GET.getlist("photo"))
    name = f"week-{story.last.isoformat()}.zip"
    return HttpResponse(
        packed(published(folder_asked(request), story)),
        content_type="application/zip",
        headers={"Content-Disposition": f'attachment; filename="{name}"'},
    )
