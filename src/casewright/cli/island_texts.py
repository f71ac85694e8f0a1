"""Islands as `layout` tells them."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.cli.hindrance_texts import hindrance_lines
from casewright.job.hindrances import island_hindrances
from casewright.job.island_layouts import IslandLayout

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
    yield from hindrance_lines(island_hindrances(island))
