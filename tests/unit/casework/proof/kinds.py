"""One small case of every kind, for what is asked of all of them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from tests.builders import (
    APPLIED,
    GLASS,
    MITRED,
    PANEL,
    SLAB,
    Unit,
    drawer_base,
    given,
    plain_style,
    rows,
    stock,
)

from casewright.casework.specs import ApplianceOpening, RowSpec
from casewright.stock import Board

__all__ = ["KINDS"]

STRIP = stock("mm")["strip"]
assert isinstance(STRIP, Board)
THIN_BOARD = replace(STRIP, key="thin_board", species="red maple")

PARTIAL = replace(SLAB, overlay="partial")
INSET = replace(SLAB, overlay="inset")

KINDS: dict[str, tuple[Unit, dict[str, Any]]] = {
    "upper": ("in", {"front": replace(SLAB, edge="band"), "edge": "band"}),
    "upper with captured back": (
        "mm", {"joint": "dado", "back": "grooved", "front": APPLIED, "width": "450"},
    ),
    "upper with a mid rail in its door": (
        "in",
        {
            "front": replace(PANEL, mid_rail=given("8")), "width": "14", "height": "17",
            "shelves": 0,
        },
    ),
    "upper with mitred doors": ("in", {"front": MITRED, "width": "18", "shelves": 0}),
    "upper with inset doors": (
        "mm", {"front": replace(SLAB, overlay="inset"), "width": "700", "shelves": 1},
    ),
    "upper with panelled doors": (
        "mm",
        {
            "front": replace(PANEL, leaves=1), "width": "360",
            "upper_front": replace(PANEL, panel="thin_board", leaves=1),
            "height": "1000", "divider": "600", "joint": "dado", "shelves": 0,
            "goods": stock("mm") | {"thin_board": THIN_BOARD},
        },
    ),
    "upper with applied back": ("in", {"joint": "rabbet", "back": "applied", "edge": "lip"}),
    "upper with thick back": (
        "in", {"back": "inset", "fixed_shelves": ("14",), "skirt": "2", "shelves": 0},
    ),
    "stack": (
        "in",
        {
            "joint": "dado", "width": "20", "height": "51", "divider": "36",
            "front": replace(APPLIED, leaves=1),
            "upper_front": replace(GLASS, film=True, leaves=1), "crown": "1 1/2",
            "finished": ("right",),
            "shelves": 0,
        },
    ),
    "base": (
        "mm",
        {
            "kind": "base", "toe": "notch", "width": "800", "height": "870", "depth": "580",
            "front": SLAB, "finished": ("left",), "shelves": 1,
            "register": (given("300", "mm"), given("55", "mm")),
        },
    ),
    "surround": (
        "in",
        {
            "key": "cold", "kind": "surround", "width": "36 1/4", "height": "91 1/2",
            "depth": "25", "shelves": 0, "finished": ("left", "right"), "end": "skin",
            "end_stock": "ply18", "appliance": ApplianceOpening(
                "cold", "cold", given("35 3/4"), given("70"), given("24")),
        },
    ),
    "surround behind a face frame": (
        "mm",
        {
            "key": "cold", "kind": "surround", "width": "610", "height": "2200", "depth": "400",
            "shelves": 0, "finished": ("left", "right"), "end": "skin", "end_stock": "ply18",
            "front": PARTIAL, "face": "face frame", "face_stock": "board",
            "appliance": ApplianceOpening(
                "cold", "cold", given("598", "mm"), given("1700", "mm"), given("380", "mm")),
        },
    ),
    "round an oven": (
        "in",
        {
            "key": "tower", "kind": "tall", "toe": "notch", "width": "30", "height": "72",
            "depth": "23 1/4", "shelves": 0,
            "rows": (
                RowSpec("open", None, None),
                RowSpec("appliance", None, None, None, ApplianceOpening(
                    "oven", "oven", given("28 1/2"), given("28 1/2"), given("22 1/2"))),
                RowSpec("open", given("12"), None),
            ),
        },
    ),
    "round an oven behind a face frame": (
        "in",
        {
            "key": "tower", "kind": "tall", "toe": "notch", "width": "18", "height": "53",
            "depth": "14", "shelves": 0, "face": "face frame", "face_stock": "board",
            "front": replace(PARTIAL, leaves=1),
            "rows": (
                RowSpec("doors", None, replace(PARTIAL, leaves=1)),
                RowSpec("appliance", None, None, None, ApplianceOpening(
                    "oven", "oven", given("14 7/8"), given("18"), given("12"))),
                RowSpec("open", given("9"), None),
            ),
        },
    ),
    "tall": (
        "in",
        {
            "key": "tall", "kind": "tall", "toe": "notch", "width": "16", "height": "90",
            "depth": "23 1/4", "divider": "54", "front": SLAB, "upper_front": SLAB, "shelves": 0,
            "upper_shelves": 1,
        },
    ),
    "upper between ends flush with its door": (
        "in",
        {
            "front": SLAB, "finished": ("left", "right"), "end": "flush", "end_stock": "ply18",
            "width": "15", "height": "16", "shelves": 0,
        },
    ),
    "upper with a skin": (
        "mm",
        {
            "finished": ("right",), "end": "skin", "end_stock": "ply6", "height": "400",
            "shelves": 0,
        },
    ),
    "base on a plinth": (
        "in",
        {"kind": "base", "toe": "plinth", "height": "34 1/2", "depth": "23 1/4", "shelves": 0},
    ),
    "drawer over a door": (
        "mm", drawer_base("mm", "drawer 180", "doors", width="450", height="640", toe="none"),
    ),
    "drawer on concealed slides": (
        "in", drawer_base("in", "drawer", joint="dado", slides="undermount", width="16",
                          height="11", toe="none"),
    ),
    "drawer with fingers": (
        "in", drawer_base("in", "drawer", joint="box joint", width="14", height="8", toe="none",
                          style=plain_style("in", finger="1 1/2")),
    ),
    "roll-out": (
        "in", drawer_base("in", roll_outs=1, width="16", height="16", toe="none"),
    ),
    "stack behind a face frame": (
        "in",
        {
            "width": "15", "height": "24", "divider": "12", "shelves": 0, "front": PARTIAL,
            "face": "face frame", "face_stock": "board",
        },
    ),
    "roll-out behind a face frame": (
        "in",
        drawer_base(
            "in", roll_outs=1, width="15", height="16", toe="none", face="face frame",
            face_stock="board", front=replace(SLAB, overlay="inset", leaves=1),
        ),
    ),
    "open row behind a face frame": (
        "mm",
        drawer_base(
            "mm", width="420", height="600", depth="360", toe="none", face="face frame",
            face_stock="board", front=replace(PARTIAL, leaves=1),
            rows=(RowSpec("open", given("180", "mm"), None),
                  RowSpec("doors", None, replace(PARTIAL, leaves=1))),
        ),
    ),
    "roll-outs beside a mullion": (
        "in",
        drawer_base(
            "in", roll_outs=1, width="26", height="16", toe="none", face="face frame",
            face_stock="board", front=PARTIAL, mullion=True,
        ),
    ),
    "sink base": (
        "mm", drawer_base("mm", "false front 180", "doors", width="450", toe="none", sink=True,
                          back="open"),
    ),
    "sink base with inset fronts": (
        "in",
        drawer_base(
            "in", width="18", height="20", toe="none", sink=True, back="open", row_rails=True,
            front=INSET, rows=(RowSpec("false front", given("5"), INSET, INSET),
                               RowSpec("doors", None, INSET, INSET)),
        ),
    ),
    "upper with a face frame": (
        "in",
        {
            "front": PARTIAL, "width": "20", "height": "16", "mullion": True, "shelves": 0,
            "scribes": ("left",), "face": "face frame", "face_stock": "board",
        },
    ),
    "upper with a tenoned face frame": (
        "in",
        {
            "front": PARTIAL, "width": "16", "height": "14", "shelves": 0, "face": "face frame",
            "face_stock": "board", "face_joint": "tenons",
        },
    ),
    "sink base with a face frame": (
        "in",
        drawer_base(
            "in", width="18", height="24", sink=True, back="open", front=PARTIAL,
            rows=(RowSpec("false front", given("6"), PARTIAL, PARTIAL),
                  RowSpec("doors", None, PARTIAL, PARTIAL)),
            face="face frame", face_stock="board",
        ),
    ),
    "blind corner base": (
        "mm",
        {
            "kind": "base", "toe": "none", "blind": "right", "width": "1050", "height": "500",
            "depth": "580", "shelves": 0, "front": replace(SLAB, leaves=1, hinge="left"),
        },
    ),
    "blind corner base with a drawer": (
        "in",
        drawer_base(
            "in", blind="right", width="42", height="22", toe="none",
            front=replace(SLAB, leaves=1),
            rows=(RowSpec("drawer", given("6"), replace(SLAB, leaves=1), replace(SLAB, leaves=1)),
                  RowSpec("doors", None, replace(SLAB, leaves=1), replace(SLAB, leaves=1))),
        ),
    ),
    "blind corner base with an inset door": (
        "in",
        {
            "kind": "base", "toe": "none", "blind": "left", "width": "42", "height": "20",
            "depth": "23 1/4", "shelves": 0,
            "front": replace(SLAB, leaves=1, hinge="right", overlay="inset"),
        },
    ),
    "framed blind corner base": (
        "in",
        {
            "kind": "base", "toe": "none", "blind": "left", "width": "45", "height": "20",
            "depth": "23 1/4", "shelves": 0, "face": "face frame", "face_stock": "board",
            "front": replace(SLAB, leaves=1, hinge="right", overlay="partial"),
        },
    ),
    "diagonal corner": ("mm", {
        "diagonal": "left", "width": "610", "height": "500", "depth": "330", "shelves": 1,
        "front": replace(SLAB, leaves=1),
    }),
    "diagonal corner base": ("in", {
        "kind": "base", "toe": "notch", "diagonal": "right", "width": "36", "height": "24",
        "depth": "23 1/4", "shelves": 0, "front": replace(SLAB, leaves=1),
    }),
    "diagonal corner on a plinth": ("in", {
        "kind": "base", "toe": "plinth", "diagonal": "left", "width": "36", "height": "20",
        "depth": "23 1/4", "shelves": 0, "front": replace(SLAB, leaves=1),
    }),
    "diagonal corner with an inset door": ("mm", {
        "diagonal": "left", "width": "610", "height": "500", "depth": "330", "shelves": 1,
        "front": replace(SLAB, leaves=1, overlay="inset"),
    }),
    "diagonal corner with partial doors": ("in", {
        "kind": "base", "toe": "notch", "diagonal": "left", "width": "44", "height": "24",
        "depth": "23 1/4", "shelves": 0, "front": replace(SLAB, leaves=2, overlay="partial"),
    }),
    "diagonal corner behind a face frame": ("in", {
        "diagonal": "right", "width": "24", "height": "16", "depth": "13", "shelves": 0,
        "front": replace(PARTIAL, leaves=1), "face": "face frame", "face_stock": "board",
    }),
    "diagonal corner base behind a face frame": ("mm", {
        "kind": "base", "toe": "notch", "diagonal": "left", "width": "900", "height": "600",
        "depth": "600", "shelves": 0, "front": replace(INSET, leaves=1), "face": "face frame",
        "face_stock": "board",
    }),
    "diagonal sink base": ("in", drawer_base(
        "in", diagonal="left", width="40", height="24", toe="notch", sink=True, back="open",
        front=replace(SLAB, leaves=1),
        rows=(RowSpec("false front", given("5"), replace(SLAB, pull=False),
                      replace(SLAB, pull=False)),
              RowSpec("doors", None, replace(SLAB, leaves=1), replace(SLAB, leaves=1))),
    )),
    "diagonal sink base with inset fronts": ("mm", drawer_base(
        "mm", diagonal="right", width="1000", height="620", toe="none", sink=True, back="open",
        row_rails=True, front=replace(INSET, leaves=1),
        rows=(RowSpec("false front", given("150", "mm"), replace(INSET, pull=False, leaves=1),
                      replace(INSET, pull=False, leaves=1)),
              RowSpec("doors", None, replace(INSET, leaves=1), replace(INSET, leaves=1))),
    )),
    "diagonal corner on its bottom": ("in", {
        "diagonal": "right", "under": True, "width": "24", "height": "16", "depth": "12 1/4",
        "shelves": 0, "front": replace(SLAB, leaves=1),
    }),
    "window seat": (
        "in",
        {
            "kind": "base", "toe": "none", "back": "inset", "lid": "hinged", "lid_stock": "ply18",
            "rows": rows("in", "false front"), "front": SLAB, "shelves": 0, "seated": True,
            "depth": "14", "width": "24",
        },
    ),
    "upper with face strips": (
        "mm",
        {
            "front": SLAB, "width": "400", "height": "400", "shelves": 0, "face": "strips",
            "face_stock": "board",
        },
    ),
    "upper with strips on its divider, skins on its ends": (
        "mm",
        {
            "front": SLAB, "upper_front": SLAB, "width": "400", "height": "700", "shelves": 0,
            "upper_shelves": 0, "divider": "400", "face": "strips", "face_stock": "board",
            "finished": ("left",), "end": "skin", "end_stock": "ply6",
        },
    ),
    "bookcase behind a face frame": (
        "in",
        {
            "kind": "bookcase", "joint": "dado", "width": "18", "height": "24", "depth": "12",
            "shelves": 1, "face": "face frame", "face_stock": "board",
        },
    ),
    "window seat behind a face frame": (
        "in",
        {
            "kind": "base", "toe": "none", "lid": "fixed", "lid_stock": "ply18",
            "front": None, "shelves": 0, "seated": True, "depth": "14", "width": "20",
            "height": "16", "face": "face frame", "face_stock": "board",
        },
    ),
    "open shelves with nosings": (
        "mm",
        {
            "joint": "dado", "front": None, "width": "500", "height": "500",
            "fixed_shelves": ("240",), "shelves": 0, "nosing": "25",
        },
    ),
    "roll-out behind an inset door": (
        "in",
        drawer_base("in", roll_outs=1, width="14", height="16", toe="none",
                    front=replace(INSET, leaves=1)),
    ),
    "roll-out behind face strips": (
        "mm",
        drawer_base("mm", roll_outs=1, width="400", height="400", toe="none", face="strips",
                    face_stock="board", front=replace(SLAB, leaves=1)),
    ),
    "bookcase": (
        "in",
        {
            "kind": "bookcase", "joint": "dado", "width": "36", "height": "84", "depth": "12",
            "shelves": 3, "nosing": "1 1/2",
        },
    ),
}  # fmt: skip
