"""Where a key belongs that stands in the wrong place, or is called by another word."""

from __future__ import annotations

from casewright.job.positions import KeyPath
from casewright.job.syntax import dotted
from casewright.job.tables import (
    BoxesTable,
    CaseTable,
    DoorsTable,
    FrontTable,
    Heading,
    HingeTable,
    PullTable,
    SheetTable,
    ShopTable,
    StyleTable,
    Table,
)

__all__ = ["home_of", "kind_called"]

_OTHER_WORDS = {
    "adjustable_shelves": "shelves", "door": "front", "doors": "front", "drawer_front": "front",
    "label": "title", "toe_kick": "toe", "toekick": "toe", "material": "sheet", "type": "kind",
    "end_panels": "finished", "finished_ends": "finished", "units": "unit",
}  # fmt: skip
"""What else people call a key of the heading or of a case."""

_SEAT = 'kind = "base" with lid = "hinged" or "fixed"'
_TALL = 'kind = "tall"'
_CORNER = "a base or wall case with diagonal, or a base with blind, at that end of its run"
_KINDS = {
    "upper": 'kind = "wall"', "hanging": 'kind = "wall"', "lower": 'kind = "base"',
    "vanity": 'kind = "base"', "drawers": 'kind = "base" with drawers = 3',
    "sink": 'kind = "base" with sink = true', "bench": _SEAT, "seat": _SEAT, "chest": _SEAT,
    "pantry": _TALL, "locker": _TALL, "wardrobe": _TALL, "oven": _TALL,
    "bookshelf": 'kind = "bookcase"', "shelves": 'kind = "bookcase"', "corner": _CORNER,
    "refrigerator": 'kind = "surround"', "fridge": 'kind = "surround"',
    "island": "its cases, with toe = \"plinth\", and [island.NAME]",
}  # fmt: skip
"""What people call a case, and how it is written."""

_SECTIONS: tuple[tuple[type[Table], str], ...] = (
    (BoxesTable, "[boxes]"),
    (DoorsTable, "[doors]"),
    (StyleTable, "[style]"),
    (ShopTable, "[shop]"),
    (CaseTable, "a case, such as [case.upper]"),
    (SheetTable, "the stock, such as [stock.plywood]"),
    (HingeTable, "[hardware.hinge]"),
    (PullTable, "[hardware.pull]"),
)


def kind_called(path: KeyPath, word: str) -> str:
    """How a case is written that is called by a word of its own; empty for every other word.

    Parameters
    ----------
    path
        Where the word stands.
    """
    is_kind = len(path) == len(("case", "NAME", "kind")) and path[::2] == ("case", "kind")
    return _KINDS.get(word.lower(), "") if is_kind else ""


def home_of(path: KeyPath, known: list[str]) -> str:
    """What to do with a key that is not known where it stands; empty when nobody can tell.

    Parameters
    ----------
    path
        Where it stands, itself last.
    known
        Keys that may stand there.
    """
    word = str(path[-1])
    around = path[:-1]
    other = _OTHER_WORDS.get(word.lower(), "")
    if other in known:
        return f"did you mean {other}?"
    if word in Heading.model_fields and around:
        return "it stands at the top of the file, before the first section"
    if "front" in known and word in FrontTable.model_fields:
        return f"it belongs to the doors: front = {{ {word} = ... }}"
    if around and around[0] != "stock" and word in StyleTable.model_fields:
        own = f", or under [{dotted(around)}.style]" if around[0] == "case" else ""
        return f"it belongs under [style]{own}"
    homes = [name for table, name in _SECTIONS if word in table.model_fields]
    return f"it belongs under {homes[0]}" if homes else ""
