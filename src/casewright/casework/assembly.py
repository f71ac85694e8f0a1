"""The order a box goes together in, as steps that can be replayed."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from casewright.casework.box import Board, Box
from casewright.casework.brads import row_marks
from casewright.casework.features import Plane
from casewright.casework.joints import Surface
from casewright.casework.maker import Maker
from casewright.casework.naming import the
from casewright.dims import Dim, tell
from casewright.geometry import Direction, Orientation

__all__ = ["assemble_box", "closed_joints", "fit_shelves", "join_part", "warn_of_tipping"]

_PLANES: tuple[tuple[Plane, Plane], ...] = (("l0", "l1"), ("w0", "w1"), ("t0", "t1"))
_GLUE = "Spread glue thinly on the joint"


def _closed(maker: Maker, placed: set[str], part: str) -> tuple[str, ...]:
    """Joints of a part with anything already placed, not closed before."""
    done = {path for step in maker.steps for path in step.joints}
    return tuple(
        joint.path
        for joint in maker.joints
        if joint.path not in done
        and part in (joint.one.part, joint.other.part)
        and {joint.one.part, joint.other.part} - {part} <= placed
    )


def closed_joints(maker: Maker, part: str) -> tuple[str, ...]:
    """Joints of a part with anything that the steps have brought in, not closed before."""
    return _closed(maker, _placed(maker), part)


def _placed(maker: Maker) -> set[str]:
    return {step.part for step in maker.steps if step.part}


def join_part(
    maker: Maker,
    path: str,
    enters: str | None,
    words: str,
    *cautions: str,
    marks: tuple[tuple[str, Dim], ...] = (),
) -> None:
    """Bring in a part and close its joints with what is there; the first part is laid down."""
    there = _placed(maker)
    joints = _closed(maker, there, path)
    verb: Literal["lay", "join"] = "join" if enters and there else "lay"
    rows = row_marks(maker, joints)
    if rows and "brad_points" not in cautions:
        cautions = (*cautions, "brad_points")
    maker.step(
        verb, path, enters if verb == "join" else None, words,
        joints=joints, marks=(*marks, *rows), cautions=cautions,
    )  # fmt: skip


def _marks(maker: Maker, box: Box, board: Board) -> tuple[tuple[str, Dim], ...]:
    """Where a butted board sits on the side, from the side's bottom end and front edge."""
    part = maker.parts[board.outline.path]
    place = board.outline.place
    up = place.let("mark_up", board.underside - box.foot)
    front = part.placed.z
    if part.placed.orientation.thickness.axis == 2:
        front = front + part.finished.thickness
    back = place.let("mark_back", maker.parts[box.left.path].placed.z - front)
    return (
        ("underside above the bottom ends of the sides", up),
        ("front behind the front edges of the sides", back),
    )


def _marked_planes(maker: Maker, box: Box, board: Board) -> tuple[tuple[Surface, Surface], ...]:
    """The planes that `_marks` are measured between."""
    path, side = board.outline.path, box.left.path
    lies = maker.parts[path].placed.orientation
    return (
        (Surface(path, _looking(lies, "-y")), Surface(side, "l0")),
        (Surface(path, _looking(lies, "+z")), Surface(side, "w0")),
    )


def _looking(lies: Orientation, where: str) -> Plane:
    """The plane of a part that looks in a direction of the case."""
    way = Direction.of(where)
    for (low, high), own in zip(_PLANES, lies, strict=True):
        if own.axis == way.axis:
            return high if own.sign == way.sign else low
    msg = f"no axis of the part runs along {where}"
    raise ValueError(msg)


def _has_pockets(maker: Maker, path: str) -> bool:
    return any(feature.kind == "pocket" for feature in maker.parts[path].features)


def _join_board(maker: Maker, box: Box, board: Board) -> None:
    path = board.outline.path
    joints = _closed(maker, _placed(maker), path)
    if board.joint == "butt":
        drive, caution = "drive the pocket screws into the left side", "clamp_screws"
        if not _has_pockets(maker, path):
            drive, caution = "drive the brads through the left side", "brad_points"
        words = f"{_GLUE}; set {the(board.title)} on its marks, clamp, and {drive}."
        maker.step(
            "join", path, "-x", words, joints=joints, marks=_marks(maker, box, board),
            planes=_marked_planes(maker, box, board), cautions=(caution,),
        )  # fmt: skip
        return
    words = (
        f"{_GLUE}; push {the(board.title)} home in its {board.joint}, front edges flush; clamp."
    )
    marks = row_marks(maker, joints)
    cautions = ("brad_points",) if marks else ()
    maker.step("join", path, "-x", words, joints=joints, marks=marks, cautions=cautions)


def assemble_box(maker: Maker, box: Box) -> None:
    """Left side, everything between the sides, right side, square, back."""
    maker.step(
        "lay",
        box.left.path,
        None,
        "Stand the left side on its rear edge, inside towards you, front edge up.",
    )
    for board in box.boards:
        _join_board(maker, box, board)
    back = maker.path("back")
    captured = maker.spec.back == "grooved"
    if captured:
        join_part(maker, back, "-x", "Slide the back into its grooves, dry, show face forward.")
    join_part(
        maker, box.right.path, "-x",
        f"{_GLUE}; bring the right side down on all ends at once, front edges flush; clamp; "
        "drive the screws.",
        "clamp_screws", "heavy_lift",
    )  # fmt: skip
    maker.step(
        "check square", "", None,
        tell(
            "Measure both diagonals across the front. They must agree within {}; nudge the longer "
            "one shorter with a clamp before the glue takes.",
            maker.house.trade("box_diagonals"),
        ),
        check_words="diagonals",
    )  # fmt: skip
    if not captured and back in maker.parts:
        words = {
            "rabbeted": "Lay the back in its rabbets, show face in; brads from the centre out.",
            "applied": "Lay the back on, even at all edges; brads from the centre out.",
            "inset": "Set the back in flush with the rear edges, glued all round; draw it up with "
            f"{'its pocket screws' if _has_pockets(maker, back) else 'clamps'}.",
        }[maker.spec.back]
        cautions = ("clamp_screws",) if maker.spec.back == "inset" else ("brad_points",)
        join_part(maker, back, "+z", words, *cautions)


def warn_of_tipping(maker: Maker) -> None:
    """Put the caution of a tall case to every step that hangs something before its foot."""
    tall = maker.spec.kind in ("tall", "surround")
    for number, step in enumerate(maker.steps):
        if tall and step.verb == "hang":
            maker.steps[number] = replace(step, cautions=(*step.cautions, "tall_tips"))


def fit_shelves(maker: Maker) -> None:
    """Lay the adjustable shelves on their pins, from the front."""
    for part in list(maker.parts.values()):
        if part.role == "shelf":
            maker.step(
                "fit", part.path, "-z",
                f"Set four pins and lay {part.title} on them; it must lift out without rubbing.",
                joints=_closed(maker, _placed(maker), part.path),
            )  # fmt: skip
