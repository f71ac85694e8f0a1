"""Made pieces that do not go together with what else is made: parallel ones that differ."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.casework.proof import Proof, as_findings
from casewright.casework.proof.prove import GRID
from casewright.casework.verification import verify
from casewright.dims import Dim, Origin
from casewright.facts import NO_FACTS, Fact
from casewright.findings import Severity
from casewright.resolve.moves import (
    LOOSE,
    Move,
    Remedy,
    comes_off,
    mended,
    packed_up,
    sides_of,
)
from casewright.resolve.one_case import case_with_size
from casewright.resolve.slopes import slope
from casewright.room.as_read import without_play
from casewright.room.build import build
from casewright.room.model import Room
from casewright.stock import Offcut

_SMALL = Fraction(1, 2)
"""What glue lines and clamps take up (common practice) [mm]."""

_HUNG = ("wall", "plinth")
"""Kinds of case that stand on nothing of their own."""

__all__ = ["Misfit", "misfits", "with_size"]


@dataclass(frozen=True, slots=True)
class Misfit:
    """A made piece that what it meets does not go together with.

    Parameters
    ----------
    part
        The piece.
    side
        Which of its sizes is to blame.
    says
        What does not hold because of it, in words.
    dim
        That size, as it is and as it is wanted.
    remedies
        Those that apply, the least work first.
    """

    part: Part
    side: str
    says: tuple[str, ...]
    dim: Dim
    remedies: tuple[Remedy, ...]


def misfits(room: Room, offcuts: Sequence[Offcut] = ()) -> tuple[Misfit, ...]:
    """The made pieces whose size is not the one wanted, and breaks the proof of their case.

    A difference that assembly takes up is none, nor one that a reading of the box shows its joints
    have taken up. The outside of a case is judged by its fits; a
    piece that a fit rests on is told where the fit holds and the case still does not go together.

    Parameters
    ----------
    offcuts
        Those on hand.
    """
    return tuple(misfit for case in room.cases for misfit in _in_case(room, case, offcuts))


def with_size(room: Room, dim: Dim, size: Fraction) -> Room:
    """The room as it would be, were a made piece of this size [mm]."""
    held = room.chain.facts
    facts = {path: fact for path, fact in held.items() if isinstance(fact, Fact)}
    facts[dim.path] = Fact(Origin("made", "tried"), cut=size)
    return build(replace(room.spec, file_facts=NO_FACTS), facts, designed=room.designed)


def _in_case(room: Room, case: Case, offcuts: Sequence[Offcut]) -> Iterator[Misfit]:
    moves = [
        Move(part, side, dim, dim.wanted - dim.value)
        for part in case.parts
        if part.state != "planned"
        for side, dim in sides_of(part)
        if dim.value != dim.wanted
    ]
    broken = _broken(room, case) if moves else {}
    small = [move for move in moves if abs(move.by) <= _SMALL]
    large = [move for move in moves if move not in small]
    open_ = set(broken)
    for each in (large, small):
        # What assembly takes up is to blame only for what no larger difference explains.
        found = list(_to_blame(room, case, each, broken, offcuts)) if open_ else []
        yield from found
        open_ -= {says for misfit in found for says in misfit.says}


def _to_blame(
    room: Room,
    case: Case,
    moves: Iterable[Move],
    broken: Mapping[str, bool],
    offcuts: Sequence[Offcut],
) -> Iterator[Misfit]:
    """The pieces with which, at the size wanted, something goes together that does not now."""
    for move in moves:
        judged = _judged(room, case, move.dim)
        told = {says for says, grave in broken.items() if grave or not judged}
        if not told or False in judged:
            continue
        left = _left(room, case, move.dim, move.dim.value + move.by)
        mends = tuple(says for says in broken if says in told and says not in left)
        if mends and len(left) < len(broken):
            found = (*_partners(room, case, move, mends), *_own(room, move, offcuts))
            yield Misfit(move.part, move.side, mends, move.dim, found)


def _left(room: Room, case: Case, dim: Dim, size: Fraction) -> dict[str, bool]:
    """What of a case still does not go together with a piece of this size."""
    alone = case_with_size(room, case, dim, size)
    if alone is not None:
        return _broken(*alone)
    tried = with_size(room, dim, size)
    return _broken(tried, next(each for each in tried.cases if each.key == case.key))


def _own(room: Room, move: Move, offcuts: Sequence[Offcut]) -> Iterator[Remedy]:
    """What helps the piece itself, as long as it is loose or can be taken off again."""
    part = move.part
    if part.state in LOOSE or comes_off(room, part):
        yield from mended(room, (move,), offcuts)
    else:
        says = (
            f"{part.path} is fastened: read its {move.side} again; if it is so, leave it, and "
            "what is still to be made goes by it"
        )
        yield Remedy("design anew", says, 0)


def _partners(room: Room, case: Case, move: Move, mends: Sequence[str]) -> Iterator[Remedy]:
    """A piece too short or narrow: what stands beside it is packed up, or made to match."""
    if move.by < 0:
        return
    if move.side == "length" and move.part.role == "side" and case.spec.kind not in _HUNG:
        yield from packed_up(room, move)
    if move.part.state not in LOOSE:
        return
    for part in case.parts:
        if part is move.part or part.role != move.part.role or part.state != move.part.state:
            continue
        dim = dict(sides_of(part))[move.side]
        size = dict(sides_of(move.part))[move.side].value
        if dim.value <= size:
            continue
        if set(mends) & set(_left(room, case, dim, size)):
            continue
        known = room.chain.fits
        fits = with_size(room, dim, size).chain.fits.items()
        if all(f.holds or not known[p].holds for p, f in fits):
            yield from mended(room, (Move(part, move.side, dim, size - dim.value),), ())


def _judged(room: Room, case: Case, dim: Dim) -> set[bool]:
    """Whether the fits of a case that rest on a size hold; empty where none does."""
    own = f"{case.key}."
    fits = (fit for path, fit in room.chain.fits.items() if path.startswith(own))
    return {fit.holds for fit in fits if slope(fit.gap, dim)}


def _broken(room: Room, case: Case) -> dict[str, bool]:
    """What of a case does not go together, and whether it stops the work."""
    grid = max(room.spec.style["cut_step"].value, GRID)
    failures = verify(case, hardware=room.spec.hardware, grid=grid).failures
    told = Proof(tuple(failure for failure in failures if failure.check != "size"))
    found = as_findings(without_play(room, case, told), unit=room.spec.unit)
    grave = [each for each in found if each.severity is not Severity.NOTE]
    return {each.says: each.severity is Severity.STOP for each in grave}
