"""The whole drawing put together: plan and two sides, each place with its hatch, words and address."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from html import escape

from msgspec import Struct

from witnessmark.sheets.drawn.boxes import BROAD, Box, plan_boxes
from witnessmark.sheets.drawn.hatch import CLEAR, hatched, hatches
from witnessmark.sheets.drawn.plan import plan_high, plan_outline, plan_wheels
from witnessmark.sheets.drawn.shapes import Shape
from witnessmark.sheets.drawn.side import Side
from witnessmark.sheets.drawn.words import SIZE, plate

Address = Callable[[str], str]


class PlaceNow(Struct, frozen=True, kw_only=True):
    """One place as it stands.

    state    of its worst joint; "" where it holds none
    lets_go  that joint lets go if missed, and is apart or loose: its frame is heavy
    """

    state: str = ""
    lets_go: bool = False


NOTHING = PlaceNow()


def plan_svg(shape: Shape, places: Mapping[str, PlaceNow], address: Address) -> str:
    """The vehicle from above. Each place that holds a joint is a link to it."""
    drawn = [
        _place("plan", name, box, places.get(name, NOTHING), address)
        for name, box in _quiet_first(plan_boxes(shape), places)
    ]
    shapes = [
        hatches("plan"),
        f'<clipPath id="plan-body"><path d="{plan_outline(shape)}"/></clipPath>',
        f'<g class="tyres">{plan_wheels(shape)}</g>',
        f'<path d="{plan_outline(shape)}" fill="{CLEAR}"/>',
        f'<g clip-path="url(#plan-body)">{"".join(fill for fill, _ in drawn)}</g>',
        f'<path class="edge" d="{plan_outline(shape)}"/>',
        *(words for _, words in drawn),
    ]
    return _whole("From above, the front upwards", plan_high(shape), shapes)


def side_svg(shape: Shape, side: str, places: Mapping[str, PlaceNow], address: Address) -> str:
    """The vehicle from one side."""
    view = Side(shape, side)
    drawn = [
        _place(side, name, box, places.get(name, NOTHING), address, worded=_room(box, name))
        for name, box in _quiet_first(view.boxes(), places)
    ]
    shapes = [
        hatches(side),
        f'<clipPath id="{side}-body"><path d="{view.outline()}"/></clipPath>',
        f'<path class="bars" d="{view.bars()}"/>' if view.bars() else "",
        f'<path d="{view.outline()}" fill="{CLEAR}"/>',
        f'<g clip-path="url(#{side}-body)">{"".join(fill for fill, _ in drawn)}</g>',
        f'<path class="seen" d="{view.glass()}"/>' if view.glass() else "",
        f'<path class="edge" d="{view.outline()}"/>',
        *(
            _wheel(side, name, wheel, places.get(name, NOTHING), address)
            for name, wheel in view.wheels().items()
        ),
        f'<path class="ground" d="M0 {view.ground:.1f}H{BROAD:.0f}"/>',
        *(words for _, words in drawn),
    ]
    return _whole(f"From the {side}", view.high, shapes)


def _quiet_first(boxes: Mapping[str, Box], places: Mapping[str, PlaceNow]) -> list[tuple[str, Box]]:
    """Heavy frames are drawn last, over their neighbours."""
    return sorted(boxes.items(), key=lambda pair: places.get(pair[0], NOTHING).lets_go)


def _place(
    prefix: str, name: str, box: Box, now: PlaceNow, address: Address, *, worded: bool = True
) -> tuple[str, str]:
    """The hatched box of a place, and its words as a link."""
    frame = "heavy" if now.lets_go else "plain"
    spot = f'x="{box.x:.1f}" y="{box.y:.1f}" width="{box.wide:.1f}" height="{box.high:.1f}"'
    fill = f'<rect class="{frame}" {spot} fill="{hatched(prefix, now.state)}"/>'
    if not now.state:
        return fill, ""
    words = plate(box, name, now.state) if worded else ""
    touch = f'<rect class="touch" {spot}/>'
    return fill, _link(name, now, f"{touch}{words}", address)


def _wheel(prefix: str, name: str, wheel: tuple[float, float, float], now: PlaceNow, address: Address) -> str:
    x, y, half = wheel
    frame = "heavy" if now.lets_go else "plain"
    middle, inner = f'cx="{x:.1f}" cy="{y:.1f}"', half * 0.72
    rings = (
        f'<circle class="tyre" {middle} r="{half:.1f}"/>'
        f'<circle {middle} r="{inner:.1f}" fill="{CLEAR}"/>'
        f'<circle class="{frame}" {middle} r="{inner:.1f}" fill="{hatched(prefix, now.state)}"/>'
        f'<circle class="hub" {middle} r="{half * 0.2:.1f}"/>'
    )
    if not now.state:
        return rings
    words = f'<text x="{x:.1f}" y="{y + half + SIZE + 5:.1f}">{escape(f"{name}: {now.state.upper()}")}</text>'
    return _link(name, now, rings + words, address)


def _room(box: Box, name: str) -> bool:
    """Whether the words of a place find room on a side; its plan carries them in any case."""
    longest = max(len(word) for word in (*name.split(), "APART"))
    return box.high >= 62 and box.wide >= longest * SIZE * 0.5 + 8


def _link(name: str, now: PlaceNow, shapes: str, address: Address) -> str:
    said = escape(f"{name}: {now.state}{', lets go if missed' if now.lets_go else ''}", quote=True)
    return f'<a href="{escape(address(name), quote=True)}" aria-label="{said}">{shapes}</a>'


def _whole(title: str, high: float, shapes: list[str]) -> str:
    head = (
        f'<svg class="drawn" viewBox="0 0 {BROAD:.0f} {high:.0f}" role="group" aria-label="{escape(title)}">'
    )
    return head + "".join(shapes) + "</svg>"


def swatch_svg(state: str) -> str:
    """A piece of a state's hatch, for the key under the drawing; the word stands beside it."""
    prefix = f"key-{state.replace(' ', '-')}"
    frame = f'<rect class="plain" x="1" y="1" width="58" height="38" fill="{hatched(prefix, state)}"/>'
    head = '<svg class="drawn swatch" viewBox="0 0 60 40" aria-hidden="true" focusable="false">'
    return f'{head}{hatches(prefix)}<rect x="1" y="1" width="58" height="38" fill="{CLEAR}"/>{frame}</svg>'
