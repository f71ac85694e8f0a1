"""Questions about solid wood: which it is, and how moist it is on the day it is cut."""

from __future__ import annotations

from casewright.casework.wood import MADE
from casewright.findings import Question
from casewright.room.model import Room
from casewright.stock import Board

__all__ = ["open_wood", "wood_question"]


def open_wood(room: Room) -> tuple[str, ...]:
    """Paths of what nobody has said of the solid wood that sizes rest on."""
    paths = [
        path
        for key, goods in room.spec.stock.items()
        if isinstance(goods, Board)
        and not goods.species
        and (path := f"stock.{key}.movement") in room.chain.nodes
    ]
    if room.spec.moisture.placeholder and MADE in room.chain.nodes:
        paths.append(MADE)
    return tuple(paths)


def wood_question(room: Room, path: str, waiting: tuple[str, ...]) -> Question:
    """What to find out, as a question that names what waits for it."""
    if path == MADE:
        return Question(
            path=path,
            needs="read the moisture of the boards for the panels with a moisture meter",
            because="how far they will still swell or shrink follows from it, and the air that "
            "is left beside them",
            waiting=waiting,
            how="under [wood] write moisture = ... (percent)",
        )
    key = path.split(".")[1]
    return Question(
        path=path,
        needs=f"say which wood {room.spec.stock[key].title} is",
        because="one wood moves twice as much as another; until then the one that moves most is "
        "reckoned with",
        waiting=waiting,
        how=f'under [stock.{key}] write species = "..."',
    )
