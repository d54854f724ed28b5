"""Every table of numbers: its head, units, unique rows, order, and sources that are known and read."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from importlib.resources import files

import pytest

from witnessmark.ground.pedigree import HOLLOW, SEEN, STANDINGS
from witnessmark.tables.numbers import table
from witnessmark.tables.read import read_table
from witnessmark.tables.sources import cautions, sources

ROOT = files("witnessmark.tables")


def names() -> Iterator[str]:
    """Every data file with an `[about]` head."""
    for folder in sorted(f.name for f in ROOT.iterdir() if f.is_dir() and not f.name.startswith("_")):
        for file in sorted(f.name for f in ROOT.joinpath(folder).iterdir() if f.name.endswith(".toml")):
            name = f"{folder}/{file.removesuffix('.toml')}"
            if "about" in read_table(name):
                yield name


NAMES = list(names())


def test_the_tables_are_found() -> None:
    assert {"threads/metric", "bolts/grades", "orings/standard_sizes", "seals/sizes"} <= set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_the_head_says_what_it_is_and_is_not(name: str) -> None:
    about = table(name).about
    assert about.holds
    assert about.covers
    assert about.not_for
    assert about.edition
    assert about.source
    assert all(key in sources() for key in about.source)


@pytest.mark.parametrize("name", NAMES)
def test_every_column_has_a_unit_or_holds_words(name: str) -> None:
    read = table(name)
    columns = {column for row in read.rows for column in row}
    assert set(read.about.units) - columns == set()
    bare = columns - set(read.about.units) - set(read.about.words) - set(read.about.key)
    numbers = {c for c in bare for row in read.rows if isinstance(row.get(c), float | int)}
    assert numbers == RATIOS.get(name, set())


RATIOS: dict[str, set[str]] = {
    "bolts/tapped": {"shear_over_tensile", "customary"},
    "metal/bend_k": {"hard", "medium", "soft", "radius_high"},
    "paint/limits": {"near", "value"},
    "pulls/ground": {"low", "high"},
    "welding/efficiency": {"efficiency"},
    "welding/plate": {"value", "low", "high"},
}
"""Columns that hold plain ratios, or whose unit stands in the row."""


@pytest.mark.parametrize("name", NAMES)
def test_a_key_names_one_row(name: str) -> None:
    read = table(name)
    keys = [tuple(row[column] for column in read.about.key) for row in read.rows]
    assert len(set(keys)) == len(keys)
    assert None not in {part for key in keys for part in key}


@pytest.mark.parametrize("name", NAMES)
def test_what_should_rise_rises(name: str) -> None:
    read = table(name)
    for column in read.about.rising:
        runs: dict[object, list[float]] = defaultdict(list)
        for row in read.rows:
            if row[column] is not None:
                runs[row[read.about.within] if read.about.within else ""].append(row[column])
        assert all(run == sorted(run) for run in runs.values()), column


@pytest.mark.parametrize("name", NAMES)
def test_a_row_that_names_its_source_names_a_known_one(name: str) -> None:
    named = {row["source"] for row in table(name).rows if row.get("source")}
    assert named - set(sources()) == set()


LAWS = {"ohm", "bayes", "gas-law", "mixing-by-mass", "hydraulics", "geometry"}
"""Laws that any textbook prints: no page was looked up for them, and none is claimed."""


def test_sources_stand_on_the_ladder_and_say_how_they_were_seen() -> None:
    for source in sources().values():
        assert source.standing in STANDINGS
        assert source.seen in SEEN
        if source.key not in LAWS and source.standing not in HOLLOW | {"common practice"}:
            assert source.seen != "none", source.key
            assert source.read, source.key


def test_no_strength_limit_or_electrical_row_rests_on_memory() -> None:
    hollow = {key for key, s in sources().items() if s.standing in HOLLOW}
    bearing = [n for n in NAMES if n.partition("/")[0] in ("bolts", "welds", "wires", "loads", "steel")]
    for name in bearing:
        read = table(name)
        assert not hollow & set(read.about.source), name
        assert not hollow & {row.get("source") for row in read.rows}, name


def test_every_caution_of_the_bench_names_its_authority() -> None:
    rows = read_table("cautions")
    assert set(rows) == set(cautions())
    assert {row["source"] for row in rows.values()} - set(sources()) == set()


SPOTS = (
    ("orings/standard_sizes", "ring", "-150", "inside", 72.69, 0.02, "a ring maker's list, via a parts file"),
    ("orings/standard_sizes", "ring", "-475", "inside", 25.940 * 25.4, 0.01, "a dealer's size chart, inches"),
    ("orings/standard_sizes", "ring", "-050", "inside", 5.239 * 25.4, 0.01, "a dealer's size chart, inches"),
    ("orings/standard_sizes", "ring", "-284", "inside", 17.955 * 25.4, 0.1, "a dealer's size chart, inches"),
    ("threads/pipe", "size", "1/2", "minor", 18.632, 0.002, "a second open data file"),
    ("seals/limits", "over", 30.0, "bore_high", 39, 0, "a second seal maker's page"),
    ("bolts/grades", "grade", "SAE 8", "proof", 120_000 * 0.00689475729, 0.1, "a bolt shop's chart, psi"),
)


@pytest.mark.parametrize(("name", "key", "value", "column", "printed", "off", "second"), SPOTS)
def test_spot_rows_agree_with_a_second_source(
    name: str, key: str, value: object, column: str, printed: float, off: float, second: str
) -> None:
    row = next(r for r in table(name).rows if r[key] == value)
    assert row[column] == pytest.approx(printed, abs=off), second
