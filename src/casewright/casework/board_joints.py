"""Joints of the boards of a box: with its sides, and along the faces they stand against."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.box import Board, Box
from casewright.casework.joinery import join_board
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker
from casewright.dims import Origin, Way, tell
from casewright.findings import Finding, Severity
from casewright.sources import INCH

__all__ = ["join_all"]

_ARM = Fraction(235)
"""Least clear width of a case: a driver reaches its pocket screws from inside [mm]."""
_POCKET, _DRIVER = Fraction(28, 15), Fraction(201)
"""How far a pocket runs in, in thicknesses of its board; driver and bit behind it [mm]."""

_TAKES = Origin(
    "solved", "what a driver in line with a pocket there takes, no less than a hand with it",
    "common practice",
)  # fmt: skip


def join_all(maker: Maker, box: Box) -> None:
    """Every board with the sides, and those glued along a face with that."""
    for board in box.boards:
        join_board(maker, box, board)
    by_name = {board.name: board for board in box.boards}
    head = by_name.get("top") or by_name.get("rear_stretcher")
    front_head = by_name.get("front_stretcher")
    for name, edge, target, plane in (
        ("nailer_top", "w1", head, "t1"),
        ("nailer_bottom", "w0", box.bottom, "t1"),
        ("crown_stretcher", "w1", head, "t1"),
        ("front_rail", "w1", None if maker.spec.framed else front_head, "t1"),
        ("front_rail", "w0", box.bottom if maker.spec.lid == "hinged" else None, "t1"),
        ("toe_board", "w1", box.bottom, "t0"),
    ):
        if name in by_name and target is not None:
            _join_edge(maker, by_name[name], edge == "w1", target, plane == "t1")
    maker.findings.extend(_driver_room(maker, box))


def _driver_room(maker: Maker, box: Box) -> Iterator[Finding]:
    """Sides too near to each other for a driver in line with the pockets between them.

    A pocket runs in by 28/15 of its board, behind it stand bit and driver; no less than a hand
    with the driver takes (common practice).
    """
    sides = {box.left.path, box.right.path}
    screwed = any(
        held.kind == "pocket screw" and held.into in sides
        for joint in maker.joints
        for held in joint.fastenings
    )
    least = max(_ARM, _DRIVER + box.bottom.outline.thickness.value * _POCKET)
    if not screwed or box.clear.value >= least:
        return
    own = maker.reckoning("driver room")
    step = INCH / 8 if own.unit == "in" else Fraction(1)
    takes = own.worked("takes_exact", least, _TAKES, box.bottom.outline.thickness)
    clear = own.text(box.clear, "clear")
    need = own.text(own.rounded("takes", takes, step, Way.UP))
    more = own.text(own.rounded("wider", takes - box.clear, step, Way.UP))
    yield Finding(
        rule="driver room",
        severity=Severity.STOP,
        path=maker.spec.key,
        says=tell(
            "between the sides of {} are {}: too little for a driver in line with its pocket "
            "screws, which takes {}",
            maker.spec.title, clear, need,
        ),
        measured=clear.text,
        limit=need.text,
        source="common practice",
        remedies=(
            tell("a case {} wider", more),
            'joint = "dado" and back = "inset": nothing between its sides is pocket-screwed',
        ),
        numbers=own.numbers,
    )  # fmt: skip


def _join_edge(maker: Maker, board: Board, upper: bool, target: Board, inside: bool) -> None:
    path, other = board.outline.path, target.outline.path
    maker.join(
        f"joint_{board.name}_edge", "butt",
        (path, "w1" if upper else "w0"), (other, "t1" if inside else "t0"),
        fastenings=(Fastening("glue", 1, None, (path,), other),),
    )  # fmt: skip
