"""Settings for all tests."""

from __future__ import annotations

import gc
import os

from hypothesis import settings

# On the machine that decides, the same examples every time; elsewhere, new ones.
settings.register_profile("ci", derandomize=True, database=None, deadline=None)
settings.register_profile("bench", deadline=None)
settings.load_profile("ci" if os.environ.get("CI") else "bench")

# A suite keeps thousands of models and drops few: looking for garbage as often as a small program
# does took a sixth of its time (measured).
gc.set_threshold(20_000, 20, 20)
