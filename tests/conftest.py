"""Settings for all tests."""

from __future__ import annotations

import gc
import os

from hypothesis import HealthCheck, settings

# On the machine that decides, the same examples every time; elsewhere, new ones. On neither does
# it matter how long one takes.
_untimed = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("ci", _untimed, derandomize=True, database=None)
settings.register_profile("bench", _untimed)
settings.load_profile("ci" if os.environ.get("CI") else "bench")

# A suite keeps thousands of models and drops few: looking for garbage as often as a small program
# does took a sixth of its time (measured).
gc.set_threshold(20_000, 20, 20)
