"""Cuts and holes set up for a tool that the shop does not own.

A card that says how to set a tool is of no use to somebody who has none. What one tool cannot do
another often can, by another way of building; else the tool has to be bought or borrowed first.
Jigs guide a drill, so they need one. A router out of its table is a router.

Passes
------
An upper with pocket screws in a shop with a drill and a pocket-hole jig.

Fails
-----
The same upper in a shop without the jig.

Sources
-------
`common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from casewright.casework.features import Feature
from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, thickness
from casewright.dims import Dim, tell
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.shop import Shop, ToolKind

__all__ = ["RULE"]

_NAME = "tool missing"

_STANDS_IN: dict[str, tuple[ToolKind, ...]] = {"router": ("router", "router table")}
_DRILLED = ("pocket-hole jig", "pin jig", "hinge jig")
_NAMES = {"pocket": "pocket holes", "shelf pins": "shelf pin holes", "hinge cup": "hinge cups",
          "hinge plate": "hinge plate holes", "pull": "pull holes", "notch": "notches",
          "rabbet": "rabbets", "dado": "dadoes", "groove": "grooves", "lap": "laps",
          "rebate": "rebates", "tongue": "tongues", "mitre": "mitres", "slot": "slots for splines",
          "finger": "box joints", "trim": "face strips trimmed flush",
          "mortise": "mortises", "clip": "clipped corners", "bevel": "bevelled edges",
          "cutout": "openings in panels",
          "slide": "slide holes", "slide hook": "hook holes", "front screw": "holes for fronts",
          "pull play": "pull holes", "panel screw": "pilot holes"}  # fmt: skip
_INSTEAD = {
    "shelf pins": "shelves = 0, or fixed shelves", "mortise": 'face_joint = "pocket screws"',
}  # fmt: skip
_SHOWN = 3
_SCREWS = 'joint = "pocket screws"'


class _Work(NamedTuple):
    """A kind of cut or hole, whether it runs across the grain, whether it is in a door."""

    kind: str
    cross: bool
    door: bool


class _Lack(NamedTuple):
    """What a tool would have been needed for."""

    work: dict[_Work, None]
    parts: dict[str, Part]


def _examine(room: Room) -> Iterator[Breach]:
    shop = room.spec.shop
    lacking: dict[str, _Lack] = {}
    for part in room.parts:
        for feature in part.features:
            for tool in _missing(shop, feature):
                lack = lacking.setdefault(tool, _Lack({}, {}))
                cross = getattr(feature, "runs", "") == "w"
                lack.work.setdefault(_Work(feature.kind, cross, bool(part.front)))
                lack.parts.setdefault(part.path, part)
    for tool, lack in lacking.items():
        yield _lacks_tool(room, tool, lack)
    yield from _lacks_bit(room)


def _missing(shop: Shop, feature: Feature) -> Iterator[str]:
    tool = feature.setup.tool
    if not any(kind in shop.tools for kind in _STANDS_IN.get(tool, (tool,))):
        yield tool
    if tool in _DRILLED and not shop.has("drill"):
        yield "drill"


def _lacks_tool(room: Room, tool: str, lack: _Lack) -> Breach:
    shop, paths = room.spec.shop, list(lack.parts)
    names = ", ".join(paths[:_SHOWN])
    more = f" and {len(paths) - _SHOWN} more" if len(paths) > _SHOWN else ""
    what = ", ".join(dict.fromkeys(_NAMES.get(work.kind, work.kind) for work in lack.work))
    ways: list[str] = []
    if tool != "drill":
        ways = [way for work in lack.work for way in _other_ways(shop, work, lack.parts)]
    if not _may_be_screwed(room, lack):
        ways = [way for way in ways if way != _SCREWS]
    own = f'a {tool}, bought or borrowed: add "{tool}" to tools in [shop]'
    return Breach(
        paths[0],
        f"{what} of {names}{more} are set up for a {tool}, which the shop does not own",
        measured=", ".join(shop.tools),
        limit=tool,
        remedies=(*dict.fromkeys(ways), own),
    )


def _may_be_screwed(room: Room, lack: _Lack) -> bool:
    """Whether some of the parts belong to a case that is no bookcase: that has dadoes always."""
    cases = {case.spec.key: case.spec.kind for case in room.cases}
    return any(cases.get(path.partition(".")[0]) != "bookcase" for path in lack.parts)


def _other_ways(shop: Shop, work: _Work, parts: dict[str, Part]) -> Iterator[str]:
    """Ways of building that do without."""
    roles = {part.role for part in parts.values()}
    routes = any(kind in shop.tools for kind in _STANDS_IN["router"])
    match work.kind:
        case "pocket":
            if routes and roles - {"nailer", "stretcher", "rail"}:
                yield 'joint = "dado" for bottoms, tops and fixed shelves'
            if "nailer" in roles:
                yield 'back = "inset" for wall cases: no nailers'
        case "dado" | "rabbet" if work.cross:
            if shop.has("pocket-hole jig"):
                yield _SCREWS
        case "rabbet" | "groove" if not work.door:
            yield 'back = "applied"'
        case "lap" | "rebate" | "groove" | "tongue" | "mitre" | "slot":
            yield 'construction = "applied frame" or "slab"'
        case "shelf pins" | "mortise":
            yield _INSTEAD[work.kind]
        case "notch" | "finger":
            yield 'toe = "plinth"' if work.kind == "notch" else 'joint = "rabbet" in [drawers]'
        case _:
            return


def _lacks_bit(room: Room) -> Iterator[Breach]:
    """Routed cuts for which every straight bit in the shop is too wide."""
    seen: set[str] = set()
    for part in room.parts:
        for feature in part.features:
            setup, width = feature.setup, getattr(feature, "width", None)
            if setup.tool != "router" or setup.bit_size is not None or feature.kind == "trim":
                continue  # a flush-trim bit follows its bearing
            if not isinstance(width, Dim):
                continue
            text = thickness(room, width.value)
            if text in seen:
                continue
            seen.add(text)
            owned = ", ".join(thickness(room, bit.value) for bit in room.spec.shop.bits)
            own = reckoning(room, _NAME, feature.path)
            wide = own.thickness(width, "width")
            says = "no straight bit in the shop is as narrow as the {} of {}"
            buy = tell("a straight bit of {} or less: write it into bits in [shop]", wide)
            yield Breach(
                feature.path,
                tell(says, feature.kind, wide),
                measured=owned,
                limit=text,
                remedies=(buy,),
                own=own,
            )


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "common practice", _examine)
