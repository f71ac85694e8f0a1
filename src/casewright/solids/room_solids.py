"""The room, a case or a part as a glTF file: every part by its path, with the way it is pulled."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

import numpy as np

from casewright.casework.cases import Case, Door
from casewright.casework.features import Cut, Feature
from casewright.casework.parts import Part
from casewright.casework.pulling import way_out
from casewright.dims import Dim
from casewright.room.model import Room, Run
from casewright.solids.appliances import appliance_nodes
from casewright.solids.glb import Node, glb_bytes
from casewright.solids.part_solid import Mesh, part_mesh
from casewright.solids.places import Matrix, case_places, island_places, part_place
from casewright.solids.shell import shell_nodes

__all__ = ["room_glb"]

_OPEN_DEG = 100
"""How far doors are shown open."""

_PULLED = Fraction(3, 4)
"""Of its depth that a drawer is shown pulled."""


def room_glb(room: Room, of: str = "") -> bytes | None:
    """A glTF file in metres.

    Parameters
    ----------
    of
        Key of a case, which for an island is all that it is made of; path of a part; empty: the
        whole room.

    Returns
    -------
    None when nothing has that name. Each part's node has its path as its name; what it says:
    `title`, `mark`, `case`, `front` (of the door or drawer it belongs to), `apart` (the way it
    is pulled out, in its case's axes [mm]), `opens` or `slides` for what moves with a front.
    Walls and floor of the room and appliances say which `shell` they are instead.
    """
    shapes = _Shapes()
    roots = tuple(_roots(room, of, shapes))
    if roots and not of:
        shell = (*shell_nodes(room, shapes.meshes), *appliance_nodes(room, shapes.meshes))
        roots = (*roots, *shell)
    return glb_bytes(roots, shapes.meshes) if roots else None


_Seen = tuple[Case | Run, tuple[Part, ...], Matrix]
"""What is to be seen, which of its pieces, where it is."""


def _roots(room: Room, of: str, shapes: _Shapes) -> Iterator[Node]:
    for thing, parts, place in _seen(room, of):
        nodes = tuple(_part(part, thing, shapes) for part in parts)
        if nodes:
            key = _key(thing)
            yield Node(key, place, None, {"title": thing.spec.title, "case": key}, nodes)


def _seen(room: Room, of: str) -> Iterator[_Seen]:
    """The room; a thing by itself in its own axes, an island with all that it is made of."""
    island = next((each for each in room.islands if each.key == of), None)
    if island is not None:
        body = room.case_of(island)
        yield body, body.parts, np.eye(4)
        for thing, place in island_places(room, island):
            yield thing, _parts(thing), place
        return
    for thing, place in case_places(room):
        parts = tuple(part for part in _parts(thing) if of in ("", _key(thing), part.path))
        yield thing, parts, np.eye(4) if of else place


def _key(thing: Case | Run) -> str:
    return thing.key if isinstance(thing, Case) else f"run.{thing.spec.key}"


def _parts(thing: Case | Run) -> tuple[Part, ...]:
    return thing.parts if isinstance(thing, Case) else thing.own_parts


def _part(part: Part, thing: Case | Run, shapes: _Shapes) -> Node:
    says: dict[str, Any] = {
        "path": part.path, "title": part.title, "mark": part.mark, "case": part.case,
        "role": part.role, "stock": part.stock,
    }  # fmt: skip
    if isinstance(thing, Case):
        says["apart"] = [float(way) for way in way_out(part, thing)]
        says |= _moves(part, thing)
    return Node(part.path, part_place(part, thing), shapes.number(part), says)


def _moves(part: Part, case: Case) -> dict[str, Any]:
    """How a part moves when its front is opened."""
    front = next((f for f in case.fronts if f.path == part.front), None)
    drawer = next(
        (d for d in case.drawers if part.front in (d.path, d.front) or part.path in d.parts), None
    )
    if drawer is not None:
        return {"front": drawer.front, "slides": float(drawer.depth.value * _PULLED)}
    if isinstance(front, Door) and not part.turned:
        left = front.hinge_side == "left"
        at = float(front.x.value if left else front.x.value + front.width.value)
        back = float(case.depth.value)
        opens = {"x": at, "z": back, "deg": -_OPEN_DEG if left else _OPEN_DEG}
        return {"front": front.path, "opens": opens}
    return {"front": part.front} if part.front else {}


class _Shapes:
    """Meshes by shape: parts that are alike share one."""

    def __init__(self) -> None:
        self.meshes: list[Mesh] = []
        self._numbers: dict[tuple[object, ...], int] = {}

    def number(self, part: Part) -> int:
        """Number of a part's mesh."""
        size = part.finished
        key = (
            size.length.value, size.width.value, size.thickness.value,
            *(_shape(feature) for feature in part.features),
        )  # fmt: skip
        if key not in self._numbers:
            self._numbers[key] = len(self.meshes)
            self.meshes.append(part_mesh(part))
        return self._numbers[key]


def _shape(feature: Feature) -> tuple[object, ...]:
    if isinstance(feature, Cut):
        return (
            feature.kind, feature.face, feature.runs, feature.datum, feature.at.value,
            feature.width.value, feature.depth.value, _value(feature.start), _value(feature.end),
        )  # fmt: skip
    return (
        feature.kind, feature.face, feature.datum_l, feature.datum_w, feature.diameter.value,
        _value(feature.depth), tuple((a.value, b.value) for a, b in feature.places),
    )  # fmt: skip


def _value(dim: Dim | None) -> Fraction | None:
    return None if dim is None else dim.value
