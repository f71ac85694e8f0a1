"""What holds cases to the wall, to each other and level."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from types import MappingProxyType
from typing import NamedTuple

from casewright.buying.line import BuyLine, packed
from casewright.buying.numbers import sums
from casewright.buying.pieces import pieces
from casewright.buying.spares import (
    FIXED_SPARES,
    FRAME_SCREWS_A_SEAM,
    JOINING_SCREWS_A_SEAM,
    SCREWS,
    SHIMS_A_CASE,
    SHIMS_A_STUD,
)
from casewright.buying.words import counted
from casewright.casework.cases import Case
from casewright.dims import Dim, Measure, Told, Unit, Way, greatest, joined, round_to, tell, total
from casewright.findings import Limit, Reckoning
from casewright.room.model import Room
from casewright.room.run_ends import SIDES
from casewright.room.specs import RunSide
from casewright.room.trims.bends import bend_at
from casewright.room.wall_fixing import WallFixing, wall_fixings

__all__ = [
    "NOT_FOUND",
    "AtStuds",
    "SeamScrew",
    "joining_screw_length",
    "ledger_length",
    "seam_screw",
    "seam_sums",
    "wall_goods",
]

AtStuds = Mapping[str, Sequence[tuple[Dim, int]]]
"""Wall screws of cases whose studs were found: their lengths [mm] and how many, by case."""

NOT_FOUND: AtStuds = MappingProxyType({})
"""No stud was found yet."""

_LEDGER_BOARD = Limit("ledger.board", "96", "2400", "length that straight boards are sold in")
_STEP: dict[Unit, Fraction] = {"in": Fraction(254, 40), "mm": Fraction(5)}
_SHORT = Limit("joining_screw.short", "1/8", "3", "what its point stays inside the second side")


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
    return round_to(left + right - _SHORT.of(unit), _STEP[unit], Way.DOWN)[0]


class SeamScrew(NamedTuple):
    """The screw that joins two boards at a seam.

    Parameters
    ----------
    ends
        Thickness of the two boards, what is packed between them with the first [mm].
    length
        Of the screw [mm].
    in_frames
        Whether it goes through face frames.
    """

    ends: tuple[Dim, Dim]
    length: Fraction
    in_frames: bool

    def told(self, own: Reckoning, name: str = "screw") -> Measure:
        """Its length, on the grid that screws are sold in."""
        step, short = _STEP[own.unit], own.limit(_SHORT)
        dim = Dim("round", (total(*self.ends) - short, step), self.length)
        return own.length(dim, name)


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
    nodes = room.chain.nodes
    dims = [nodes[f"{fixing.case}.wall_screw"] for fixing in reckoned]
    dims += [dim for case in at_studs.values() for dim, _ in case]
    sizes = {dim.value: dim for dim in reversed(dims)}
    for number, (size, dim) in enumerate(sorted(sizes.items())):
        own = tuple(fixing for fixing in reckoned if fixing.length == size)
        listed = {
            key: sum(count for each, count in case if each.value == size)
            for key, case in at_studs.items() if any(each.value == size for each, _ in case)
        }  # fmt: skip
        yield _wall_screw(room, dim, own, listed, Fraction(0) if number else ledger)


def _wall_screw(
    room: Room,
    size: Dim,
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
    own = sums(room, "wall_screw", "cases")
    below = _studs(room, ledger) if ledger else 0
    held = sum(fixing.screws for fixing in reckoned)
    terms: list[str] = []
    if listed:
        terms.append(
            f"2 for each row and stud that was found, as the sheet of the wall lists them: "
            f"{sum(listed.values())}"
        )
    if reckoned:
        spacing = own.given("style.stud_spacing", room.spec.style["stud_spacing"])
        terms.append(
            tell(
                "2 for each row and stud, studs at {} until they are found: {}",
                own.length(spacing),
                held,
            )
        )
    if below:
        terms.append(f"{below} for the ledger")
    deepest = max(reckoned, key=lambda fixing: fixing.case_depth, default=None)
    why = joined(", and ", terms) + ("" if deepest is None else _passed(room, own, deepest))
    return pieces(
        "wall", tell("cabinet wall screw, washer head, {}", own.length(size)), "wall_screw",
        held + sum(listed.values()) + below, SCREWS,
        paths=(*(f.case for f in reckoned), *listed), why=why,
        note="never drywall screws: they are brittle", numbers=own.numbers,
    )  # fmt: skip


def _passed(room: Room, own: Reckoning, deepest: WallFixing) -> Told:
    """What a screw goes through before it reaches the stud."""
    screw = room.chain.nodes[f"{deepest.case}.wall_screw"]
    shim, board = (own.given(f"style.{key}", room.spec.style[key])
                   for key in ("wall_shim", "wallboard"))  # fmt: skip
    passed = own.let(f"{deepest.case}.through_case", deepest.through_case)
    bite = own.let(f"{deepest.case}.bite", screw - passed - shim - board)
    return tell(
        "; {} less {} of nailer and back, {} of shim and {} of wallboard (both assumed) leaves {} "
        "in the stud", *(own.length(dim) for dim in (screw, passed, shim, board, bite)),
    )  # fmt: skip


def _side(case: Case, hand: str) -> Dim:
    sides = (part for part in case.parts if part.role == "side" and part.hand == hand)
    return next(sides).finished.thickness


def _stiles(left: Case, right: Case) -> tuple[Dim, Dim] | None:
    """Widths of the two stiles that meet at a seam of face frames [mm]."""
    found = [
        part.finished.width
        for case, hand in ((left, "right"), (right, "left"))
        for part in case.parts
        if part.role == "frame stile" and part.hand == hand
    ]
    return (found[0], found[1]) if len(found) == 2 else None


def seam_screw(left: Case, right: Case, unit: Unit) -> SeamScrew:
    """The screw that joins two neighbours.

    It stays inside the two stiles that meet there, else inside the two sides. Beside the bevel of
    a diagonal corner's frame a screw would come out behind: there it goes through both sides, and
    what is packed between them.
    """
    stiles = _stiles(left, right)
    if stiles is not None and left.mouth is None and right.mouth is None:
        return _screw(*stiles, unit, in_frames=True)
    packed = (*_out(left, "right"), *_out(right, "left"))
    return _screw(total(_side(left, "right"), *packed), _side(right, "left"), unit)


def seam_sums(room: Room, one: str, other: str) -> Reckoning:
    """Where the screw between two cases is worked out.

    Parameters
    ----------
    one, other
        Their keys.
    """
    return sums(room, "joining_screw", f"{one}_{other}")


def _screw(one: Dim, other: Dim, unit: Unit, *, in_frames: bool = False) -> SeamScrew:
    long = joining_screw_length(one.value, other.value, unit)
    return SeamScrew((one, other), long, in_frames)


def _out(case: Case, hand: RunSide) -> tuple[Dim, ...]:
    """How far a face frame stands out beside its box [mm]; not that across a corner."""
    left = case.left_frame
    if not case.spec.framed or case.mouth is not None:
        return ()
    return (left,) if hand == "left" else (case.overall_width - case.width - left,)


def _joining_screws(room: Room) -> Iterator[BuyLine]:
    unit = room.spec.unit
    seams: dict[Fraction, list[_Seam]] = {}
    framed: dict[Fraction, list[_Seam]] = {}
    for run in room.runs:
        for left, right in run.neighbours:
            screw = seam_screw(left, right, unit)
            found = framed if screw.in_frames else seams
            found.setdefault(screw.length, []).append(_Seam((left.key, right.key), screw))
    for corner, beside, side in _corner_seams(room):
        own = _side(corner, "right" if side == "left" else "left")
        screw = _screw(total(own, *_out(beside, side)), _side(beside, side), unit)
        seams.setdefault(screw.length, []).append(_Seam((corner.key, beside.key), screw))
    plinths = _plinth_seams(room)
    if plinths:
        yield _plinth_screws(room, plinths)
    for found, count, words in (
        (framed, FRAME_SCREWS_A_SEAM,
         " of two face frames; stays inside two stiles, bored for first"),
        (seams, JOINING_SCREWS_A_SEAM, "; stays inside two sides"),
    ):  # fmt: skip
        for _, pairs in sorted(found.items()):
            told = [seam_sums(room, *pair.cases) for pair in pairs]
            said = [pair.screw.told(own) for pair, own in zip(pairs, told, strict=True)]
            yield pieces(
                "wall", tell("joining screw {}", said[0]), "joining_screw", count * len(pairs),
                SCREWS, numbers=tuple(dim for own in told for dim in own.numbers),
                paths=tuple(dict.fromkeys(key for pair in pairs for key in pair.cases)),
                why=f"{count} a seam x {counted(len(pairs), 'seam')}{words}",
            )  # fmt: skip


class _Seam(NamedTuple):
    """Keys of the two cases, and what joins them."""

    cases: tuple[str, str]
    screw: SeamScrew


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
        (part.finished.thickness
         for corner, _ in pairs for part in corner.parts if part.group == "plinth"),
        key=lambda dim: dim.value,
    )  # fmt: skip
    own = sums(room, "joining_screw", "plinths")
    screw = _screw(board, board, room.spec.unit).told(own)
    return pieces(
        "wall", tell("plinth screw {}", screw), "joining_screw",
        JOINING_SCREWS_A_SEAM * len(pairs), SCREWS, numbers=own.numbers,
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
    return max((row.value for row in _hung_rows(room)), default=Fraction(0))


def _hung_rows(room: Room) -> Iterator[Dim]:
    in_runs = {case.key for run in room.runs for case in run.cases}
    for run in room.runs:
        wide = [case.overall_width for case in run.cases if case.spec.kind == "wall"]
        if wide:
            yield total(*wide)
    for case in room.cases:
        if case.spec.kind == "wall" and case.key not in in_runs:
            yield case.overall_width


def _ledger(room: Room, longest: Fraction) -> BuyLine:
    own = sums(room, "ledger", "row")
    board = own.limit(_LEDGER_BOARD)
    width = own.given("style.ledger", room.spec.style["ledger"])
    row = own.let("longest", greatest(*_hung_rows(room)))
    return BuyLine(
        "wall", tell("straight board {} wide, for the ledger", own.length(width)), "ledger",
        "length", longest, Fraction(0), board.value, packed(longest, Fraction(0), board.value),
        tell("board of {}", own.length(board)),
        tell("as long as the longest row of wall cases, {}; it carries the cases while they are "
             "screwed on and comes off again", own.length(row)),
        tuple(case.key for case in room.cases if case.spec.kind == "wall"), numbers=own.numbers,
    )  # fmt: skip
