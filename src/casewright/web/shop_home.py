"""Which job pages belong to: a phone never sends what was meant for another."""

from __future__ import annotations

import hashlib
from pathlib import Path

__all__ = ["home_of"]


def home_of(job: Path) -> str:
    """A short name of the place where a job file lies."""
    return hashlib.sha256(str(job.resolve()).encode()).hexdigest()[:12]
