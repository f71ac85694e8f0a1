"""Which search fits a task: many plans at once where the numbers allow it, else plan by plan."""

from __future__ import annotations

from collections.abc import Callable

from casewright.cutting.beam import Beam
from casewright.cutting.generation import is_countable
from casewright.cutting.search import Search
from casewright.cutting.shapes import Task

__all__ = ["AnySearch", "search_for"]

AnySearch = Search | Beam


def search_for(task: Task, is_over: Callable[[], bool]) -> AnySearch:
    """The quicker search that can do a task; `is_over` tells when to give up."""
    return Beam(task, is_over) if is_countable(task) else Search(task, is_over)
