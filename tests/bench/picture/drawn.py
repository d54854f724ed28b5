"""What a test can see of a picture: its paper, its marks, its words."""

import re
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"


class Drawn:
    """An SVG text, taken apart."""

    def __init__(self, text: str | None) -> None:
        assert text is not None
        self.root = ElementTree.fromstring(text)
        self.wide, self.high = (float(n) for n in self.root.attrib["viewBox"].split()[2:])
        self.words = [str(t.text) for t in self.root.iter(f"{SVG}text")]

    def marks(self) -> list[tuple[float, float]]:
        """Every point of every stroke and the foot of every word."""
        found = []
        for path in self.root.iter(f"{SVG}path"):
            numbers = [float(n) for n in re.findall(r"-?[0-9.]+", path.attrib["d"])]
            found += list(zip(numbers[::2], numbers[1::2], strict=True))
        for name, x, y in (("text", "x", "y"), ("circle", "cx", "cy"), ("rect", "x", "y")):
            found += [
                (float(e.attrib.get(x, 0)), float(e.attrib.get(y, 0))) for e in self.root.iter(f"{SVG}{name}")
            ]
        return found

    def spans(self) -> list[tuple[str, float, float]]:
        """Each word that lies level, with its left and right end as narrow letters would set it."""
        found = []
        for one in self.root.iter(f"{SVG}text"):
            if "transform" in one.attrib:
                continue
            words, x = str(one.text), float(one.attrib["x"])
            long = len(words) * float(one.attrib["font-size"]) * 0.47
            left = x - long * {"start": 0.0, "middle": 0.5, "end": 1.0}[one.attrib["text-anchor"]]
            found.append((words, left, left + long))
        return found

    def strokes(self, width: float) -> list[tuple[tuple[float, float], tuple[float, float]]]:
        """Plain two-point strokes of one width."""
        found = []
        for path in self.root.iter(f"{SVG}path"):
            numbers = [float(n) for n in re.findall(r"-?[0-9.]+", path.attrib["d"])]
            if abs(float(path.attrib.get("stroke-width", 0)) - width) < 1e-9 and len(numbers) == 4:
                found.append(((numbers[0], numbers[1]), (numbers[2], numbers[3])))
        return found

    def scale(self) -> float:
        """The drawing scale that is written on it."""
        up, down = next(m for w in self.words for m in re.findall(r"scale ([0-9.]+) : ([0-9.]+)", w))
        return float(up) / float(down)
