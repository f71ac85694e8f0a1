"""Heights of a room as `layout` tells them."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.cli.hindrance_texts import hindrance_lines
from casewright.job.heights import RoomHeights
from casewright.job.hindrances import height_hindrances

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
    yield from hindrance_lines(height_hindrances(heights))
