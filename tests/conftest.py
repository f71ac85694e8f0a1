"""Settings for all tests."""

from __future__ import annotations

import os

from hypothesis import settings

# On the machine that decides, the same examples every time; elsewhere, new ones.
settings.register_profile("ci", derandomize=True, database=None, deadline=None)
settings.register_profile("bench", deadline=None)
settings.load_profile("ci" if os.environ.get("CI") else "bench")
