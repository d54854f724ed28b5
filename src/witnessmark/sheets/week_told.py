"""The week's story as HTML and as Markdown, to be put where others read it; its photos lie beside it."""

from __future__ import annotations

from datetime import date
from html import escape

from witnessmark.sheets.phrases import day_words
from witnessmark.sheets.week import Story

NUMBER, WRONG, AHEAD = "One number", "One thing that went wrong", "What is next"
_STYLE = (
    "body{max-width:40rem;margin:2rem auto;padding:0 1rem;font:1.2rem/1.5 sans-serif}"
    "body{color:#101010;background:#fbf8ea}"
    "img{max-width:100%;height:auto}figure{margin:1.5rem 0}.figure{font-size:2.4rem;margin:0}"
)


def title_of(story: Story) -> str:
    """The heading of a story."""
    return f"A week on the {story.what}"


def days_of(story: Story) -> str:
    """Its days, in words.

    >>> from datetime import date
    >>> from witnessmark.sheets.week import Story
    >>> days = dict(first=date(2026, 3, 8), last=date(2026, 3, 14))
    >>> days_of(Story(what="van", done=(), photos=(), number=("", ""), wrong="", ahead="", **days))
    '8 to 14 March 2026'
    """
    return _span(story.first, story.last)


def _span(first: date, last: date) -> str:
    said = day_words(last).split(" ", 1)[1]
    if (first.year, first.month) == (last.year, last.month):
        return f"{first.day} to {said}"
    before = day_words(first).split(" ", 1)[1]
    return f"{before} to {said}" if first.year != last.year else f"{before.rpartition(' ')[0]} to {said}"


def photo_file_names(story: Story) -> dict[str, str]:
    """What each photo is called beside the story: by its place in it, never by its content."""
    return {shot.name: f"{n}.jpg" for n, shot in enumerate(story.photos, 1)}


def as_markdown(story: Story) -> str:
    """The story as Markdown; photos as 1.jpg, 2.jpg, 3.jpg beside it."""
    files = photo_file_names(story)
    parts = [f"# {title_of(story)}", days_of(story)]
    parts += [f"**{heading}:** {names}." for heading, names in story.done]
    parts += [f"![{shot.caption}]({files[shot.name]})\n\n*{shot.caption}*" for shot in story.photos]
    parts += [f"## {NUMBER}", f"**{story.number[0]}** {story.number[1]}"]
    parts += [f"## {WRONG}", story.wrong, f"## {AHEAD}", f"{story.ahead[:1].upper()}{story.ahead[1:]}"]
    return "\n\n".join(parts) + "\n"


def as_html(story: Story) -> str:
    """The story as one page of HTML; photos as 1.jpg, 2.jpg, 3.jpg beside it."""
    files = photo_file_names(story)
    body = [f"<h1>{escape(title_of(story))}</h1>", f"<p>{days_of(story)}</p>"]
    body += [f"<p><b>{escape(heading)}:</b> {escape(names)}.</p>" for heading, names in story.done]
    for shot in story.photos:
        said = escape(shot.caption)
        body.append(
            f'<figure><img src="{files[shot.name]}" alt="{said}"><figcaption>{said}</figcaption></figure>'
        )
    figure, says = map(escape, story.number)
    body += [f"<h2>{NUMBER}</h2>", f'<p class="figure">{figure}</p>', f"<p>{says}</p>"]
    body += [f"<h2>{WRONG}</h2>", f"<p>{escape(story.wrong)}</p>"]
    body += [f"<h2>{AHEAD}</h2>", f"<p>{escape(story.ahead[:1].upper() + story.ahead[1:])}</p>"]
    title = f"{escape(title_of(story))}, {days_of(story)}"
    head = (
        '<!doctype html>\n<html lang="en-GB">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{title}</title>\n<style>{_STYLE}</style>\n</head>\n<body>\n"
    )
    return head + "\n".join(body) + "\n</body>\n</html>\n"
