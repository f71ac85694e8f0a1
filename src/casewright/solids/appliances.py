"""Appliances in their openings: plain boxes, for the eye alone."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from casewright.room.model import Appliance, Room, Run
from casewright.solids.glb import Node
from casewright.solids.part_solid import Mesh
from casewright.solids.places import case_places, moved_by

__all__ = ["appliance_nodes"]

_FREE = 3.0
"""Left free beside it in its opening, so that it is not drawn into what stands there [mm]."""


def appliance_nodes(room: Room, meshes: list[Mesh]) -> Iterator[Node]:
    """Every appliance of a run, as wide as its opening, as high as it stands, as deep as its run.

    How deep one is its sheet says, which is not known: each says that it is a `shell`,
    "appliance".

    Parameters
    ----------
    meshes
        Theirs are added to it.
    """
    for run, frame in case_places(room):
        if not isinstance(run, Run):
            continue
        lift = float(room.wall_bottom.value) if run.cases[0].spec.is_hung else 0.0
        for each in run.appliances:
            meshes.append(_box(run, each))
            place = frame @ moved_by(float(each.start.value) + _FREE, lift, 0.0)
            says = {"shell": "appliance", "title": each.spec.title}
            yield Node(f"shell.{each.spec.key}", place, len(meshes) - 1, says)


def _box(run: Run, appliance: Appliance) -> Mesh:
    wide = float(appliance.width.value) - 2 * _FREE
    high = float(appliance.spec.height.value)
    deep = max(float(case.depth.value) for case in run.cases)
    points = [(x, y, z) for x in (0.0, wide) for y in (0.0, high) for z in (0.0, deep)]
    quads = ((0, 1, 3, 2), (4, 6, 7, 5), (0, 4, 5, 1), (2, 3, 7, 6), (0, 2, 6, 4), (1, 5, 7, 3))
    corners = [corner for a, b, c, d in quads for corner in ((a, b, c), (a, c, d))]
    return Mesh(np.array(points, dtype=np.float32), np.array(corners, dtype=np.uint32))
