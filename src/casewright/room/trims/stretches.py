"""Where a trim runs: its length as planned until it is read, and where it is joined."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from casewright.casework.house import House
from casewright.casework.parts import Part, PlacedAt, Size
from casewright.dims import Dim, Place, Way, greatest, total
from casewright.geometry import Orientation
from casewright.room.model import Run
from casewright.room.specs import RunSide
from casewright.room.trims.model import SQUARE, EndCut, TrimPiece
from casewright.stock import Board, Sheet

__all__ = [
    "TrimRun",
    "TrimShape",
    "board_width",
    "end_of",
    "joints_along",
    "longest_piece",
    "part_of",
    "rail_end",
    "seams_of",
    "straight_pieces",
    "stretch",
    "trim_part",
]


_EDGES = ("lower edge", "upper edge")
_ENDS: Mapping[str, tuple[str, str, str, str]] = {
    "+x +y +z": ("left", "right", *_EDGES),
    "+z +y -x": ("rear", "front", *_EDGES),
    "-z +y +x": ("front", "rear", *_EDGES),
    "+y -z -x": ("bottom", "top", "front edge", "wall edge"),
    "+y +z +x": ("bottom", "top", "wall edge", "front edge"),
    "+y -x +z": ("bottom", "top", "right edge", "left edge"),
}
"""Words for the ends of a piece, by how it lies."""
_OUTWARD = ("+z +y -x", "-z +y +x")
"""How returns lie, at the left and at the right."""


@dataclass(frozen=True, slots=True)
class TrimRun:
    """A length along a run.

    Parameters
    ----------
    start
        Its left end from the run's left datum, as planned [mm].
    along
        Its length: as read once it stands, until then as planned [mm].
    """

    start: Dim
    along: Dim


def stretch(place: Place, start: Dim, end: Dim) -> TrimRun:
    """A length along a run, `along`, which a reading replaces."""
    how = "as planned, until it is read as built"
    along = end - start if start.value else end
    return TrimRun(place.let("start", start), place.follows("along", along, how=how))


def part_of(run: Run, numbers: Sequence[int]) -> Run:
    """A run with some of its cases, which stand side by side."""
    cases = tuple(run.cases[n] for n in numbers)
    starts = tuple(run.starts[n] for n in numbers)
    last = run.cases_end if cases[-1] is run.cases[-1] else starts[-1] + cases[-1].overall_width
    return replace(run, cases=cases, starts=starts, cases_end=last)


def seams_of(run: Run) -> tuple[Dim, ...]:
    """Where one case of a run ends and the next begins, from its left datum."""
    return run.starts[1:]


def longest_piece(house: House, stock: str) -> Dim:
    """Longest piece that comes out of a sheet or a board.

    Raises
    ------
    TypeError
        When the stock is neither: a defect of the program.
    """
    goods, path = house.stock[stock], f"stock.{stock}"
    if isinstance(goods, Sheet):
        whole = house.enter(f"{path}.length", goods.length_in_hand)
        return whole - house.style_dim("sheet_trim") * 2 - house.style_dim("sheet_slack")
    if isinstance(goods, Board):
        lengths = enumerate(goods.lengths, start=1)
        whole = greatest(*(house.enter(f"{path}.length_{n}", each) for n, each in lengths))
        return whole if goods.trim is None else whole - house.enter(f"{path}.trim", goods.trim) * 2
    msg = f"no trim is cut from {stock}"
    raise TypeError(msg)


def board_width(house: House, stock: str) -> Dim:
    """Width of a board or moulding as it is sold.

    Raises
    ------
    TypeError
        When the stock is no board: a defect of the program.
    """
    goods = house.stock[stock]
    if not isinstance(goods, Board):
        msg = f"{stock} is no board"
        raise TypeError(msg)
    return house.enter(f"stock.{stock}.width", goods.width)


def joints_along(place: Place, own: TrimRun, held: Iterable[Dim], most: Dim) -> tuple[Dim, ...]:
    """Where a trim is joined, from its left end [mm]: the fewest joints, each as far as it goes.

    Parameters
    ----------
    held
        Where a joint has something behind it, from the run's left datum: seams, studs.
    most
        Longest piece [mm].
    """
    joints: list[Dim] = []
    places = [each - own.start for each in held]
    last: Dim | None = None
    while own.along.value - (last.value if last else 0) > most.value:
        low = last.value if last else Fraction(0)
        reach = [
            each for each in places
            if low < each.value <= low + most.value and each.value < own.along.value
        ]  # fmt: skip
        if reach:
            joint = max(reach, key=lambda each: each.value)
        else:
            joint = most if last is None else last + most
        last = place.let(f"joint_{len(joints) + 1}", joint)
        joints.append(last)
    return tuple(joints)


@dataclass(frozen=True, slots=True)
class TrimShape:
    """What all pieces of a trim have in common.

    Parameters
    ----------
    width
        Across the grain [mm].
    rips
        Whether it is ripped to that, on the grid; a moulding is as it was bought.
    y, z
        Where its lower rear corner lies in the run's axes [mm]; `y` of its upper edge where it
        hangs from there.
    flush
        Whether `z` is that of its front face, and a return's outer face lies in the end of the
        cases; else its rear face does.
    """

    role: str
    title: str
    stock: str
    width: Dim
    y: Dim
    z: Dim
    rips: bool = True
    hangs: bool = False
    flush: bool = False


def trim_part(
    house: House, place: Place, shape: TrimShape, length: Sequence[Dim], x: Dim, *,
    title: str = "", lies: str = "+x +y +z", z: Dim | None = None, scarf: bool = False,
) -> Part:  # fmt: skip
    """One piece, cut to a length that is the sum of what is given.

    Parameters
    ----------
    length
        Terms of its length [mm].
    x
        Where it begins; of a return the end of the cases [mm].
    lies, z
        Where it does not lie as the others do.
    scarf
        Whether it is longer by its thickness, for a joint at 45 degrees.
    """
    thickness = place.follows(
        "thickness", house.thickness(shape.stock), house.own_thickness_cause(place.path)
    )
    whole = total(*length, thickness) if scarf else total(*length)
    causes = house.causes(f"{place.path}.length", "", "mitre saw")
    long = place.made("length", whole, causes)
    if shape.rips:
        wide, step = shape.width, house.style_dim("cut_step").value
        if step and wide.value % step:
            wide, _ = place.rounded("width_to_cut", wide, step, Way.UP)
        width = place.made("width", wide, house.causes(f"{place.path}.width", ""))
    else:
        width = place.follows("width", shape.width)
    size = Size(long, width, thickness)
    y = shape.y - width if shape.hangs else shape.y
    if shape.flush and lies in _OUTWARD:
        x = x + thickness if lies.endswith("-x") else x - thickness
    elif shape.flush and z is None:
        z = shape.z - thickness
    return Part(
        path=place.path,
        mark=house.next_mark(),
        case=f"run.{place.path.split('.')[1]}",
        role=shape.role,
        title=title or shape.title,
        hand=None,
        stock=shape.stock,
        finished=size,
        blank=size,
        grain=True,
        ends=_ENDS[lies],
        edges=(),
        shows=("t1",),
        features=(),
        placed=PlacedAt(x, y, shape.z if z is None else z, Orientation.of(lies)),
    )


def straight_pieces(
    house: House, place: Place, shape: TrimShape, own: TrimRun, joints: Sequence[Dim],
    ends: tuple[EndCut, EndCut] = (SQUARE, SQUARE), *, longer: Sequence[Sequence[Dim]] = ((), ()),
    scarf: bool = False,
) -> tuple[TrimPiece, ...]:  # fmt: skip
    """The pieces between two ends of a trim.

    Parameters
    ----------
    ends
        How the first and the last are cut at the ends of the trim.
    longer
        What they are longer there than the stretch itself.
    scarf
        Whether a joint is a scarf at 45, which takes the thickness of a piece more; else a butt.
    """
    stops = [None, *joints, own.along]
    joint = EndCut("scarf") if scarf else SQUARE
    pieces: list[TrimPiece] = []
    last = len(stops) - 1
    for number, (low, high) in enumerate(pairwise(stops), start=1):
        if high is None:
            continue
        length = [high if low is None else high - low, *(longer[0] if number == 1 else ()),
                  *(longer[1] if number == last else ())]  # fmt: skip
        x = own.start if low is None else own.start + low
        for extra in longer[0] if number == 1 else ():
            x = x - extra
        part = trim_part(
            house, place.at("piece" if last == 1 else f"piece_{number}"), shape, length, x,
            title=shape.title if last == 1 else f"{shape.title} {number}",
            scarf=scarf and number < last,
        )  # fmt: skip
        pieces.append(TrimPiece(part, ends[0] if number == 1 else joint,
                                ends[1] if number == last else joint))  # fmt: skip
    return tuple(pieces)


def end_of(run: Run, side: RunSide) -> Dim:
    """Where the cases of a run end, from its left datum [mm]."""
    return run.starts[0] if side == "left" else run.cases_end


def rail_end(run: Run, side: RunSide) -> Dim:
    """Where a front strip ends: at the wall, in a corner at the other run, else with the cases."""
    beyond = next((f.beyond for f in run.fillers if f.side == side), None)
    if beyond is None:
        return end_of(run, side)
    return beyond if side == "left" else run.length - beyond
