"""One profile for every property: the same examples on every run, no clock, no folder left behind."""

import os

from hypothesis import settings

settings.register_profile("house", deadline=None, derandomize=True, database=None)
settings.register_profile("search", deadline=None, max_examples=2000, database=None)
settings.load_profile("search" if os.environ.get("WM_SEARCH") == "1" else "house")
