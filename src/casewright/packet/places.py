"""Places in the words of the shop: what a path or a key of the job file means to a person."""

from __future__ import annotations

import re

from casewright.room.model import Room

__all__ = ["place_words", "plain_words"]

_PATH = re.compile(r"[a-z][a-z0-9_]*(?:\.[a-z0-9_]+)+|[a-z]+_[a-z0-9_]+")


def place_words(room: Room, path: str) -> str:
    """What a path is about: 'nosing of the bottom, catalogues'.

    What stands on no part goes by what it belongs to: a door, a case, a run, a stock.
    """
    names = _names(room)
    rest = path
    while rest and rest not in names:
        rest = rest.rpartition(".")[0]
    if rest:
        return names[rest]
    return path.rpartition(".")[2].replace("_", " ")


def plain_words(room: Room, words: str) -> str:
    """A sentence with titles where it names cases and parts by their keys."""
    names = _names(room)
    keys = [case.key for case in room.cases if case.key != case.spec.title]
    for key in sorted(keys, key=len, reverse=True):
        words = re.sub(rf"\b(of|in|on|and|to|for) {re.escape(key)}(?![\w.])",
                       rf"\1 {names[key]}", words)  # fmt: skip
    return _PATH.sub(lambda found: _known(names, found.group()), words)


def _known(names: dict[str, str], path: str) -> str:
    """The name of the nearest thing that has one, else the text as it is."""
    rest = path
    while rest and rest not in names:
        rest = rest.rpartition(".")[0]
    return names[rest] if rest else path


def _names(room: Room) -> dict[str, str]:
    """Every thing with a name of its own, by path."""
    found = {f"stock.{key}": goods.title for key, goods in room.spec.stock.items()}
    hardware = room.spec.hardware
    found |= {f"hardware.{s.key}": s.title for s in (hardware.slide, hardware.undermount)}
    for wall in room.spec.survey.walls:
        found[f"survey.wall.{wall.key}"] = wall.title
        found |= {
            f"survey.wall.{wall.key}.fixed.{each.key}": f"{each.title}, {wall.title}"
            for each in wall.things
        }
    found |= {f"survey.corner.{each.key}": each.title for each in room.spec.survey.corners}
    found |= {f"survey.way_in.{each.key}": each.title for each in room.spec.survey.way_in}
    for run in room.runs:
        found[f"run.{run.spec.key}"] = run.spec.title
    for case in room.cases:
        found[case.key] = case.spec.title
        found |= {each.path: f"{each.title}, {case.spec.title}" for each in case.drawers}
        found |= {front.path: f"{front.title}, {case.spec.title}" for front in case.fronts}
    titles = {case.key: case.spec.title for case in room.cases}
    for part in room.parts:
        place = titles.get(part.case) or found.get(part.case, part.case)
        found[part.path] = f"{part.title}, {place}"
    return found
