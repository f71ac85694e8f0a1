"""Questions about places on a wall that a screw may have to keep off."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.findings import Question
from casewright.room.model import Room
from casewright.survey.specs import is_small

__all__ = ["place_questions"]


def place_questions(room: Room) -> Iterator[Question]:
    """Outlets, taps and the like of which no place along the wall was read, behind a run."""
    used = {run.spec.on for run in room.runs}
    for key, wall in room.survey.walls.items():
        for thing in wall.things if key in used else ():
            if not is_small(thing.spec.kind) or thing.left is not None:
                continue
            yield Question(
                path=f"{wall.place.path}.fixed.{thing.spec.key}",
                needs=f"where {thing.spec.title} is along {wall.spec.title}",
                because="cables and pipes run up and down from it, and no screw may meet them",
                waiting=(),
                how=f"under [wall.{key}.fixed.{thing.spec.key}] write centre, or left and width",
            )
