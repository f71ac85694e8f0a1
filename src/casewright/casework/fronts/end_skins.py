"""A finished end of one board: a skin behind the doors, or a flush end level with their faces."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.brads import fastener_row, row_marks
from casewright.casework.carcase import Carcase
from casewright.casework.features import Plane
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.casework.specs import CaseSpec, Hand
from casewright.dims import Dim, Way

__all__ = ["cover_end", "end_screws"]

_QUARTER = 4
"""The rows of screws run a quarter of the side's depth in from its edges (common practice)."""

_POINT = Fraction(5, 6)
"""How far into the board the screws behind it may go (common practice)."""


def cover_end(
    maker: Maker, carcase: Carcase, hand: Hand, side: Part, span: tuple[Dim, Dim]
) -> Outline:
    """Cut the board to the side as it is, its grain upright, and put it on from outside.

    A skin ends with the box, and covers the edge of an applied back; a flush end reaches out to
    the face of the doors. No metal goes in from the face that shows.

    Parameters
    ----------
    span
        Case heights that it reaches between [mm].
    """
    low, high = span
    left, flush = hand == "left", maker.spec.end == "flush"
    tall = high if low is maker.zero else high - low
    front: Plane = "w0" if left else "w1"
    hidden = maker.spec.framed or (maker.spec.face == "strips" and not flush)
    treated: tuple[Plane, ...] = () if hidden else (front,)
    if flush and maker.spec.kind == "wall":
        treated = ("l0", *treated)
    outline = maker.outline(
        f"end_{hand}.{'flush' if flush else 'skin'}", maker.spec.end_stock, tall,
        _front_plane(maker, carcase), edges=treated,
        edge=None if flush or maker.spec.between_panels else "painted",
        setting=f"{maker.spec.key} ends", matched=True,
        way=None if maker.spec.framed and maker.spec.between_panels else Way.DOWN,
    )  # fmt: skip
    if flush:
        _declare_flush(maker, carcase, hand, outline)
    board = maker.add(
        outline, role="flush end" if flush else "end skin",
        title=_title(maker.spec, hand),
        lies="+y -z -x" if left else "+y +z +x",
        at=(
            maker.zero if left else carcase.width,
            low,
            outline.width if left else maker.zero,
        ),
        ends=("bottom", "top", "front", "back") if left else ("bottom", "top", "back", "front"),
        shows=("l0", front, "t1") if maker.spec.kind == "wall" else (front, "t1"),
        group="finished ends", front=outline.place.path.rpartition(".")[0],
    )  # fmt: skip
    _fix(maker, hand, side, board)
    return outline


def _title(spec: CaseSpec, hand: Hand) -> str:
    if spec.between_panels:
        return f"{hand} panel"
    return f"{hand} flush end" if spec.end == "flush" else f"skin of the {hand} end"


def _front_plane(maker: Maker, carcase: Carcase) -> Dim:
    """Case z of its front edge [mm]; without doors the two kinds are one."""
    if maker.spec.end == "flush" and maker.fronts:
        foremost = max(maker.fronts, key=lambda f: f.z.value + f.thickness.value)
        return foremost.z + foremost.thickness
    return carcase.depth


def _declare_flush(maker: Maker, carcase: Carcase, hand: Hand, outline: Outline) -> None:
    """How far the doors' faces stand before its edge, as a fit: a hand feels a step."""
    step = maker.place.at(f"end_{hand}").let(
        "step_to_doors", _front_plane(maker, carcase) - outline.width
    )
    most = maker.style("cut_step").value + 1
    maker.place.fit(f"end_{hand}_flush", step, Fraction(-1), most, outline.path)


def end_screws(spec: CaseSpec) -> bool:
    """Whether it is screwed on from inside: a flush end, where doors or drawers hide it."""
    return (spec.end == "flush" or spec.between_panels) and bool(spec.front or spec.rows)


def _fix(maker: Maker, hand: Hand, side: Part, board: Part) -> None:
    name = f"end_{hand}.joint"
    glue = Fastening("glue", 1, None, (board.path,), side.path)
    screws = tuple(_rows(maker, name, side, board)) if end_screws(maker.spec) else ()
    joint = maker.join(
        name, "face", (board.path, "t0"), (side.path, "t0"), fastenings=(glue, *screws)
    )
    before = _behind_stile(maker, hand, board) if maker.spec.between_panels else ()
    how = (
        "clamp it; drive the screws from inside the case, their heads sunk flush"
        if screws
        else "press it down with cauls and clamps until the glue is dry: no metal through its face"
    )
    flush = ", its front edge in the plane of the doors" if maker.spec.end == "flush" else ""
    flush = ", its front edge against the stile" if before else flush
    maker.step(
        "fit", board.path, "+x" if hand == "left" else "-x",
        f"Spread glue thinly; set the board on the {hand} end, grain upright, flush with the "
        f"upper end of the side and with the back of the case{flush}; {how}"
        f"{'; brads through the stile into its edge, set and filled' if before else ''}.",
        joints=(joint, *before), marks=row_marks(maker, (joint, *before)),
        cautions=(*(("clamp_screws",) if screws else ()), *(("brad_points",) if before else ())),
    )  # fmt: skip


def _behind_stile(maker: Maker, hand: Hand, board: Part) -> tuple[str, ...]:
    """A panel's front edge on the back of the stile before it, where it has a face frame."""
    stile = maker.parts.get(maker.path(f"frame.stile_{hand}"))
    if stile is None or not maker.spec.framed:
        return ()
    name = f"end_{hand}.joint_stile"
    brads = fastener_row(
        maker, name, stile.finished.length, "brads along the frame", through=stile.path,
        into=board.path, screw=maker.house.screw("brad"),
        line=("w0", board.finished.thickness / 2),
    )  # fmt: skip
    edge: Plane = "w0" if hand == "left" else "w1"
    glue = Fastening("glue", 1, None, (board.path,), stile.path)
    return (
        maker.join(name, "butt", (board.path, edge), (stile.path, "t0"),
                   fastenings=(brads, glue)),
    )  # fmt: skip


def _rows(maker: Maker, joint: str, side: Part, board: Part) -> list[Fastening]:
    most = board.finished.thickness * _POINT
    screw = maker.house.screw_for("drawer_screw", side.finished.thickness, most)
    edges: tuple[tuple[str, Plane], ...] = (("front", "w0"), ("back", "w1"))
    long = side.finished.length if maker.spec.between_panels else board.finished.length
    return [
        fastener_row(
            maker, f"{joint}_{word}", long, "screws behind an end",
            through=side.path, into=board.path, screw=screw,
            line=(edge, side.finished.width / _QUARTER), kind="case screw",
        )
        for word, edge in edges
    ]  # fmt: skip
