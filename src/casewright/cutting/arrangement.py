"""Panels, strips and parts of each sheet, put into the order a careful person likes.

Sizes here are real ones, in the frame of the first cut (see `casewright.cutting.shapes`), counted
from the corner of the usable ground.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from casewright.cutting.shapes import Action, Laid, Task

__all__ = ["Item", "Panel", "Strip", "UsedBin", "arrange"]


@dataclass(slots=True)
class Item:
    """A part of a shape: its low corner and its sides."""

    shape: int
    u: int
    v: int
    du: int
    dv: int


@dataclass(slots=True)
class Strip:
    """Parts in a row along u; `dv` is the greatest of their sides along v."""

    v: int
    dv: int
    items: list[Item] = field(default_factory=list)

    @property
    def end(self) -> int:
        """Where the last part ends along u."""
        return max(item.u + item.du for item in self.items)


@dataclass(slots=True)
class Panel:
    """Strips that follow each other along v."""

    u: int
    strips: list[Strip] = field(default_factory=list)

    @property
    def end(self) -> int:
        """Where the longest strip ends along u."""
        return max(strip.end for strip in self.strips)


@dataclass(slots=True)
class UsedBin:
    """One sheet in use: which bin, and its panels."""

    bin: int
    panels: list[Panel] = field(default_factory=list)


def arrange(laid: Iterable[Laid], task: Task) -> list[UsedBin]:
    """Sheets with their panels, strips and parts.

    On a sheet without defects the widest panel, the widest strip and the longest part come first,
    so that saw settings descend and leftovers lie together at the far end.
    """
    sheets: list[UsedBin] = []
    for part in laid:
        if part.action == Action.NEW_SHEET:
            sheets.append(UsedBin(part.bin))
        if part.action >= Action.NEW_PANEL:
            panels = sheets[-1].panels
            start = panels[-1].end + task.kerf if panels else 0
            panels.append(Panel(start))
        du, dv = part.du - task.kerf, part.dv - task.kerf
        strips = sheets[-1].panels[-1].strips
        if part.action != Action.INTO_STRIP:
            strips.append(Strip(part.v, dv))
        strips[-1].items.append(Item(part.shape, part.u, part.v, du, dv))
    for sheet in sheets:
        if not task.bins[sheet.bin].defects:
            _sort(sheet, task.kerf)
    return sheets


def _sort(sheet: UsedBin, kerf: int) -> None:
    sheet.panels.sort(key=lambda panel: panel.u - panel.end)
    at = 0
    for panel in sheet.panels:
        span = panel.end - panel.u
        _sort_strips(panel, at, kerf)
        panel.u = at
        at += span + kerf


def _sort_strips(panel: Panel, u: int, kerf: int) -> None:
    panel.strips.sort(key=lambda strip: (-strip.dv, panel.u - strip.end))
    v = 0
    for strip in panel.strips:
        strip.items.sort(key=lambda item: (-item.du, -item.dv, item.shape))
        at = u
        for item in strip.items:
            item.u, item.v = at, v
            at += item.du + kerf
        strip.v = v
        v += strip.dv + kerf
