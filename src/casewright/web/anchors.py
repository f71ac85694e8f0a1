"""Where an anchor of the packet is found among the pages."""

from __future__ import annotations

from urllib.parse import quote

from casewright.room.model import Room

__all__ = ["Anchors"]

_PAGES = {
    "buy": "buy", "cut-list": "cut", "jigs": "machine", "part-cards": "machine",
    "holds": "assemble",
    "hanging": "install", "trims": "install", "sticks": "install", "tape": "install",
    "survey": "survey", "corners": "survey",
}  # fmt: skip
_KINDS = {"cutting": "cut", "wall": "survey", "run": "layout", "install": "install",
          "setting": "install"}  # fmt: skip


class Anchors:
    """Addresses of what the pages of a room show.

    Parameters
    ----------
    room
        The room: its cases and parts have pages.
    """

    def __init__(self, room: Room) -> None:
        self._cases = {case.key for case in room.cases}
        self._parts = {part.path: part.case for part in room.parts}

    def address(self, anchor: str) -> str:
        """Where an anchor is found; empty where no page has it."""
        mark = quote(anchor, safe=".:_-")
        if anchor in self._cases:
            return f"/cases/{quote(anchor)}"
        if anchor in self._parts:
            return f"/machine/{quote(self._parts[anchor] or 'runs')}#{mark}"
        kind, _, rest = anchor.partition(":")
        if kind == "assembly":
            case = self._case_of(rest)
            return f"/cases/{quote(case)}#{mark}" if case else ""
        page = _PAGES.get(anchor) or (_KINDS.get(kind) if rest else None)
        return f"/{page}#{mark}" if page else ""

    def _case_of(self, path: str) -> str:
        """Key of the case that a path begins with; empty where there is none."""
        while path and path not in self._cases:
            path = path.rpartition(".")[0]
        return path
