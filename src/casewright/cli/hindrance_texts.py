"""What stands against every answer, as `layout` tells it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casewright.job.hindrances import Hindrance

__all__ = ["hindrance_lines"]


def hindrance_lines(hindrances: Iterable[Hindrance]) -> Iterator[str]:
    """Each with what would help, one to a line."""
    for each in hindrances:
        yield f"  STOP  {each.what}"
        for relief in each.reliefs:
            first, *more = relief.split("\n")
            yield f"        - {first}"
            yield from (f"          {line}" for line in more)
