"""The same work on several things: one after the other, or however a caller can do it sooner."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Protocol, TypeVar

__all__ = ["Each", "in_turn"]

_Thing = TypeVar("_Thing")
_Made = TypeVar("_Made")


class Each(Protocol):
    """Does a work on several things, in whatever process; what comes of each, in their order."""

    def __call__(self, work: Callable[[_Thing], _Made], things: Sequence[_Thing]) -> list[_Made]:
        """Do it."""


def in_turn(work: Callable[[_Thing], _Made], things: Sequence[_Thing]) -> list[_Made]:
    """Do a work on one thing after the other."""
    return list(map(work, things))
