"""The one table of what to make of a line once its kind of fact is told."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from witnessmark.words.built import Builder
from witnessmark.words.on_buying import ON_BUYING
from witnessmark.words.on_closing import ON_CLOSING
from witnessmark.words.on_finding import ON_FINDING
from witnessmark.words.on_garage import ON_GARAGE
from witnessmark.words.on_metal import ON_METAL
from witnessmark.words.on_record import ON_RECORD
from witnessmark.words.on_wishes import ON_WISHES
from witnessmark.words.on_work import ON_WORK

BUILDERS: Mapping[str, Builder] = MappingProxyType(
    {**ON_RECORD, **ON_WORK, **ON_FINDING, **ON_CLOSING, **ON_METAL, **ON_GARAGE, **ON_WISHES, **ON_BUYING}
)
