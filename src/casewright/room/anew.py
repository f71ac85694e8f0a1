"""Asking for a layout anew where an accepted one no longer holds, in one form of words."""

from __future__ import annotations

__all__ = ["HEIGHTS_ANEW", "asks_anew", "run_anew", "run_asked_for"]

_RUN = "lay the run out anew: casewright layout JOB --run "

HEIGHTS_ANEW = "lay the heights out anew: casewright layout JOB --heights"
"""The remedy where heights that were accepted no longer close."""


def run_anew(key: str) -> str:
    """The remedy where a run no longer stands as it was laid out."""
    return _RUN + key


def run_asked_for(remedy: str) -> str:
    """Key of the run that a remedy asks to lay out anew; empty where it asks for none."""
    return remedy.removeprefix(_RUN) if remedy.startswith(_RUN) else ""


def asks_anew(remedy: str) -> bool:
    """Whether a remedy asks for a layout."""
    return remedy == HEIGHTS_ANEW or bool(run_asked_for(remedy))
