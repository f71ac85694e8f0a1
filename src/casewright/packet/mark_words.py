"""Marks of parts in words."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

__all__ = ["mark_list"]


def mark_list(marks: Iterable[str]) -> str:
    """Marks in short: '1 to 4, 9, 12'."""
    numbers = sorted({int(mark) for mark in marks})
    found: list[str] = []
    for _, run in groupby(enumerate(numbers), key=lambda item: item[1] - item[0]):
        run_numbers = [number for _, number in run]
        first, last = run_numbers[0], run_numbers[-1]
        if last - first > 1:
            found.append(f"{first} to {last}")
        else:
            found.extend(str(number) for number in run_numbers)
    return ", ".join(found)
