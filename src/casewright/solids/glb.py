"""Meshes with names as a binary glTF 2.0 file (Khronos), in metres as the format asks."""

from __future__ import annotations

import json
import struct
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from casewright.solids.part_solid import Mesh
from casewright.solids.places import Matrix

__all__ = ["Node", "glb_bytes"]

_MAGIC, _VERSION, _JSON, _BIN = 0x46546C67, 2, 0x4E4F534A, 0x004E4942
_FLOAT, _UINT = 5126, 5125
_VERTICES, _INDICES = 34962, 34963
_METRE = 0.001


@dataclass(frozen=True, slots=True)
class Node:
    """Something with a name and a place, and what is in it.

    Parameters
    ----------
    name
        Path of a part, key of a case.
    place
        In what it is in: of shape (4, 4) [mm].
    mesh
        Number of its mesh; None: it only holds others.
    says
        What a viewer needs to know of it.
    inside
        Nodes in it.
    """

    name: str
    place: Matrix
    mesh: int | None = None
    says: Mapping[str, Any] = field(default_factory=dict)
    inside: tuple[Node, ...] = ()


def glb_bytes(roots: Sequence[Node], meshes: Sequence[Mesh]) -> bytes:
    """A binary glTF file.

    Parameters
    ----------
    meshes
        In millimetres; the scene as a whole is scaled to metres.
    """
    binary = bytearray()
    views: list[dict[str, Any]] = []
    accessors: list[dict[str, Any]] = []
    drawn: list[dict[str, Any]] = []
    for mesh in meshes:
        drawn.append(
            {"primitives": [{"attributes": {"POSITION": len(accessors)},
                             "indices": len(accessors) + 1}]}
        )  # fmt: skip
        for data, kind in ((mesh.points, _VERTICES), (mesh.corners, _INDICES)):
            views.append({"buffer": 0, "byteOffset": len(binary), "byteLength": data.nbytes,
                          "target": kind})  # fmt: skip
            binary += data.tobytes()
        accessors.append(
            {"bufferView": len(views) - 2, "componentType": _FLOAT, "type": "VEC3",
             "count": len(mesh.points), "min": mesh.points.min(axis=0).tolist(),
             "max": mesh.points.max(axis=0).tolist()}
        )  # fmt: skip
        accessors.append(
            {"bufferView": len(views) - 1, "componentType": _UINT, "type": "SCALAR",
             "count": mesh.corners.size}
        )  # fmt: skip
    nodes: list[dict[str, Any]] = []
    scale = np.diag([_METRE, _METRE, _METRE, 1.0])
    top = _put(Node("room", scale, inside=tuple(roots)), nodes)
    document = {
        "asset": {"version": "2.0", "generator": "Casewright"},
        "scene": 0, "scenes": [{"nodes": [top]}], "nodes": nodes, "meshes": drawn,
        "buffers": [{"byteLength": len(binary)}], "bufferViews": views, "accessors": accessors,
    }  # fmt: skip
    return _file(document, bytes(binary))


def _put(node: Node, nodes: list[dict[str, Any]]) -> int:
    inside = [_put(each, nodes) for each in node.inside]
    made: dict[str, Any] = {"name": node.name}
    if not np.array_equal(node.place, np.eye(4)):
        made["matrix"] = [float(value) for value in node.place.T.flat]
    if node.mesh is not None:
        made["mesh"] = node.mesh
    if node.says:
        made["extras"] = dict(node.says)
    if inside:
        made["children"] = inside
    nodes.append(made)
    return len(nodes) - 1


def _file(document: Mapping[str, Any], binary: bytes) -> bytes:
    text = json.dumps(document, ensure_ascii=False, separators=(",", ":")).encode()
    text += b" " * (-len(text) % 4)
    binary += b"\0" * (-len(binary) % 4)
    length = 12 + 8 + len(text) + 8 + len(binary)
    return b"".join((
        struct.pack("<III", _MAGIC, _VERSION, length),
        struct.pack("<II", len(text), _JSON), text,
        struct.pack("<II", len(binary), _BIN), binary,
    ))  # fmt: skip
