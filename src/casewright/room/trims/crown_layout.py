"""What the pieces of a crown are laid out from: its ends, its bends, its heights."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.casework.house import House
from casewright.dims import Dim, Place, Way
from casewright.room.model import Run
from casewright.room.run_ends import SIDES
from casewright.room.specs import JobSpec, RunSide
from casewright.room.trims.bends import Bends, across_length, past_bend
from casewright.room.trims.corners import CrownEnd, beside_end, crown_end, met_in_corner
from casewright.room.trims.crown_beside import CrownNeighbour
from casewright.room.trims.crown_face import crown_plane, frieze_stock
from casewright.room.trims.crown_heights import CrownHeights
from casewright.room.trims.crown_stretches import CrownStretch
from casewright.room.trims.model import SQUARE, EndCut
from casewright.room.trims.saw_settings import Spring, spring_of
from casewright.room.trims.specs import CrownSpec
from casewright.room.trims.stretches import TrimRun, end_of, rail_end, stretch
from casewright.survey.survey import Survey

__all__ = ["CrownLayout", "lay_out_crown"]


@dataclass(frozen=True, slots=True)
class CrownLayout:
    """A crown under way.

    Parameters
    ----------
    own
        Where it runs along the wall: what is read of it, along the frieze board's face.
    board
        Thickness of the frieze board [mm].
    bends
        Ends at which it turns across a diagonal corner.
    across
        Length of the frieze board's face across each corner of its own [mm].
    far
        How it is cut at the far end of each of those.
    at
        Which part of the run it goes over, and what is beside it there.
    rears
        Where returns begin that do not reach the wall, from it [mm].
    """

    house: House
    place: Place
    run: Run
    spec: CrownSpec
    ends: Mapping[RunSide, CrownEnd]
    own: TrimRun
    heights: CrownHeights
    drop: Dim
    projection: Dim
    board: Dim
    bends: Bends
    across: Mapping[RunSide, Dim]
    far: Mapping[RunSide, EndCut]
    at: CrownStretch
    rears: Mapping[RunSide, Dim]

    @property
    def suffix(self) -> str:
        """What its titles end with."""
        return self.at.suffix

    @property
    def spring(self) -> Spring:
        """How far it stands off the wall."""
        return spring_of(self.drop, self.projection)

    @property
    def board_cuts(self) -> tuple[EndCut, EndCut]:
        """Ends of the boards behind the crown: mitred at bends, else square."""
        left, right = (self.bends[side].turn if side in self.bends else SQUARE for side in SIDES)
        return left, right

    def across_cuts(self, side: RunSide) -> tuple[EndCut, EndCut]:
        """Left and right end of the crown's piece across a corner of its own."""
        near, far = self.ends[side].cut, self.far[side]
        return (far, near) if side == "left" else (near, far)


def lay_out_crown(
    house: House, known: tuple[JobSpec, Survey], at: CrownStretch, runs: Mapping[str, Run],
    turns: tuple[Bends, Mapping[RunSide, CrownNeighbour]],
) -> CrownLayout:  # fmt: skip
    """Where a crown of known height runs, and how it ends.

    Parameters
    ----------
    turns
        Ends at which it turns across a diagonal corner, and at which another run's case stands.

    Raises
    ------
    ValueError
        When none is asked for.
    """
    (spec, measured), run, asked = known, at.run, at.run.spec.trims.crown
    if asked is None:
        msg = f"run {run.spec.key} has no crown"
        raise ValueError(msg)
    first, nodes = house.chain.place(f"run.{run.spec.key}.crown"), house.chain.nodes
    place, drop = house.chain.place(f"run.{run.spec.key}.{at.name}"), nodes[f"{first.path}.drop"]
    known_out = nodes.get(f"{first.path}.projection")
    projection = known_out or first.given("projection", asked.projection)
    bends = {side: bend for side, bend in turns[0].items() if side not in at.inner}
    spring = spring_of(drop, projection)
    beside = {**turns[1], **at.inner}
    ends = {
        side: beside_end(asked, side, spring, at.inner[side]) if side in at.inner
        else crown_end(spec, run.spec, side, spring, measured, beside.get(side))
        for side in SIDES
    }  # fmt: skip
    plane, board = crown_plane(house, run), house.thickness(frieze_stock(run))
    edges = {side: _edge(house, run, runs, side, ends[side]) for side in SIDES}
    if bends:
        short = past_bend(house, place, "short_at_bend", board, Way.DOWN)
        edges |= {side: bend.away(short) for side, bend in bends.items()}
    owned = {side: bend for side, bend in bends.items() if bend.owns}
    return CrownLayout(
        house, place, run, asked, ends, stretch(place, edges["left"], edges["right"]),
        at.heights,
        drop, projection, board, bends,
        across={side: across_length(house, first, bend, plane, board)
                for side, bend in owned.items()},
        far={side: _far_cut(spec, run, side, spring, measured, ends[side]) for side in owned},
        at=at,
        rears={side: crown_plane(house, beside[side].other) for side, end in ends.items()
               if end.kind == "return" and end.other},
    )  # fmt: skip


def _edge(house: House, run: Run, runs: Mapping[str, Run], side: RunSide, end: CrownEnd) -> Dim:
    """Where the face that the crown runs along ends, from the run's left datum [mm]."""
    if end.kind == "inside":
        out = crown_plane(house, runs[end.other])
        return out if side == "left" else run.length - out
    return end_of(run, side) if end.kind == "return" else rail_end(run, side)


def _far_cut(
    spec: JobSpec, run: Run, side: RunSide, spring: Spring, measured: Survey, near: CrownEnd
) -> EndCut:
    """Of the piece across, where it meets the crown of the run round the corner."""
    other = met_in_corner(spec, run.spec, side)
    back: RunSide = "right" if side == "left" else "left"
    return near.cut if other is None else crown_end(spec, other, back, spring, measured).cut
