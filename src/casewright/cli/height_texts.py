"""Heights of a room as `layout` tells them."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.job.heights import RoomHeights
from casewright.layout.conflicts import Relief

__all__ = ["height_lines"]


def height_lines(heights: RoomHeights) -> Iterator[str]:
    """Every answer with its trade and how to take it; where nothing closes, what would help."""
    text = heights.text
    yield f"heights, {text(heights.clear.value)} from the highest floor to the lowest ceiling:"
    if heights.bound:
        yield f"     {heights.bound}"
    for number, answer in enumerate(heights.answers, start=1):
        yield f"  {number}  {', '.join(f'{key} {text(high)}' for key, high in answer.parts)}"
        yield f"     {'; '.join(answer.trade)}"
        yield (
            f"     wall cases from {text(answer.bottom)} above the floor, "
            f"{text(answer.uppers)} high; to take it: --heights --accept {number}"
        )
    for conflict in heights.conflicts:
        short = conflict.short * heights.step
        if short > 0:
            need = text(heights.clear.value + short)
            yield f"  STOP  at least {need} is needed: {text(short)} short"
        else:
            yield f"  STOP  {text(-short)} are left over, and nothing that may take them"
        for relief in conflict.reliefs:
            yield f"        - {_relief(heights, relief)}"


def _relief(heights: RoomHeights, relief: Relief) -> str:
    by, less = heights.text(abs(relief.steps) * heights.step), relief.steps > 0
    if relief.of == "wall":
        return f"a ceiling {by} {'higher' if less else 'lower'}"
    what = relief.key if relief.of == "place" else "frieze"
    return f"{what} {by} {'less' if less else 'more'}"
