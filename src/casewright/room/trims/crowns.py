"""Crowns: the moulding over a run, on the boards it is nailed to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Dim, Origin, greatest, least, tell, total
from casewright.findings import Finding, Reckoning, Severity
from casewright.room.model import Run
from casewright.room.run_ends import SIDES
from casewright.room.specs import JobSpec, RunSide
from casewright.room.trims.bends import Bends, across_piece, joined_by_bends
from casewright.room.trims.corners import over_corner
from casewright.room.trims.crown_beside import beside_findings, besides_of
from casewright.room.trims.crown_boards import boards_behind
from casewright.room.trims.crown_face import crown_case
from casewright.room.trims.crown_heights import CrownHeights, ceiling_over, crown_heights
from casewright.room.trims.crown_hoods import meets_hoods
from casewright.room.trims.crown_layout import CrownLayout, lay_out_crown
from casewright.room.trims.crown_stretches import crown_stretches, hoods_without
from casewright.room.trims.light_rails import return_piece
from casewright.room.trims.mitres import fit_mitres
from casewright.room.trims.model import Trim, TrimPiece
from casewright.room.trims.stretches import (
    TrimShape,
    board_width,
    joints_along,
    longest_piece,
    seams_of,
    straight_pieces,
)
from casewright.survey.survey import Survey

__all__ = ["build_crown"]


def build_crown(
    house: House, spec: JobSpec, run: Run, runs: Mapping[str, Run], measured: Survey,
    bends: Bends,
) -> tuple[tuple[Trim, ...], tuple[Finding, ...]]:  # fmt: skip
    """Moulding, backing and frieze of a run's crown.

    Parameters
    ----------
    runs
        All runs by key: a crown ends in a corner at the face of the other one.
    bends
        Ends at which it turns across a diagonal corner.
    """
    asked = run.spec.trims.crown
    if asked is None:
        return (), ()
    place = house.chain.place(f"run.{run.spec.key}.crown")
    top = run.lift + crown_case(run).height
    walls = (ceiling_over(house, each, measured) for each in joined_by_bends(spec, run.spec))
    ceilings = {ceiling.path: ceiling for ceiling in walls}.values()
    heights = crown_heights(house, run.spec, asked, top, least(*ceilings))
    if heights.frieze.value >= 0:
        most = heights.top.value
        place.fit("frieze_left", heights.frieze, Fraction(0), most, place.path)
    besides = besides_of(house, spec, run, runs, measured)
    found: list[Trim] = []
    made: CrownLayout | None = None
    stretches = crown_stretches(house, run, heights, house.chain.nodes[f"{place.path}.drop"])
    for at in stretches:
        made = lay_out_crown(house, (spec, measured), at, runs, (bends, besides))
        found.extend(_stretch(made, measured))
    if made is None:
        return (), ()
    hoods = meets_hoods(made, run, hoods_without(run, stretches))
    findings = (*_low(run, made, heights), *_without_saw(made), *hoods)
    return tuple(found), (*findings, *beside_findings(house, run, besides))


def _stretch(made: CrownLayout, measured: Survey) -> tuple[Trim, ...]:
    """Backing, frieze board and moulding of one length."""
    house, place, behind = made.house, made.place, boards_behind(made)
    faces = (each.part.placed.z + each.part.finished.thickness for each in behind[1].along)
    lengths, pieces = _moulding(made, greatest(*faces), measured)
    crown = Trim(place.path, "crown", f"crown{made.suffix}", lengths, pieces, made.own.start,
                 spring=made.spring)  # fmt: skip
    fit_mitres(house, place, made.ends, made.projection, pieces[0].part.path)
    return (*behind, crown)


def _moulding(
    made: CrownLayout, face: Dim, measured: Survey
) -> tuple[tuple[Dim, ...], tuple[TrimPiece, ...]]:
    """Lengths to be read, and the pieces: at each open end a return, at a bend one across.

    Parameters
    ----------
    face
        Of the frieze boards, from the wall.
    """
    house, place = made.house, made.place
    width = board_width(house, made.spec.stock)
    shape = TrimShape("crown", f"crown{made.suffix}", made.spec.stock, width,
                      made.heights.top - made.drop, face, rips=False)  # fmt: skip
    over = {side: _over(made, side) for side in SIDES}
    lap = house.thickness(made.spec.stock)
    most = longest_piece(house, made.spec.stock) - total(lap, *over["left"], *over["right"])
    joints = joints_along(place, made.own, _held(made, measured), most)
    front = straight_pieces(
        house, place, shape, made.own, joints,
        (made.ends["left"].cut, made.ends["right"].cut), scarf=bool(joints),
        longer=(over["left"], over["right"]),
    )  # fmt: skip
    built = {side: _beside(made, shape, side, over[side]) for side in SIDES}
    beside = {side: found for side, found in built.items() if found is not None}
    left, right = (tuple(beside[s][1] for s in (side,) if s in beside) for side in SIDES)
    lengths = (made.own.along, *(length for length, _ in beside.values()))
    return lengths, (*left, *front, *right)


def _beside(
    made: CrownLayout, shape: TrimShape, side: RunSide, over: tuple[Dim, ...]
) -> tuple[Dim, TrimPiece] | None:
    """At an open end the return, at an own corner the piece across; what is read for it."""
    house, place, end, rear = made.house, made.place, made.ends[side], made.rears.get(side)
    if end.kind == "return":
        how = "as planned, until it is read as built"
        # Those at the ends of the run are read under the name of the first stretch.
        at = made.at.name if side in made.at.inner else "crown"
        first = house.chain.place(f"run.{made.run.spec.key}.{at}")
        whole = shape.z if rear is None else shape.z - rear
        back = first.follows(f"return_{side}", whole, how=how)
        edge = made.own.start if side == "left" else made.own.start + made.own.along
        piece = return_piece(house, place, shape, (side, end.cut), (edge, rear), (back, *over))
        if rear is None:
            return back, piece
        left = side == "left"
        return back, replace(piece, left=end.rear) if left else replace(piece, right=end.rear)
    if side not in made.across:
        return None
    across = made.across[side]
    return across, across_piece(
        house, place, shape, made.bends[side], (across,), made.board, cuts=made.across_cuts(side)
    )


def _over(made: CrownLayout, side: RunSide) -> tuple[Dim, ...]:
    """What a piece is longer at its long point round the corner of a return."""
    end = made.ends[side]
    if end.kind != "return":
        return ()
    if not end.cosine:
        return (made.projection,)
    step = made.house.style_dim("cut_step").value or made.projection.value / 100
    value = over_corner(made.projection.value, end.cosine, step)
    note = "projection over the tangent of half the corner, up to the grid"
    return (made.place.enter(f"over_{side}", value, Origin("solved", note)),)


def _held(made: CrownLayout, measured: Survey) -> tuple[Dim, ...]:
    """Where a scarf is held best: over the studs that were found, else at seams."""
    wall = measured.walls.get(made.run.spec.on)
    if wall is None or not wall.studs or made.run.spec.after:
        return seams_of(made.run)
    return wall.studs


def _low(whole: Run, made: CrownLayout, heights: CrownHeights) -> list[Finding]:
    """The ceiling leaves too little over the cases."""
    frieze = heights.frieze
    if frieze.value >= 0:
        return []
    house, run = made.house, whole.spec
    own = Reckoning("crown too high", f"run.{run.key}", house.unit, house.chain.nodes)
    lack, drop = own.text(-frieze, "lack"), own.text(made.drop, "drop")
    left = own.text(frieze + made.drop, "left")
    return [
        Finding(
            rule="crown too high",
            severity=Severity.STOP,
            path=f"run.{run.key}.crown",
            says=tell(
                "the crown goes down {}, but the ceiling leaves only {} over the cases", drop, left
            ),
            measured=left.text,
            limit=drop.text,
            source="common practice",
            remedies=(
                tell("make the cases {} lower", lack),
                "take their heights out, and write sets_height = true under the crown",
                tell("a moulding that goes down {} less", lack),
            ),
            numbers=own.numbers,
        )
    ]  # fmt: skip


def _without_saw(made: CrownLayout) -> list[Finding]:
    """Corners to cut, and no saw whose table turns."""
    turns = any(end.cut.turns for end in made.ends.values())
    if not turns or made.house.shop.has("mitre saw"):
        return []
    run = made.run.spec
    return [
        Finding(
            rule="no mitre saw",
            severity=Severity.CARE,
            path=f"run.{run.key}.crown",
            says=f"the crown of {run.title} turns corners, and the shop has no mitre saw",
            source="common practice",
            remedies=(
                "a mitre saw borrowed for the day, its blade tilting to the left",
                "a mitre box and a hand saw, the piece nested in it as it will stand",
                "the table saw's mitre gauge and tilted blade, at the settings of the cut table",
            ),
        )
    ]
