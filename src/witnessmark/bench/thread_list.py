"""Every thread the tables know, under each name a person would type, and the forms they are cut to."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterator, Mapping
from functools import cache
from types import MappingProxyType

from msgspec import Struct

from witnessmark.bench.threads import INCH, diameter_at, stress_area
from witnessmark.ground.errors import BadInput
from witnessmark.ground.numerals import read_number
from witnessmark.ground.units import Degree, Mm, Mm2, Ratio
from witnessmark.tables.numbers import table

_ROOT3 = 3**0.5


class Form(Struct, frozen=True):
    """A thread form: included angle, and depths down both sides together in pitches.

    to_pitch  from crest to pitch diameter
    to_root   from crest to the bolt's root
    to_bore   from crest to the nut's bore
    """

    name: str
    angle: Degree
    to_pitch: Ratio
    to_root: Ratio
    to_bore: Ratio
    source: str


METRIC = Form(
    "ISO metric", Degree(60.0), Ratio(3 / 8 * _ROOT3), Ratio(17 / 24 * _ROOT3), Ratio(5 / 8 * _ROOT3),
    "thread-metric-form",
)  # fmt: skip
UNIFIED = Form(
    "Unified", Degree(60.0), Ratio(3 / 8 * _ROOT3), Ratio(3 / 4 * _ROOT3), Ratio(5 / 8 * _ROOT3),
    "thread-unified-series",
)  # fmt: skip
WHITWORTH = Form(
    "Whitworth", Degree(55.0), Ratio(0.640327), Ratio(1.280654), Ratio(1.280654), "thread-whitworth-series"
)
ASSOCIATION = Form("BA", Degree(47.5), Ratio(0.6), Ratio(1.2), Ratio(1.2), "thread-association-series")
CYCLE = Form("cycle", Degree(60.0), Ratio(0.5327), Ratio(1.0654), Ratio(1.0654), "thread-cycle-series")


class Thread(Struct, frozen=True, kw_only=True):
    """One thread.

    diameter      mm, nominal over the crests
    pitch         mm
    per_inch      threads per inch, or None where it is given in mm
    spanner       what fits the head, in words; "" where there is no standard head
    jaw           mm, least and greatest across flats in use, or None
    face          mm, diameter of the washer face under a hexagon head, or None
    sources       keys of what stands behind the thread
    head_source   key of what stands behind spanner, jaw and face, or ""
    tabled        False where only the form was applied to a typed size and pitch
    """

    name: str
    family: str
    form: Form
    diameter: Mm
    pitch: Mm
    per_inch: float | None = None
    spanner: str = ""
    jaw: tuple[Mm, Mm] | None = None
    face: Mm | None = None
    sources: tuple[str, ...] = ()
    head_source: str = ""
    tabled: bool = True

    @property
    def pitch_diameter(self) -> Mm:
        return diameter_at(self.diameter, self.pitch, self.form.to_pitch)

    @property
    def root_diameter(self) -> Mm:
        return diameter_at(self.diameter, self.pitch, self.form.to_root)

    @property
    def bore(self) -> Mm:
        """The nut's minor diameter, full depth."""
        return diameter_at(self.diameter, self.pitch, self.form.to_bore)

    @property
    def area(self) -> Mm2:
        return stress_area(self.pitch_diameter, self.root_diameter)

    @property
    def all_sources(self) -> tuple[str, ...]:
        return (*self.sources, self.head_source) if self.head_source else self.sources

    @property
    def metric_convention(self) -> bool:
        """Whether the stress area is one that a standard defines, not only the same rule applied."""
        return self.form.name in ("ISO metric", "Unified")


@cache
def all_threads() -> tuple[Thread, ...]:
    """Every tabled thread, family by family."""
    makers = (_metric, _unified, _whitworth, _association, _cycle, _pipe)
    return tuple(thread for make in makers for thread in make())


def find_thread(name: str) -> Thread:
    """A thread by any of its usual names; a metric size with a typed pitch need not be tabled.

    >>> find_thread("5/16 unf").pitch, find_thread("M8").pitch, find_thread("G 1/4").name
    (1.0583333333333333, 1.25, '1/4 BSP')

    Raises BadInput with near names for one that is not known.
    """
    key = _key(name)
    known = _by_name()
    if key in known:
        return known[key]
    typed = _typed_metric(key)
    if typed is not None:
        return typed
    near = difflib.get_close_matches(key, known, n=4, cutoff=0.6)
    names = tuple(dict.fromkeys(known[n].name for n in near))
    raise BadInput(
        given=f"thread is {name!r}, which the tables do not know",
        holds="M8, M10 x 1, 5/16 UNF, 1/4 BSW, 3/8 BSF, 2 BA, 1/4 BSP, 5/16 BSC",
        do=f"Did you mean {' or '.join(names)}?" if names else "Measure it: bench threads identify.",
        near=names,
    )


@cache
def _by_name() -> Mapping[str, Thread]:
    known: dict[str, Thread] = {}
    for thread in all_threads():
        known.setdefault(_key(thread.name), thread)
        if thread.per_inch is not None:
            known.setdefault(_key(f"{thread.name} {thread.per_inch:g}"), thread)
        elif thread.family == "metric coarse":
            known.setdefault(_key(thread.name.partition(" ")[0]), thread)
    return MappingProxyType(known)


_SAME = {
    "w": "bsw",
    "whit": "bsw",
    "whitworth": "bsw",
    "cei": "bsc",
    "cycle": "bsc",
    "g": "bsp",
    "bspp": "bsp",
}
_SILENT = frozenset({"x", "tpi", "in", "no", "inch", "thread"})


def _key(name: str) -> str:
    """The letters of a name, then its numbers, whatever stood between them.

    >>> _key("5/16-24 UNF"), _key("M8×1,250"), _key("G 1/4"), _key("No 10 UNF")
    ('unf 5/16 24', 'm 8 1.25', 'bsp 1/4', 'unf 10')
    """
    found = re.findall(r"\d+/\d+|\d+\.\d+|\d+|[a-z]+", name.lower().replace(",", "."))
    letters = [_SAME.get(t, t) for t in found if t.isalpha() and t not in _SILENT]
    numbers = [f"{float(t):g}" if "." in t else t for t in found if not t.isalpha()]
    return " ".join([*letters, *numbers])


def _typed_metric(key: str) -> Thread | None:
    found = re.fullmatch(r"m (\S+) (\S+)", key)
    if found is None:
        return None
    diameter, pitch = float(found[1]), float(found[2])
    if not (1 <= diameter <= 300 and 0.2 <= pitch <= min(6, diameter / 3)):
        raise BadInput(
            given=f"thread M{found[1]} x {found[2]}",
            holds="a diameter of 1 to 300 mm and a pitch of 0.2 mm to a third of it, 6 mm at most",
            do="Look at size and pitch again.",
        )
    return Thread(
        name=f"M{diameter:g} x {pitch:g}", family="metric, not tabled", form=METRIC, diameter=Mm(diameter),
        pitch=Mm(pitch), sources=(METRIC.source,), tabled=False,
    )  # fmt: skip


def _metric() -> Iterator[Thread]:
    for row in table("threads/metric").rows:
        new, old = row["across_flats"], row["across_flats_old"]
        yield Thread(
            name=f"{row['size']} x {row['pitch']:g}",
            family=f"metric {row['series']}",
            form=METRIC,
            diameter=Mm(row["diameter"]),
            pitch=Mm(row["pitch"]),
            spanner="" if new is None else f"{new:g} mm" if new == old else f"{new:g} mm, older {old:g} mm",
            jaw=None if new is None else (Mm(min(new, old)), Mm(max(new, old))),
            face=None if row["washer_face"] is None else Mm(row["washer_face"]),
            sources=("thread-metric-series", "thread-metric-form"),
            head_source="spanner-metric",
        )


def _unified() -> Iterator[Thread]:
    for row in table("threads/unified").rows:
        size = row["size"]
        diameter = 0.060 + 0.013 * int(size[1:]) if size.startswith("#") else read_number(size)
        bolt, nut = row["bolt_jaw"], row["nut_jaw"]
        words = f"{bolt} in AF" if bolt == nut else f"{bolt} in AF, nut {nut}"
        yield Thread(
            name=f"{size.replace('#', 'No ')} {row['series']}",
            family=row["series"],
            form=UNIFIED,
            diameter=Mm(diameter * INCH),
            pitch=Mm(INCH / row["tpi"]),
            per_inch=row["tpi"],
            spanner=words if bolt else "",
            jaw=(Mm(read_number(bolt) * INCH), Mm(read_number(nut) * INCH)) if bolt else None,
            sources=("thread-unified-series", "thread-metric-form"),
            head_source="spanner-unified",
        )


def _whitworth() -> Iterator[Thread]:
    for row in table("threads/whitworth").rows:
        size, older, later = row["size"], row["jaw_older"], row["jaw_later"]
        jaws = sorted(j for j in (older, later) if j is not None)
        yield Thread(
            name=f"{size} {row['series']}",
            family=row["series"],
            form=WHITWORTH,
            diameter=Mm(read_number(size) * INCH),
            pitch=Mm(INCH / row["tpi"]),
            per_inch=row["tpi"],
            spanner=_whitworth_spanner(size, older, later),
            jaw=(Mm(jaws[0] * INCH), Mm(jaws[-1] * INCH)) if jaws else None,
            sources=("thread-whitworth-series",),
            head_source="spanner-whitworth",
        )


def _whitworth_spanner(size: str, older: float | None, later: float | None) -> str:
    small = f"{size} BS ({later:.3f} in)" if later else ""
    large = f"{size} W ({older:.3f} in)" if older else ""
    return f"{small}, older {large}" if small and large else small or large


def _association() -> Iterator[Thread]:
    for row in table("threads/association").rows:
        jaw = Mm(1.75 * row["diameter"])
        yield Thread(
            name=f"{row['size']:g} BA",
            family="BA",
            form=ASSOCIATION,
            diameter=Mm(row["diameter"]),
            pitch=Mm(row["pitch"]),
            spanner=f"{row['size']:g} BA ({jaw / INCH:.3f} in, computed)",
            jaw=(jaw, jaw),
            sources=("thread-association-series",),
            head_source="spanner-association",
        )


def _cycle() -> Iterator[Thread]:
    for row in table("threads/cycle").rows:
        tpi = row["tpi"]
        yield Thread(
            name=f"{row['size']}{'-20' if tpi == 20 else ''} {row['series']}",
            family="cycle",
            form=CYCLE,
            diameter=Mm(read_number(row["size"]) * INCH),
            pitch=Mm(INCH / tpi),
            per_inch=tpi,
            sources=("thread-cycle-series",),
        )


def _pipe() -> Iterator[Thread]:
    for row in table("threads/pipe").rows:
        yield Thread(
            name=f"{row['size']} BSP",
            family="BSP",
            form=WHITWORTH,
            diameter=Mm(row["diameter"]),
            pitch=Mm(INCH / row["tpi"]),
            per_inch=row["tpi"],
            sources=("thread-pipe-series",),
        )
