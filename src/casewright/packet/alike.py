"""Pieces that lists may name together, and the words that they share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import reduce

from casewright.casework.parts import Part
from casewright.outputs.inlines import Inline, Link
from casewright.packet.part_groups import group_parts

__all__ = ["card_targets", "mark_links", "piece_groups", "shared_title"]

_LOOSE = ("of", "the", "and", "a")


def piece_groups(parts: Iterable[Part]) -> list[list[Part]]:
    """Parts of one kind, stock, blank and finished size together, in the order they first come."""
    found: dict[tuple[object, ...], list[Part]] = {}
    for part in parts:
        blank, size = part.blank, part.finished
        key = (
            part.role, part.stock, part.milled_from, part.grain, bool(part.waits_for),
            blank.length.value, blank.width.value, size.length.value, size.width.value,
            size.thickness.value,
        )  # fmt: skip
        found.setdefault(key, []).append(part)
    return list(found.values())


def shared_title(titles: Sequence[str]) -> str:
    """What several titles have in common: 'left side' and 'right side' make 'side'.

    Titles without a word in common stand side by side.
    """
    unlike = list(dict.fromkeys(titles))
    shared = reduce(_common, (title.split() for title in unlike))
    while shared and shared[-1] in _LOOSE:
        shared = shared[:-1]
    while shared and shared[0] in _LOOSE:
        shared = shared[1:]
    return " ".join(shared) if shared else ", ".join(unlike)


def _common(one: list[str], other: list[str]) -> list[str]:
    """The longest run of words that stand in both in the same order, gaps allowed."""
    table: list[list[list[str]]] = [[[] for _ in range(len(other) + 1)]]
    for word in one:
        row: list[list[str]] = [[]]
        for number, second in enumerate(other):
            above, left = table[-1][number + 1], row[-1]
            best = max(left, above, key=len)
            row.append([*table[-1][number], word] if word == second else best)
        table.append(row)
    return table[-1][-1]


def mark_links(parts: Iterable[Part], anchor: str = "") -> tuple[Inline, ...]:
    """Marks that lead to the cards of their parts.

    Parameters
    ----------
    anchor
        Makes each mark a place that others lead to: this word and the part's path.
    """
    found: list[Inline] = []
    for part in parts:
        found += [", "] if found else []
        found.append(Link(part.mark, part.path, f"{anchor}{part.path}" if anchor else ""))
    return tuple(found)


def card_targets(parts: Iterable[Part]) -> tuple[str, ...]:
    """Anchors of the cards of parts: one for each card."""
    return tuple(group.first.path for group in group_parts(parts))
