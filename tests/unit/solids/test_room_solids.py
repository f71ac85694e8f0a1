"""Solids of real jobs: tight, as large as their wood, in their places, in an open format."""

from __future__ import annotations

import json
import struct
from collections import Counter
from fractions import Fraction
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from tests.island_room import island_room, island_text

from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.parts import Part
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import units_of
from casewright.facts import NO_FACTS
from casewright.geometry.box import volume
from casewright.job.load import load_job, read_job
from casewright.room.build import build
from casewright.room.model import Room
from casewright.solids.appliances import appliance_nodes
from casewright.solids.part_solid import Mesh, part_mesh
from casewright.solids.places import case_places, part_place
from casewright.solids.room_solids import room_glb
from casewright.solids.shell import shell_nodes

EXAMPLES = Path("examples")


@pytest.fixture(scope="module", params=["garden_room.toml", "gallery_doors.toml"])
def room(request: pytest.FixtureRequest) -> Room:
    """A job of every kind of joint, and one of every kind of door."""
    return build(load_job(EXAMPLES / request.param).spec, NO_FACTS)


def _shapes(room: Room) -> list[Part]:
    """One part of each shape, so that nothing is looked at twice."""
    seen: dict[tuple[object, ...], Part] = {}
    for part in room.parts:
        size = part.finished
        key = (part.role, size.length.value, size.width.value, len(part.features))
        seen.setdefault(key, part)
    return list(seen.values())


def _volume(mesh: Mesh) -> float:
    """By the divergence theorem [mm3]."""
    a, b, c = (mesh.points[mesh.corners[:, n]].astype(np.float64) for n in range(3))
    return float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6)


def test_every_solid_is_tight(room: Room) -> None:
    """Each edge belongs to two triangles, once in each direction: a closed oriented surface."""
    for part in _shapes(room):
        edges = Counter(
            (int(tri[n]), int(tri[(n + 1) % 3]))
            for tri in part_mesh(part).corners
            for n in range(3)
        )
        assert set(edges.values()) == {1}, part.path
        assert all((b, a) in edges for a, b in edges), part.path


def test_a_solid_is_as_large_as_its_wood(room: Room) -> None:
    """Where all cuts are square: the proof's disjoint boxes of wood hold as much."""
    cases = {case.key: units_of(case) for case in room.cases}
    looked = 0
    for part in _shapes(room):
        if part.case not in cases or part.turned or part.diagonal:
            continue
        if any(not (isinstance(f, Cut) and f.is_square) for f in part.features):
            continue
        units = cases[part.case]
        wood = float(Fraction(volume(Solid(part, units).pieces)) / units.per_mm**3)
        assert _volume(part_mesh(part)) == pytest.approx(wood, rel=1e-5), part.path
        looked += 1
    assert looked > 5


def _box(mesh: Mesh, place: Any) -> tuple[np.ndarray[Any, Any], np.ndarray[Any, Any]]:
    points = np.c_[mesh.points, np.ones(len(mesh.points))] @ place.T
    return points[:, :3].min(axis=0), points[:, :3].max(axis=0)


def test_parts_lie_where_the_model_has_them(room: Room) -> None:
    """A part's box in its case is the one that the proof takes it for."""
    for case in room.cases:
        units = units_of(case)
        for part in case.parts:
            if part.turned or part.diagonal or part.features:
                continue
            low, high = _box(part_mesh(part), part_place(part, case))
            outer = [float(Fraction(v) / units.per_mm) for v in Solid(part, units).outer]
            assert low == pytest.approx(outer[::2], abs=1e-3), part.path
            assert high == pytest.approx(outer[1::2], abs=1e-3), part.path


def test_every_case_has_one_place(room: Room) -> None:
    """Each case stands in the room once."""
    keys = [thing.spec.key for thing, _ in case_places(room)]
    assert sorted(set(keys)) == sorted(keys)
    assert {case.key for case in room.cases} <= set(keys)


def test_the_file_is_binary_gltf(room: Room) -> None:
    """Header, chunks and accessors as the specification has them (Khronos glTF 2.0, section 4)."""
    content = room_glb(room)
    assert content is not None
    magic, version, length = struct.unpack_from("<4sII", content)
    assert (magic, version, length) == (b"glTF", 2, len(content))
    size, kind = struct.unpack_from("<I4s", content, 12)
    assert kind == b"JSON"
    assert size % 4 == 0
    document = json.loads(content[20 : 20 + size])
    binary, kind = struct.unpack_from("<I4s", content, 20 + size)
    assert kind == b"BIN\0"
    assert (
        binary == document["buffers"][0]["byteLength"] + -document["buffers"][0]["byteLength"] % 4
    )
    solids = [node for node in document["nodes"] if "mesh" in node]
    named = [node["name"] for node in solids if "shell" not in node.get("extras", {})]
    assert sorted(named) == sorted(part.path for part in room.parts)
    for accessor in document["accessors"]:
        view = document["bufferViews"][accessor["bufferView"]]
        wide = 12 if accessor["type"] == "VEC3" else 4
        assert view["byteLength"] == accessor["count"] * wide


def test_a_case_or_a_part_alone(room: Room) -> None:
    """And nothing for what is not there."""
    case = room.cases[0]
    alone = room_glb(room, case.key)
    assert alone is not None
    assert len(alone) < len(room_glb(room) or b"")
    assert room_glb(room, case.parts[0].path) is not None
    assert room_glb(room, "no such thing") is None


def test_walls_stand_behind_the_cases_with_their_windows_open() -> None:
    """As wide and high as read, less the window: 144 x 96 less 36 x 40 [in]."""
    text = island_text().replace(
        '[wall.west]\nwidth = "144"\n',
        '[wall.west]\nwidth = "144"\nstations = [{ along = 0, down = 40, up = 56 }]\n'
        '[wall.west.fixed.pane]\nkind = "window"\nleft = 50\nwidth = 36\n'
        "bottom = 44\nheight = 40\n",
    )
    meshes: list[Mesh] = []
    nodes = {
        node.name: node for node in shell_nodes(build(read_job(text, "kitchen.toml")), meshes)
    }
    assert [node.says["shell"] for node in nodes.values()] == ["wall", "wall", "wall", "floor"]
    west = nodes["shell.west"].mesh
    assert west is not None
    one, two, three = (meshes[west].points[meshes[west].corners[:, n]] for n in range(3))
    facing = np.cross(two - one, three - one)
    assert facing[:, 2].sum() / 2 == pytest.approx((144 * 96 - 36 * 40) * 25.4**2, rel=1e-5)
    assert (facing[:, 2] > 0).all()  # towards the room


def _names(content: bytes | None) -> list[str]:
    """Of the nodes that have a shape."""
    assert content is not None
    (size,) = struct.unpack_from("<I", content, 12)
    nodes = json.loads(content[20 : 20 + size])["nodes"]
    return sorted(node["name"] for node in nodes if "mesh" in node)


def test_an_island_is_seen_with_all_that_it_is_made_of() -> None:
    """Panels, boxes and what belongs to their runs; also where it has no place in the room yet."""
    room = build(load_job(EXAMPLES / "gallery_islands.toml").spec, NO_FACTS)
    for island in room.islands:
        keys = {island.key}
        for run in room.runs_of(island):
            keys |= {case.key for case in run.cases} | {each.case.key for each in run.plinths}
        own = {part.path for case in room.cases if case.key in keys for part in case.parts}
        own |= {part.path for run in room.runs_of(island) for part in run.own_parts}
        assert set(_names(room_glb(room, island.key))) == own
    seen = [name for name in _names(room_glb(room)) if not name.startswith("shell.")]
    assert seen == sorted(part.path for part in room.parts)


def test_an_appliance_fills_its_opening() -> None:
    """As wide as it less a little on each side, as high as it stands."""
    room = build(load_job(EXAMPLES / "gallery_appliances.toml").spec, NO_FACTS)
    meshes: list[Mesh] = []
    nodes = list(appliance_nodes(room, meshes))
    each = [a for run in room.runs for a in run.appliances]
    assert len(nodes) == len(each) > 1
    for node, appliance in zip(nodes, each, strict=True):
        assert node.mesh is not None
        wide, high, _ = meshes[node.mesh].points.max(axis=0) - meshes[node.mesh].points.min(axis=0)
        assert 0 < float(appliance.width.value) - wide < 10
        assert high == pytest.approx(float(appliance.spec.height.value))
        assert _volume(meshes[node.mesh]) > 0


@pytest.mark.parametrize("side", ["front", "back", "left", "right"])
def test_an_island_stands_in_three_dimensions_where_it_stands_in_plan(side: str) -> None:
    """Its boxes, its panels and nothing twice, inside its body as seen from above."""
    room = island_room(place=f'wall = "west"\noff = 60\nalong = 30\nside = "{side}"')
    [stand] = room.free
    edges = [float(each.value) for each in (stand.left, stand.right, stand.near, stand.far)]
    body = room.case_of(room.islands[0]).key
    seen = [thing.key for thing, _ in case_places(room) if isinstance(thing, Case)]
    assert len(seen) == len(set(seen))
    for thing, place in case_places(room):
        if not isinstance(thing, Case) or thing.key not in (body, "trays", "linen"):
            continue
        wide, deep = float(thing.overall_width.value), float(thing.face_plane.value)
        if thing.key == body:
            wide, deep = float(thing.width.value), float(thing.depth.value)
        for x, z in ((0.0, 0.0), (wide, deep)):
            along, _, out, _ = place @ np.array([x, 0.0, z, 1.0])
            assert edges[0] - 1e-6 <= along <= edges[1] + 1e-6
            assert edges[2] - 1e-6 <= out <= edges[3] + 1e-6
