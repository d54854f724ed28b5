"""What holds for every record in every store, however it came about."""

from __future__ import annotations

import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.laws.records_made import records
from tests.store.place import new_place
from witnessmark.journal.entry import Entry


@given(record=records(most=8), data=st.data())
@settings(max_examples=40)
def test_the_store_gives_back_what_it_was_given_in_whatever_helpings(
    kept_where: str, record: list[Entry], data: st.DataObject
) -> None:
    cut = data.draw(st.integers(0, len(record)))
    with tempfile.TemporaryDirectory() as folder:
        place = new_place(Path(folder), kept_where)
        with place.create() as kept:
            kept.append(record[:cut], 0)
            kept.append(record[cut:], cut)
            assert kept.append(record, 0) == tuple(record)  # sent again as a whole: nothing new
        with place.reopen() as kept:
            assert kept.read() == tuple(record)
