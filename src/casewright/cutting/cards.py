"""Setting cards, and what a plan costs in work."""

from __future__ import annotations

from collections.abc import Iterable

from casewright.cutting.solution import (
    Direction,
    Leaf,
    Node,
    SettingCard,
    SheetTree,
    Split,
    splits,
)

__all__ = ["effort", "setting_cards"]

_FENCE, _STOP, _GUIDE, _CUT = 15, 10, 25, 3
"""Tenths of a minute: a new fence setting, a new stop, laying the guide for a cut through a whole
sheet, any cut (own defaults of the shop's cost model)."""


def setting_cards(tree: Iterable[SheetTree]) -> tuple[SettingCard, ...]:
    """All pieces by the setting that gives them, widest rips first, then longest crosscuts."""
    found: dict[tuple[Direction, int], list[int]] = {}
    for sheet in tree:
        for split in splits(sheet.root):
            for piece in split.pieces:
                if not _is_left(piece):
                    size = piece.rect.width if split.direction == "rip" else piece.rect.length
                    found.setdefault((split.direction, size), []).append(sheet.sheet)
    order = sorted(found, key=lambda card: (card[0] != "rip", -card[1]))
    return tuple(
        SettingCard(*key, pieces=len(found[key]), sheets=tuple(sorted(set(found[key]))))
        for key in order
    )


def effort(tree: Iterable[SheetTree]) -> int:
    """Work at the saw for settings, guides and cuts [tenths of a minute]."""
    sheets = tuple(tree)
    cards = setting_cards(sheets)
    cuts = sum(len(split.cuts) for sheet in sheets for split in splits(sheet.root))
    settings = sum(_FENCE if card.direction == "rip" else _STOP for card in cards)
    guides = sum(len(sheet.root.cuts) for sheet in sheets if isinstance(sheet.root, Split))
    return settings + _GUIDE * guides + _CUT * cuts


def _is_left(piece: Node) -> bool:
    return isinstance(piece, Leaf) and piece.use != "part"
