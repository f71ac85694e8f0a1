"""What holds cases to the wall, to each other and level."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType

from casewright.buying.line import BuyLine, packed
from casewright.buying.pieces import pieces
from casewright.buying.spares import (
    FIXED_SPARES,
    FRAME_SCREWS_A_SEAM,
    JOINING_SCREWS_A_SEAM,
    SCREWS,
    SHIMS_A_CASE,
    SHIMS_A_STUD,
)
from casewright.buying.words import counted, length
from casewright.casework.cases import Case
from casewright.dims import Unit, Way, round_to
from casewright.room.model import Room
from casewright.room.run_ends import SIDES
from casewright.room.specs import RunSide
from casewright.room.trims.bends import bend_at
from casewright.room.wall_fixing import WallFixing, wall_fixings
from casewright.sources import INCH

__all__ = [
    "NOT_FOUND",
    "AtStuds",
    "joining_screw_length",
    "ledger_length",
    "seam_screw",
    "wall_goods",
]

AtStuds = Mapping[str, Mapping[Fraction, int]]
"""Wall screws of cases whose studs were found, by the case's key and their length [mm]."""

NOT_FOUND: AtStuds = MappingProxyType({})
"""No stud was found yet."""

_LEDGER_BOARD: dict[Unit, Fraction] = {"in": 96 * INCH, "mm": Fraction(2400)}
_STEP: dict[Unit, Fraction] = {"in": Fraction(254, 40), "mm": Fraction(5)}
_SHORT: dict[Unit, Fraction] = {"in": Fraction(254, 80), "mm": Fraction(3)}


def joining_screw_length(left: Fraction, right: Fraction, unit: Unit) -> Fraction:
    """Longest screw sold that stays inside two sides: their thickness less 1/8 in or 3 mm.

    Parameters
    ----------
    left, right
        Thickness of the two sides [mm].

    Returns
    -------
    Length on the grid screws are sold in, 1/4 in or 5 mm [mm].
    """
    return round_to(left + right - _SHORT[unit], _STEP[unit], Way.DOWN)[0]


def wall_goods(room: Room, at_studs: AtStuds = NOT_FOUND) -> Iterator[BuyLine]:
    """Wall screws, joining screws, shims and the ledger."""
    fixings = wall_fixings(room)
    longest = ledger_length(room)
    if fixings:
        yield from _wall_screws(room, fixings, longest, at_studs)
    yield from _joining_screws(room)
    yield from _shims(room, fixings)
    if longest:
        yield _ledger(room, longest)


def _studs(room: Room, along: Fraction) -> int:
    return int(along // room.spec.style["stud_spacing"].value) + 1


def _wall_screws(
    room: Room, fixings: tuple[WallFixing, ...], ledger: Fraction, at_studs: AtStuds
) -> Iterator[BuyLine]:
    """A line for each length; the ledger takes the shortest."""
    reckoned = tuple(fixing for fixing in fixings if fixing.case not in at_studs)
    sizes = {fixing.length for fixing in reckoned}
    sizes |= {size for case in at_studs.values() for size in case}
    for number, size in enumerate(sorted(sizes)):
        own = tuple(fixing for fixing in reckoned if fixing.length == size)
        listed = {key: case[size] for key, case in at_studs.items() if size in case}
        yield _wall_screw(room, size, own, listed, Fraction(0) if number else ledger)


def _wall_screw(
    room: Room,
    size: Fraction,
    reckoned: tuple[WallFixing, ...],
    listed: Mapping[str, int],
    ledger: Fraction,
) -> BuyLine:
    """Screws of one length.

    Parameters
    ----------
    reckoned
        Cases that take them, where no stud was found yet.
    listed
        How many the others take, by the key of the case.
    ledger
        Length of the ledger that they hold [mm]; 0: none.
    """
    unit = room.spec.unit
    below = _studs(room, ledger) if ledger else 0
    held = sum(fixing.screws for fixing in reckoned)
    terms = []
    if listed:
        terms.append(
            f"2 for each row and stud that was found, as the sheet of the wall lists them: "
            f"{sum(listed.values())}"
        )
    if reckoned:
        spacing = length(room.spec.style["stud_spacing"].value, unit)
        terms.append(f"2 for each row and stud, studs at {spacing} until they are found: {held}")
    if below:
        terms.append(f"{below} for the ledger")
    deepest = max(reckoned, key=lambda fixing: fixing.case_depth, default=None)
    why = ", and ".join(terms) + ("" if deepest is None else _passed(deepest, unit))
    return pieces(
        "wall", f"cabinet wall screw, washer head, {length(size, unit)}",
        "wall_screw", held + sum(listed.values()) + below, SCREWS,
        paths=(*(f.case for f in reckoned), *listed), why=why,
        note="never drywall screws: they are brittle",
    )  # fmt: skip


def _passed(deepest: WallFixing, unit: Unit) -> str:
    """What a screw goes through before it reaches the stud."""
    return (
        f"; {length(deepest.length, unit)} less {length(deepest.case_depth, unit)} of nailer "
        f"and back, {length(deepest.shim, unit)} of shim and {length(deepest.wallboard, unit)} "
        f"of wallboard (both assumed) leaves {length(deepest.bite, unit)} in the stud"
    )


def _side(case: Case, hand: str) -> Fraction:
    sides = (part for part in case.parts if part.role == "side" and part.hand == hand)
    return next(sides).finished.thickness.value


def _stiles(left: Case, right: Case) -> tuple[Fraction, Fraction] | None:
    """Widths of the two stiles that meet at a seam of face frames [mm]."""
    found = [
        part.finished.width.value
        for case, hand in ((left, "right"), (right, "left"))
        for part in case.parts
        if part.role == "frame stile" and part.hand == hand
    ]
    return (found[0], found[1]) if len(found) == 2 else None


def seam_screw(left: Case, right: Case, unit: Unit) -> tuple[Fraction, bool]:
    """The screw that joins two neighbours, and whether it goes through face frames.

    Returns
    -------
    Its length [mm]: inside the two stiles that meet there, else inside the two sides. Beside the
    bevel of a diagonal corner's frame a screw would come out behind: there it goes through both
    sides, and what is packed between them.
    """
    stiles = _stiles(left, right)
    if stiles is not None and left.mouth is None and right.mouth is None:
        return joining_screw_length(*stiles, unit), True
    packed = _out(left, "right") + _out(right, "left")
    ends = _side(left, "right") + packed, _side(right, "left")
    return joining_screw_length(*ends, unit), False


def _out(case: Case, hand: RunSide) -> Fraction:
    """How far a face frame stands out beside its box [mm]; not that across a corner."""
    left = case.left_frame.value
    if not case.spec.framed or case.mouth is not None:
        return Fraction(0)
    return left if hand == "left" else case.overall_width.value - case.width.value - left


def _joining_screws(room: Room) -> Iterator[BuyLine]:
    unit = room.spec.unit
    seams: dict[Fraction, list[tuple[str, str]]] = {}
    framed: dict[Fraction, list[tuple[str, str]]] = {}
    for run in room.runs:
        for left, right in run.neighbours:
            screw, through_frames = seam_screw(left, right, unit)
            found = framed if through_frames else seams
            found.setdefault(screw, []).append((left.key, right.key))
    for corner, beside, side in _corner_seams(room):
        ends = _side(corner, "right" if side == "left" else "left"), _side(beside, side)
        screw = joining_screw_length(ends[0] + _out(beside, side), ends[1], unit)
        seams.setdefault(screw, []).append((corner.key, beside.key))
    plinths = _plinth_seams(room)
    if plinths:
        yield _plinth_screws(room, plinths)
    for screw, pairs in sorted(framed.items()):
        yield pieces(
            "wall", f"joining screw {length(screw, unit)}", "joining_screw",
            FRAME_SCREWS_A_SEAM * len(pairs), SCREWS,
            paths=tuple(dict.fromkeys(key for pair in pairs for key in pair)),
            why=f"{FRAME_SCREWS_A_SEAM} a seam x {counted(len(pairs), 'seam')} of two face "
            "frames; stays inside two stiles, bored for first",
        )  # fmt: skip
    for screw, pairs in sorted(seams.items()):
        yield pieces(
            "wall", f"joining screw {length(screw, unit)}", "joining_screw",
            JOINING_SCREWS_A_SEAM * len(pairs), SCREWS,
            paths=tuple(dict.fromkeys(key for pair in pairs for key in pair)),
            why=f"{JOINING_SCREWS_A_SEAM} a seam x {counted(len(pairs), 'seam')}; stays inside "
            "two sides",
        )  # fmt: skip


def _corner_seams(room: Room) -> Iterator[tuple[Case, Case, RunSide]]:
    """A diagonal corner, the case of the run round it that stands against it, and at which end."""
    cases = {case.key: case for case in room.cases}
    for run in room.runs:
        for side in SIDES:
            key = bend_at(room.spec, run.spec, side)
            beside = run.spec.places[0 if side == "left" else -1]
            if key is not None and key not in run.spec.cases and beside in cases:
                yield cases[key], cases[beside], side


def _plinth_seams(room: Room) -> list[tuple[Case, Case]]:
    """Diagonal corners on plinths, each with a neighbour on one."""
    pairs = [(corner, beside) for corner, beside, _ in _corner_seams(room)]
    pairs += [
        (one, other) if one.mouth is not None else (other, one)
        for run in room.runs for one, other in run.neighbours
        if (one.mouth is None) != (other.mouth is None)
    ]  # fmt: skip
    return [pair for pair in pairs if all(case.spec.toe == "plinth" for case in pair)]


def _plinth_screws(room: Room, pairs: list[tuple[Case, Case]]) -> BuyLine:
    """What holds the plinth of a corner to the ones beside it, end to end."""
    board = min(
        part.finished.thickness.value
        for corner, _ in pairs for part in corner.parts if part.group == "plinth"
    )  # fmt: skip
    unit = room.spec.unit
    return pieces(
        "wall", f"plinth screw {length(joining_screw_length(board, board, unit), unit)}",
        "joining_screw", JOINING_SCREWS_A_SEAM * len(pairs), SCREWS,
        paths=tuple(dict.fromkeys(case.key for pair in pairs for case in pair)),
        why=f"{JOINING_SCREWS_A_SEAM} where a plinth meets that of a corner x {len(pairs)}; stays "
        "inside two sleepers",
    )  # fmt: skip


def _shims(room: Room, fixings: tuple[WallFixing, ...]) -> Iterator[BuyLine]:
    at_wall = sum(len(fixing.rows) * fixing.studs * SHIMS_A_STUD for fixing in fixings)
    carried = {case.key for case in room.cases if case.standing.value}
    standing = tuple(c.key for c in room.cases if not c.spec.is_hung and c.key not in carried)
    below = SHIMS_A_CASE * len(standing)
    if at_wall + below:
        terms = [f"{at_wall} behind rows of wall screws"] if at_wall else []
        cases = counted(len(standing), "standing case")
        terms += [f"{SHIMS_A_CASE} under each of {cases}"] if below else []
        yield pieces(
            "wall", "tapered shim", "shim", at_wall + below, FIXED_SPARES,
            paths=tuple(dict.fromkeys([f.case for f in fixings] + list(standing))),
            why=", ".join(terms),
        )  # fmt: skip


def ledger_length(room: Room) -> Fraction:
    """Length of the longest row of wall cases [mm]; 0 without any.

    One ledger serves each row in turn.
    """
    in_runs = {case.key for run in room.runs for case in run.cases}
    rows = [
        sum((c.overall_width.value for c in run.cases if c.spec.kind == "wall"), Fraction(0))
        for run in room.runs
    ]
    rows += [
        case.overall_width.value
        for case in room.cases
        if case.spec.kind == "wall" and case.key not in in_runs
    ]
    return max(rows, default=Fraction(0))


def _ledger(room: Room, longest: Fraction) -> BuyLine:
    unit = room.spec.unit
    board = _LEDGER_BOARD[unit]
    width = room.spec.style["ledger"].value
    return BuyLine(
        "wall", f"straight board {length(width, unit)} wide, for the ledger", "ledger",
        "length", longest, Fraction(0), board, packed(longest, Fraction(0), board),
        f"board of {length(board, unit)}",
        f"as long as the longest row of wall cases, {length(longest, unit)}; it carries the cases "
        "while they are screwed on and comes off again",
        tuple(case.key for case in room.cases if case.spec.kind == "wall"),
    )  # fmt: skip
