"""The pictures in the docs are what the demo shows today; small differences between systems pass."""

from __future__ import annotations

import importlib.util
import io
from pathlib import Path

import pytest
from PIL import Image, ImageChops, ImageStat

TOP = Path(__file__).resolve().parents[2]
SCRIPT = TOP / "scripts" / "pictures.py"
DIFFERENT = 1.0  # mean difference of a grey value, of 255


@pytest.fixture(scope="module")
def made() -> dict[str, bytes]:
    spec = importlib.util.spec_from_file_location("pictures", SCRIPT)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    pictures: dict[str, bytes] = module.made()
    return pictures


def test_no_picture_is_stale(made: dict[str, bytes]) -> None:
    stale = []
    for name, raw in made.items():
        kept = Image.open(TOP / "docs" / "pictures" / name).convert("L")
        fresh = Image.open(io.BytesIO(raw)).convert("L")
        apart = (
            kept.size != fresh.size or ImageStat.Stat(ImageChops.difference(kept, fresh)).mean[0] > DIFFERENT
        )
        stale += [name] if apart else []
    assert stale == [], "make them anew: .venv/bin/python scripts/pictures.py"
