"""Crowns: moulding, the backing it is nailed to, and the frieze board between case and crown."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Dim, Origin, Place, greatest, total
from casewright.findings import Finding, Severity
from casewright.room.model import Run
from casewright.room.run_ends import SIDES
from casewright.room.specs import JobSpec, RunSide
from casewright.room.trims.corners import CrownEnd, crown_end, over_corner
from casewright.room.trims.crown_heights import CrownHeights, crown_heights
from casewright.room.trims.light_rails import rail_end, return_piece
from casewright.room.trims.mitres import fit_mitres
from casewright.room.trims.model import Trim, TrimPiece
from casewright.room.trims.saw_settings import spring_of
from casewright.room.trims.specs import CrownSpec
from casewright.room.trims.stretches import (
    TrimRun,
    TrimShape,
    board_width,
    end_of,
    joints_along,
    longest_piece,
    seams_of,
    straight_pieces,
    stretch,
    trim_part,
)
from casewright.survey.survey import Survey

__all__ = ["build_crown", "crown_plane", "frieze_stock"]


def frieze_stock(run: Run) -> str:
    """What the frieze board is cut from: the doors' sheet, so that it is flush with them."""
    fronts = [case.spec.front for case in run.cases if case.spec.front is not None]
    return fronts[0].slab if fronts else run.cases[0].spec.box_stock


def crown_plane(house: House, run: Run) -> Dim:
    """From the wall to the face that the crown of a run is nailed to: case and frieze board."""
    path = f"run.{run.spec.key}.crown.plane"
    known = house.chain.nodes.get(path)
    if known is not None:
        return known
    plane = run.cases[0].face_plane + house.thickness(frieze_stock(run))
    return house.chain.register(path, plane)


@dataclass(frozen=True, slots=True)
class _Crown:
    """A crown under way."""

    house: House
    place: Place
    run: Run
    spec: CrownSpec
    ends: Mapping[RunSide, CrownEnd]
    own: TrimRun
    heights: CrownHeights
    drop: Dim
    projection: Dim


def build_crown(
    house: House, spec: JobSpec, run: Run, runs: Mapping[str, Run], measured: Survey
) -> tuple[tuple[Trim, ...], tuple[Finding, ...]]:
    """Moulding, backing and frieze of a run's crown.

    Parameters
    ----------
    runs
        All runs by key: a crown ends in a corner at the face of the other one.
    """
    asked = run.spec.trims.crown
    if asked is None:
        return (), ()
    place = house.chain.place(f"run.{run.spec.key}.crown")
    first = run.cases[0]
    top = run.lift + first.height
    heights = crown_heights(house, run.spec, asked, top, measured)
    if heights.frieze.value >= 0:
        most = heights.top.value
        place.fit("frieze_left", heights.frieze, Fraction(0), most, place.path)
    drop, projection = house.chain.nodes[f"{place.path}.drop"], place.given(
        "projection", asked.projection
    )  # fmt: skip
    spring = spring_of(drop, projection)
    ends = {side: crown_end(spec, run.spec, side, spring, measured) for side in SIDES}
    crown_plane(house, run)
    start, end = (_edge(house, run, runs, side, ends[side]) for side in SIDES)
    own = stretch(place, start, end)
    made = _Crown(house, place, run, asked, ends, own, heights, drop, projection)
    behind = _behind(made)
    faces = (part.placed.z + part.finished.thickness for part in behind[1].parts)
    moulding = _moulding(made, greatest(*faces), measured)
    fit_mitres(house, place, ends, projection, moulding[1][0].part.path)
    trims = (
        *behind,
        Trim(place.path, "crown", "crown", moulding[0], moulding[1], own.start, spring=spring),
    )
    return trims, (*_low(made), *_without_saw(made))


def _edge(house: House, run: Run, runs: Mapping[str, Run], side: RunSide, end: CrownEnd) -> Dim:
    """Where the face that the crown runs along ends, from the run's left datum [mm]."""
    if end.kind == "inside":
        out = crown_plane(house, runs[end.other])
        return out if side == "left" else run.length - out
    return end_of(run, side) if end.kind == "return" else rail_end(run, side)


def _moulding(
    made: _Crown, face: Dim, measured: Survey
) -> tuple[tuple[Dim, ...], tuple[TrimPiece, ...]]:
    """Lengths to be read, and the pieces: a return at each open end, the front between them.

    Parameters
    ----------
    face
        Of the frieze boards, from the wall.
    """
    house, place = made.house, made.place
    width = board_width(house, made.spec.stock)
    shape = TrimShape("crown", "crown", made.spec.stock, width, made.heights.top - made.drop,
                      face, rips=False)  # fmt: skip
    over = {side: _over(made, side) for side in SIDES}
    lap = house.thickness(made.spec.stock)
    most = longest_piece(house, made.spec.stock) - total(lap, *over["left"], *over["right"])
    joints = joints_along(place, made.own, _held(made, measured), most)
    ends = (made.ends["left"].cut, made.ends["right"].cut)
    front = straight_pieces(
        house, place, shape, made.own, joints, ends, scarf=bool(joints),
        longer=(over["left"], over["right"]),
    )  # fmt: skip
    lengths: list[Dim] = [made.own.along]
    returns: dict[RunSide, TrimPiece] = {}
    for side in SIDES:
        if made.ends[side].kind == "return":
            how = "as planned, until it is read as built"
            back = place.follows(f"return_{side}", face, how=how)
            lengths.append(back)
            edge = made.own.start if side == "left" else made.own.start + made.own.along
            returns[side] = return_piece(
                house, place, shape, (side, made.ends[side].cut), edge, (back, *over[side])
            )
    left, right = (tuple(returns[s] for s in (side,) if s in returns) for side in SIDES)
    return tuple(lengths), (*left, *front, *right)


def _over(made: _Crown, side: RunSide) -> tuple[Dim, ...]:
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


def _held(made: _Crown, measured: Survey) -> tuple[Dim, ...]:
    """Where a scarf is held best: over the studs that were found, else at seams."""
    wall = measured.walls.get(made.run.spec.on)
    if wall is None or not wall.studs or made.run.spec.after:
        return seams_of(made.run)
    return wall.studs


def _behind(made: _Crown) -> tuple[Trim, Trim]:
    """Backing on the cases, flush with their front edges, and the frieze board before it."""
    house, place, run, own = made.house, made.place, made.run, made.own
    depth, air = run.cases[0].face_plane, made.heights.frieze + made.drop
    high = place.let("behind", air - house.style_dim("crown_air"))
    backing, frieze = place.at("backing"), place.at("frieze_board")
    y = made.heights.cases_top
    shape = TrimShape("backing", "crown backing", made.spec.backing, high, y, depth, flush=True)
    joints = joints_along(backing, own, seams_of(run), longest_piece(house, made.spec.backing))
    front = straight_pieces(house, backing, shape, own, joints)
    pieces = list(front)
    for side in SIDES:
        if made.ends[side].kind == "return":
            left = side == "left"
            behind = front[0 if left else -1].part.placed.z
            part = trim_part(
                house, backing.at(side), shape, (behind,),
                own.start if left else own.start + own.along,
                title=f"{side} end of the crown backing",
                lies="+z +y -x" if left else "-z +y +x", z=house.zero if left else behind,
            )  # fmt: skip
            pieces.insert(0 if left else len(pieces), TrimPiece(part))
    board = frieze_stock(run)
    face = TrimShape("frieze", "frieze board", board, high, y, depth)
    joints = joints_along(frieze, own, seams_of(run), longest_piece(house, board))
    before = straight_pieces(house, frieze, face, own, joints)
    return (
        Trim(backing.path, "backing", "crown backing", (own.along,), tuple(pieces), own.start),
        Trim(frieze.path, "frieze", "frieze board", (own.along,), before, own.start),
    )


def _low(made: _Crown) -> list[Finding]:
    """The ceiling leaves too little over the cases."""
    frieze = made.heights.frieze
    if frieze.value >= 0:
        return []
    house, run = made.house, made.run.spec
    lack = house.text(-frieze)
    return [
        Finding(
            rule="crown too high",
            severity=Severity.STOP,
            path=f"run.{run.key}.crown",
            says=f"the crown goes down {house.text(made.drop)}, but the ceiling leaves only "
            f"{house.text(frieze + made.drop)} over the cases",
            measured=house.text(frieze + made.drop),
            limit=house.text(made.drop),
            source="common practice",
            remedies=(
                f"make the cases {lack} lower",
                "take their heights out, and write sets_height = true under the crown",
                f"a moulding that goes down {lack} less",
            ),
        )
    ]  # fmt: skip


def _without_saw(made: _Crown) -> list[Finding]:
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
