"""Light rails: strips on edge under the front of wall cases, with a return at each open end."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from casewright.casework.house import House
from casewright.dims import Dim, Place
from casewright.room.model import Run
from casewright.room.run_ends import SIDES
from casewright.room.specs import JobSpec, RunSide
from casewright.room.trims.bends import Bends, across_length, across_piece, past_bend
from casewright.room.trims.crown_beside import neighbour_at
from casewright.room.trims.model import SQUARE, EndCut, Trim, TrimPiece
from casewright.room.trims.saw_settings import flat_setting
from casewright.room.trims.specs import LightRailSpec
from casewright.room.trims.stretches import (
    TrimShape,
    joints_along,
    longest_piece,
    part_of,
    rail_end,
    seams_of,
    straight_pieces,
    stretch,
    trim_part,
)

__all__ = ["build_light_rails", "return_piece"]


def build_light_rails(
    house: House, run: Run, asked: LightRailSpec, bends: Bends,
    known: tuple[JobSpec, Mapping[str, Run]],
) -> Iterator[Trim]:  # fmt: skip
    """A rail along the run, or one for each row of cases beside a hood, where it turns back.

    Parameters
    ----------
    known
        The job, and all runs by key.
    """
    rows: list[list[int]] = []
    for number, case in enumerate(run.cases):
        if case.spec.hood is None:
            if number and run.cases[number - 1].spec.hood is None:
                rows[-1].append(number)
            else:
                rows.append([number])
    for number, row in enumerate(rows, start=1):
        hoods: dict[RunSide, str] = {}
        if row[0]:
            hoods["left"] = run.cases[row[0] - 1].key
        if row[-1] + 1 < len(run.cases):
            hoods["right"] = run.cases[row[-1] + 1].key
        fillers = tuple(each for each in run.fillers if each.side not in hoods)
        row_of = _Row(replace(part_of(run, row), fillers=fillers), number, hoods)
        own = {side: bend for side, bend in bends.items() if side not in hoods}
        yield _build_rail(house, row_of, asked, own, known)


@dataclass(frozen=True, slots=True)
class _Row:
    """Cases side by side that one rail goes along.

    Parameters
    ----------
    hoods
        Key of the hood at each end within the run.
    """

    run: Run
    number: int
    hoods: Mapping[RunSide, str]

    @property
    def name(self) -> str:
        """The first has the name of the run's only one."""
        return "light_rail" if self.number == 1 else f"light_rail_{self.number}"

    def return_read(self, house: House, side: RunSide, depth: Dim) -> Dim:
        """What is read of a return: by the end of the run, or by the side of a hood."""
        at, where = "light_rail", side
        if side in self.hoods:
            at, where = f"light_rail_at_{self.hoods[side]}", "right" if side == "left" else "left"
        place = house.chain.place(f"run.{self.run.spec.key}.{at}")
        return place.follows(f"return_{where}", depth, how="as planned, until it is read")


def _build_rail(
    house: House, row: _Row, asked: LightRailSpec, bends: Bends,
    known: tuple[JobSpec, Mapping[str, Run]],
) -> Trim:  # fmt: skip
    """The rail, flush with the front edges of the cases; mitred where it turns back to the wall.

    A return stands flush with the outer side of its case, which is square: both are mitred at
    90 - a / 2, without bevel. Where it turns across a diagonal corner it does likewise, and its
    rear, from long point to long point, is longer than the fronts. At a case of another run that
    reaches below it, such as a tall one, it ends square; beside one that does not, such as a hood
    that hangs higher, it turns back to the wall, as it does at each hood of its own run.
    """
    run = row.run
    place = house.chain.place(f"run.{run.spec.key}.{row.name}")
    title = "light rail" if row.number == 1 else f"light rail {row.number}"
    depth, high = run.cases[0].face_plane, house.style_dim("light_rail")
    shape = TrimShape("light rail", title, asked.stock, place.let("high", high),
                      run.lift, depth, hangs=True, flush=True)  # fmt: skip
    thick = house.thickness(asked.stock)
    past = past_bend(house, place, "past_bend", thick) if bends else house.zero
    back_at = {side for side in SIDES if side in row.hoods
               or (side not in bends and _turns(run, high, side, known))}  # fmt: skip
    own = stretch(place, *(_rail_edge(run, bends, side) for side in SIDES))
    most = longest_piece(house, asked.stock) - thick
    joints = joints_along(place, own, seams_of(run), most)
    turn = EndCut("outside mitre", 900, is_read=False, setting=flat_setting(house.zero.value))
    ends = tuple(
        bends[side].turn if side in bends else turn if side in back_at else SQUARE
        for side in SIDES
    )
    front = straight_pieces(
        house, place, shape, own, joints, (ends[0], ends[1]), scarf=bool(joints),
        longer=tuple((past,) if side in bends else () for side in SIDES),
    )  # fmt: skip
    lengths, beside = [own.along], {}
    for side in SIDES:
        if side in back_at:
            back = row.return_read(house, side, depth)
            lengths.append(back)
            edge = own.start if side == "left" else own.start + own.along
            beside[side] = return_piece(house, place, shape, (side, turn), (edge, None), (back,))
        elif side in bends and bends[side].owns:
            face = across_length(house, place, bends[side], depth)
            lengths.append(face)
            beside[side] = across_piece(
                house, place, shape, bends[side], (face, past, past), house.zero - thick
            )
    pieces = (*_of(beside, "left"), *front, *_of(beside, "right"))
    return Trim(place.path, "light rail", title, tuple(lengths), pieces, own.start)


def _turns(run: Run, high: Dim, side: RunSide, known: tuple[JobSpec, Mapping[str, Run]]) -> bool:
    """Whether a rail turns back to the wall at an end: nothing there reaches below it."""
    met = neighbour_at(known[0], run, known[1], side)
    if met is None or run.spec.end(side) not in ("open", "flush"):
        return run.spec.end(side) == "open"
    other, case = met
    foot = other.lift.value + (case.standing.value if case.spec.hood else 0)
    face = run.cases[0].face_plane.value
    return foot > run.lift.value - high.value or case.overall_depth.value < face


def _rail_edge(run: Run, bends: Bends, side: RunSide) -> Dim:
    """Where a front strip ends: at a bend, else as a rail without one."""
    return bends[side].edge if side in bends else rail_end(run, side)


def _of(returns: dict[RunSide, TrimPiece], side: RunSide) -> tuple[TrimPiece, ...]:
    return (returns[side],) if side in returns else ()


def return_piece(
    house: House, place: Place, shape: TrimShape, turn: tuple[RunSide, EndCut],
    at: tuple[Dim, Dim | None], length: tuple[Dim, ...],
) -> TrimPiece:  # fmt: skip
    """A piece back to the wall along the outer side of an end case.

    Parameters
    ----------
    turn
        The end of the run, and how the piece's front end is cut.
    at
        End of the cases, from the run's left datum; where it begins, from the wall [mm], None: at
        the wall.
    length
        Terms of its length from there.
    """
    (side, cut), (edge, rear) = turn, at
    own = place.at(f"{side}_return")
    left = side == "left"
    front = length[0] if rear is None else rear + length[0]
    for each in length[1:]:
        front = front + each
    part = trim_part(
        house, own, shape, length, edge,
        title=f"{side} return of the {shape.title}",
        lies="+z +y -x" if left else "-z +y +x", z=(rear or house.zero) if left else front,
    )  # fmt: skip
    piece = TrimPiece(part, SQUARE, cut) if left else TrimPiece(part, cut, SQUARE)
    return replace(piece, rear=rear, read=length[0])
