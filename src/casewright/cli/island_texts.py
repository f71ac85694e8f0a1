"""Islands as `layout` tells them."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.job.island_layouts import IslandLayout
from casewright.layout.island_answers import IslandConflict

__all__ = ["island_lines"]


def island_lines(island: IslandLayout) -> Iterator[str]:
    """Every answer with its trade; where none fits, which aisle is short and what would help."""
    text = island.text
    yield f"{island.title}:"
    for number, (answer, trade) in enumerate(
        zip(island.answers, island.trades, strict=True), start=1
    ):
        off = text(answer.near - island.task.base)
        sizes = [f"{key} {text(width)}" for key, width in island.widths(answer)]
        yield f"  {number}  {', '.join([f'{off} off, {text(answer.left)} along', *sizes])}"
        yield f"     {'; '.join(trade)}"
    if len(island.answers) == 1:
        yield "     no answer of another kind"
    if not island.answers and not island.conflicts:
        yield f"  STOP  {_no_room(island)}"
    for conflict in island.conflicts:
        yield from _conflict(island, conflict)


def _no_room(island: IslandLayout) -> str:
    task, text = island.task, island.text
    low, high = (each + task.more for each in task.boxes_band)
    wished = [each + task.more for each in task.length]
    if max(low, wished[0]) > min(high, wished[1]):
        return (
            f"its boxes make a counter {text(low)} to {text(high)} long, and its length asks for "
            f"{text(wished[0])} to {text(wished[1])}: another length, or one more or less of them"
        )
    return "it is longer or deeper than the floor that was read"


def _conflict(island: IslandLayout, conflict: IslandConflict) -> Iterator[str]:
    text, title = island.text, island.titles.get(conflict.key, conflict.key)
    by = text(conflict.short)
    yield (
        f"  STOP  aisle to {title}: {text(conflict.wished)} wished, {text(conflict.left)} left: "
        f"{by} short"
    )
    yield f"        - that aisle {by} less"
    if conflict.opposite:
        other = island.titles.get(conflict.opposite, conflict.opposite)
        yield f"        - the aisle to {other} {by} less"
    yield f"        - {island.title} {by} {'shorter' if conflict.ends else 'less deep'}"
