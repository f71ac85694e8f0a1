"""Goods, hardware and tools of a home shop: what holds where a job file says nothing.

They are written as in a job file and read by the same tables. Sizes are those on labels, to be
replaced by readings; hardware numbers are the usual ones, to be replaced by the sheet in the box.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Any

from casewright.dims import Unit
from casewright.job.positions import KeyPath
from casewright.shop import ToolKind

__all__ = ["TOOL_ACCURACY", "USUAL_TOOLS", "Accuracy", "usual_source", "usual_tables"]


def _stock(unit: Unit) -> dict[str, dict[str, Any]]:
    return _sheets(unit) | _solid(unit) | _glazing(unit)


def _sheets(unit: Unit) -> dict[str, dict[str, Any]]:
    def sheet(label: str, thickness: str, material: str, **more: Any) -> dict[str, Any]:
        return {
            "kind": "sheet", "title": f"{label} {material}",
            "size": ["96", "48"] if unit == "in" else ["2440", "1220"], "thickness": thickness,
            "material": material.rpartition(" ")[2], **more,
        }  # fmt: skip

    ply = {"grain": "length", "stiffness": 8200}
    if unit == "in":
        return {
            "plywood": sheet("3/4 in", "23/32", "cabinet plywood", **ply),
            "thin_plywood": sheet("1/4 in", "7/32", "plywood", **ply),
            "fibreboard": sheet("3/4 in", "3/4", "fibreboard", grain="none"),
            "thin_fibreboard": sheet("5/8 in", "5/8", "fibreboard", grain="none"),
            "drawer_plywood": sheet("1/2 in", "15/32", "plywood", **ply),
        }
    return {
        "plywood": sheet("18 mm", "18", "cabinet plywood", **ply),
        "thin_plywood": sheet("6 mm", "6", "plywood", **ply),
        "fibreboard": sheet("18 mm", "18", "fibreboard", grain="none"),
        "thin_fibreboard": sheet("16 mm", "16", "fibreboard", grain="none"),
        "drawer_plywood": sheet("12 mm", "12", "plywood", **ply),
    }


def _solid(unit: Unit) -> dict[str, dict[str, Any]]:
    inch = unit == "in"
    yard = {
        "width": "5 1/2" if inch else "145",
        "lengths": ["96", "120", "144"] if inch else ["2400", "3000", "3600"],
    }
    return {
        "board": {
            "kind": "board", "title": "1x6 board, planed" if inch else "board 20 x 145, planed",
            "thickness": "3/4" if inch else "20", **yard,
        },
        "strip": {
            "kind": "board", "title": f"{'3/16 in' if inch else '5 mm'} strips, milled",
            "thickness": "3/16" if inch else "5", **yard,
        },
        "band": {
            "kind": "band", "title": "iron-on edge band", "thickness": "1/32" if inch else "0.5",
            "width": "7/8" if inch else "22", "roll": "300" if inch else "7500",
        },
    }  # fmt: skip


def _glazing(unit: Unit) -> dict[str, dict[str, Any]]:
    inch = unit == "in"
    return {
        "glass": {
            "kind": "glazing", "title": "tempered glass, edges seamed",
            "thickness": "1/8" if inch else "4", "material": "tempered glass",
        },
        "acrylic": {
            "kind": "glazing", "title": "clear acrylic", "thickness": "1/8" if inch else "3",
            "material": "acrylic",
        },
    }  # fmt: skip


def _hardware(unit: Unit) -> dict[str, dict[str, Any]]:
    return {
        "hinge": {
            "title": "35 mm cup hinge, full overlay",
            "constant": "13 mm", "bore_distance": ["3 mm", "6 mm"],
            "plate_heights": ["0 mm", "2 mm", "4 mm"], "cup_diameter": "35 mm",
            "cup_depth": "12.5 mm", "plate_line": "37 mm", "plate_pitch": "32 mm",
            "plate_hole": "5 mm", "side_play": "2 mm", "half_crank": "9.5 mm",
            "inset_crank": "18 mm", "stand_off": "1.5 mm",
        },
        "pull": {
            "title": "bar pull", "centres": "96 mm", "hole": "5 mm",
            "projection": "30 mm",
        },
        "pin": {
            "title": "5 mm shelf pin", "hole": "5 mm", "depth": "10 mm", "pitch": "32 mm",
        },
        **_screws(unit),
        **_slides(unit),
    }  # fmt: skip


def _screws(unit: Unit) -> dict[str, dict[str, Any]]:
    inch = unit == "in"
    return {
        "pocket_screw": {
            "title": "pocket screw, coarse thread", "length": "1 1/4" if inch else "32",
            "diameter": "4 mm",
        },
        "wall_screw": {
            "title": "structural washer-head screw", "length": "2 1/2" if inch else "65",
            "diameter": "5 mm",
        },
        "brad": {
            "title": "18 gauge brad" if inch else "1.2 mm brad",
            "length": "1 1/2" if inch else "38", "diameter": "1.2 mm",
        },
        "back_brad": {
            "title": "short 18 gauge brad" if inch else "short 1.2 mm brad",
            "length": "5/8" if inch else "16", "diameter": "1.2 mm",
        },
        "front_screw": {
            "title": "washer-head screw", "length": "1" if inch else "25", "diameter": "4 mm",
        },
        "drawer_screw": {
            "title": "countersunk wood screw", "length": "1 1/2" if inch else "40",
            "diameter": "3.5 mm",
        },
    }  # fmt: skip


def _slides(unit: Unit) -> dict[str, dict[str, Any]]:
    """Usual numbers of slides (common practice, from memory): the sheet in the box governs."""
    inch = unit == "in"
    holes = ["35 mm", "163 mm", "259 mm", "355 mm"]
    return {
        "slide": {
            "title": "pair of side-mounted slides",
            "air": "1/2" if inch else "12.7", "play": "1.6 mm",
            "lengths": ["12", "14", "16", "18", "20", "22", "24"] if inch
            else ["300", "350", "400", "450", "500", "550", "600"],
            "front": "2 mm", "behind": "1/2" if inch else "12", "below": "1/2" if inch else "12",
            "line": "32 mm", "holes": holes, "box_holes": [], "hole": "2.5 mm",
            "depth": "10 mm",
        },
        "undermount": {
            "title": "pair of concealed undermount slides",
            "air": "42 mm", "play": "1.5 mm",
            "lengths": ["12", "15", "18", "21"] if inch else ["300", "350", "400", "450", "500"],
            "front": "3 mm", "behind": "1/2" if inch else "12", "below": "14 mm",
            "line": "23 mm", "holes": ["34 mm", *holes[1:]], "box_holes": [], "hole": "2.5 mm",
            "depth": "10 mm", "thickest": "16 mm", "recess": "13 mm", "notch_width": "35 mm",
            "notch_height": "13 mm", "hook": "6 mm", "hook_depth": "8 mm", "hook_in": "7 mm",
            "hook_up": "24 mm",
        },
    }  # fmt: skip


def _shop(unit: Unit) -> dict[str, Any]:
    inch = unit == "in"
    kerf = "1/8" if inch else "3.2"
    return {
        "tools": list(USUAL_TOOLS),
        "tool": {
            "table saw": {"kerf": kerf, "reach": "25" if inch else "635"},
            "circular saw": {"kerf": kerf},
        },
        "bits": ["1/4", "3/8", "1/2", "3/4"] if inch else ["6", "8", "10", "12", "16", "18"],
        "lift": "25 kg",
        "straightedge": "98" if inch else "2500",
    }


def usual_tables(unit: Unit) -> dict[str, Any]:
    """Sections of a job file with the usual goods, hardware and tools."""
    return {"stock": _stock(unit), "hardware": _hardware(unit), "shop": _shop(unit)}


USUAL_TOOLS: tuple[ToolKind, ...] = (
    "table saw", "circular saw", "router", "pocket-hole jig", "pin jig", "hinge jig", "drill",
    "tape", "calliper",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Accuracy:
    """How far a tool strays: standard deviation and greatest [mm] (common practice)."""

    sigma: Fraction
    limit: Fraction


def _strays(sigma: str) -> Accuracy:
    return Accuracy(Fraction(sigma), 2 * Fraction(sigma))


TOOL_ACCURACY: Mapping[ToolKind, Accuracy] = MappingProxyType({
    "table saw": _strays("0.2"),
    "circular saw": _strays("0.6"),
    "router": _strays("0.1"),
    "router table": _strays("0.1"),
    "pocket-hole jig": _strays("0.3"),
    "pin jig": _strays("0.2"),
    "hinge jig": _strays("0.2"),
    "drill": _strays("0.3"),
    "mitre saw": _strays("0.15"),
    "dado stack": _strays("0.1"),
    "slot cutter": _strays("0.1"),
    "tape": _strays("0.5"),
    "calliper": _strays("0.05"),
    "laser": _strays("0.7"),
    "steel rule": _strays("0.2"),
    "level": _strays("0.7"),
})  # fmt: skip
"""A rip at the fence, a cut along a straightedge, a stop, a jig, a tape's hook: from memory."""

_SOURCES: Mapping[tuple[str, ...], str] = MappingProxyType({
    ("stock", "plywood", "thickness"): "ps1",
    ("stock", "thin_plywood", "thickness"): "ps1",
    ("stock", "drawer_plywood", "thickness"): "ps1",
    ("stock", "board", "thickness"): "ps20",
    ("stock", "board", "width"): "ps20",
    ("hardware", "hinge"): "common practice",
    ("hardware", "slide"): "common practice",
    ("hardware", "undermount"): "common practice",
    ("hardware", "pin"): "system-32",
    ("hardware", "hinge", "plate_line"): "system-32",
    ("hardware", "hinge", "plate_pitch"): "system-32",
    ("hardware", "hinge", "plate_hole"): "system-32",
    ("shop", "tool"): "common practice",
})  # fmt: skip
_ONLY_INCH = ("stock",)


def usual_source(path: KeyPath, unit: Unit) -> str:
    """Key in `casewright.sources` of a usual value; empty when it is our own choice."""
    names = tuple(step for step in path if isinstance(step, str))
    if unit == "mm" and names[:1] == _ONLY_INCH:
        return ""
    for length in range(len(names), 1, -1):
        if names[:length] in _SOURCES:
            return _SOURCES[names[:length]]
    return ""
