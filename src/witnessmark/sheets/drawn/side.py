"""The sides: the vehicle from its left or its right, standing on its wheels."""

from __future__ import annotations

from collections.abc import Mapping

from witnessmark.sheets.drawn.boxes import BROAD, Box
from witnessmark.sheets.drawn.shapes import Shape

TOP = 8.0
BELOW = 30.0  # under the ground line, for the words of the wheels


class Side:
    """One side in drawing units: the left with the front to the left, the right mirrored."""

    def __init__(self, shape: Shape, side: str) -> None:
        self.shape = shape
        self.side = side
        self.unit = (BROAD - 12) / shape.length

    @property
    def high(self) -> float:
        return TOP + self.shape.height * self.unit + BELOW

    @property
    def ground(self) -> float:
        return TOP + self.shape.height * self.unit

    def x(self, back: float) -> float:
        """Where so many centimetres behind the front lie."""
        along = 6 + back * self.unit
        return along if self.side == "left" else BROAD - along

    def y(self, above: float) -> float:
        """Where so many centimetres above the ground lie."""
        return self.ground - above * self.unit

    def path(self, *points: tuple[float, float]) -> str:
        """A closed outline through points told as (behind the front, above the ground)."""
        return "M" + "L".join(f"{self.x(b):.1f} {self.y(a):.1f}" for b, a in points) + "Z"

    def box(self, first: float, last: float, low: float, high: float) -> Box:
        left, right = sorted((self.x(first), self.x(last)))
        return Box(left, self.y(high), right - left, (high - low) * self.unit)

    # ---- what is drawn

    def outline(self) -> str:
        """The body's edge."""
        s = self.shape
        if s.single_track:
            return self._frame()
        if s.towed:
            return self.path(
                (s.bonnet, s.sill), (s.bonnet, s.deck), (s.length, s.deck), (s.length, s.sill)
            ) + self.path((0, s.sill + 8), (0, s.sill), (s.bonnet, s.sill), (s.bonnet, s.sill + 8))
        return self._body()

    def _body(self) -> str:
        s = self.shape
        screen, roof = s.bonnet + s.screen, s.bonnet + s.screen + s.roof
        back = min(s.length, roof + s.tail)
        nose = s.waist - 10
        points = [
            (4, s.sill + 4), (2, s.sill + 26), (6, nose - 6), (18, nose), (s.bonnet, s.waist + 1),
            (screen, s.height - 3), (screen + 10, s.height), (roof - 10, s.height - 1), (roof, s.height - 5),
        ]  # fmt: skip
        if s.deck < s.height - 8:
            points += [(back, s.deck + 3), (s.length - 8, s.deck)]
        points += [(s.length - 2, s.deck - 10), (s.length, s.sill + 20), (s.length - 6, s.sill + 4)]
        return self.path(*points)

    def _frame(self) -> str:
        s = self.shape
        return self.path(
            (s.front + 18, 52), (s.front + 34, 92), (s.front + 46, 100), (s.front + 58, 92), (96, 90),
            (120, 78), (170, 82), (186, 74), (150, 62), (138, 34), (78, 30), (66, 48),
        )  # fmt: skip

    def bars(self) -> str:
        """Fork and swinging arm of a two-wheeler, behind its body."""
        s = self.shape
        if not s.single_track:
            return ""
        hub = s.wheel / 2
        lines = (
            ((s.front, hub), (s.front + 40, 104)),
            ((s.rear, hub), (112, 46)),
            ((s.front + 34, 104), (s.front + 62, 110)),
        )
        return "".join(
            f"M{self.x(a):.1f} {self.y(b):.1f}L{self.x(c):.1f} {self.y(d):.1f}" for (a, b), (c, d) in lines
        )

    def glass(self) -> str:
        """The windows: the front one stands for the screen."""
        s = self.shape
        if not s.screen or s.roof < 40:
            return ""
        low, high = s.waist + 4, s.height - 12
        first, last = s.bonnet + s.screen * 0.75, s.bonnet + s.screen + s.roof - 10
        pillar = s.bonnet + s.screen + s.cab - 16
        lean = s.screen * 0.55
        front = self.path(
            (first, low),
            (first + lean * 0.5, high),
            (min(pillar, last) - 4, high),
            (min(pillar, last) - 4, low),
        )
        if last - pillar < 30 or s.key == "van":
            return front
        return front + self.path(
            (pillar + 4, low), (pillar + 4, high), (last - 4, high), (last + s.tail * 0.5, low)
        )

    def boxes(self) -> Mapping[str, Box]:
        """The places seen from this side that are no wheels."""
        s, side = self.shape, self.side
        if s.single_track:
            return {"engine": self.box(66, 146, 30, 90)}
        if s.towed:
            return {
                "drawbar": self.box(0, s.bonnet, s.sill, s.sill + 8),
                "front": self.box(s.bonnet, s.rear - s.wheel * 0.6, s.sill, s.deck),
                "rear": self.box(s.rear + s.wheel * 0.6, s.length, s.sill, s.deck),
            }
        door = s.bonnet + s.screen
        low = s.sill + 4
        return {
            "front": self.box(0, s.front - s.wheel * 0.62, low, s.waist),
            "engine bay": self.box(s.front - s.wheel * 0.62, s.bonnet, low, s.waist + 2),
            f"{side} door": self.box(door, door + s.cab, low, s.waist),
            "rear": self.box(s.rear + s.wheel * 0.62, s.length, low, s.deck),
        }

    def wheels(self) -> Mapping[str, tuple[float, float, float]]:
        """Place of each wheel to its middle and half its height."""
        s, half = self.shape, self.shape.wheel / 2 * self.unit
        if s.single_track:
            named = {"front fork": s.front, "rear wheel": s.rear}
        elif s.towed:
            named = {self.side: s.rear}
        else:
            named = {f"{self.side} front": s.front, f"{self.side} rear": s.rear}
        return {name: (self.x(at), self.ground - half, half) for name, at in named.items()}
