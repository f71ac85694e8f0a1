"""Made pieces that do not go together with what else is made: parallel ones that differ."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.resolve.broken import Key
from casewright.resolve.moves import (
    LOOSE,
    Move,
    Remedy,
    comes_off,
    mended,
    packed_up,
    sides_of,
)
from casewright.resolve.slopes import slope
from casewright.resolve.trials import Trials
from casewright.stock import Offcut

TAKEN_UP = Fraction(1, 2)
"""What glue lines and clamps take up (common practice) [mm]."""

_HUNG = ("wall", "plinth")
"""Kinds of case that stand on nothing of their own."""

_MOST_ALONE, _MOST_OF_MANY = 8, 3
"""Where more pieces of a case are off, no single one is to blame: they are told together. Of what
is built with its whole room, a plinth or an island, fewer are tried."""

__all__ = ["TAKEN_UP", "Misfit", "misfits", "off_pieces"]


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


def misfits(trials: Trials, offcuts: Sequence[Offcut] = ()) -> tuple[Misfit, ...]:
    """The made pieces whose size is not the one wanted, and breaks the proof of their case.

    A difference that assembly takes up is none, nor one that a reading of the box shows its joints
    have taken up. The outside of a case is judged by its fits; a
    piece that a fit rests on is told where the fit holds and the case still does not go together.

    Parameters
    ----------
    trials
        On the room as things are.
    offcuts
        Those on hand.
    """
    return tuple(m for case in trials.room.cases for m in _in_case(trials, case, offcuts))


def off_pieces(parts: Iterable[Part]) -> tuple[Move, ...]:
    """The made ones that are not of the size wanted, each with what brings it there."""
    return tuple(
        Move(part, side, dim, dim.wanted - dim.value)
        for part in parts
        if part.state != "planned"
        for side, dim in sides_of(part)
        if dim.value != dim.wanted
    )


def _in_case(trials: Trials, case: Case, offcuts: Sequence[Offcut]) -> Iterator[Misfit]:
    moves = off_pieces(case.parts)
    if not moves:
        return
    large = [move for move in moves if abs(move.by) > TAKEN_UP]
    small = [move for move in moves if move not in large]
    most = _MOST_ALONE if trials.stands_alone(case) else _MOST_OF_MANY
    open_: set[Key] = set(trials.broken(case))
    for each in (large, small):
        # What assembly takes up is to blame only for what no larger difference explains.
        if not open_ or len({move.part.path for move in each}) > most:
            return
        for misfit, mends in _to_blame(trials, case, each, offcuts):
            yield misfit
            open_ -= mends


def _to_blame(
    trials: Trials, case: Case, moves: Iterable[Move], offcuts: Sequence[Offcut]
) -> Iterator[tuple[Misfit, set[Key]]]:
    """The pieces with which, at the size wanted, something goes together that does not now."""
    broken = trials.broken(case)
    for move in moves:
        judged = _judged(trials, case, move.dim)
        told = {key for key, each in broken.items() if each.stops or not judged}
        if not told or False in judged:
            continue
        trial = trials.alone(case, {move.dim.path: move.dim.value + move.by})
        left = trial.broken(case.key)
        mends = {key for key in broken if key in told and key not in left}
        if not mends or not trials.keeps_fits(trial):
            continue
        found = tuple(_partners(trials, case, move, mends))
        if trials.spoils_nothing(trial):
            found = (*_packed_up(trials, case, move), *found, *_own(trials, move, offcuts))
        if found:
            says = tuple(broken[key].says for key in broken if key in mends)
            yield Misfit(move.part, move.side, says, move.dim, found), mends


def _packed_up(trials: Trials, case: Case, move: Move) -> Iterator[Remedy]:
    """Under a side that is too short."""
    is_side = move.side == "length" and move.part.role == "side"
    if move.by > 0 and is_side and case.spec.kind not in _HUNG:
        yield from packed_up(trials.room, move)


def _own(trials: Trials, move: Move, offcuts: Sequence[Offcut]) -> Iterator[Remedy]:
    """What helps the piece itself, as long as it is loose or can be taken off again."""
    part, room = move.part, trials.room
    if part.state in LOOSE or comes_off(room, part):
        yield from mended(room, (move,), offcuts)
    else:
        says = (
            f"{part.path} is fastened: read its {move.side} again; if it is so, leave it, and "
            "what is still to be made goes by it"
        )
        yield Remedy("design anew", says, 0)


def _partners(trials: Trials, case: Case, move: Move, mends: set[Key]) -> Iterator[Remedy]:
    """A piece too short or narrow: one that stands beside it is made to match."""
    if move.by < 0 or move.part.state not in LOOSE:
        return
    for part in case.parts:
        if part is move.part or part.role != move.part.role or part.state != move.part.state:
            continue
        dim, size = dict(sides_of(part))[move.side], move.dim.value
        is_alike = move.dim.wanted in (dim.wanted, dim.value) or dim.wanted == size
        if dim.value <= size or not is_alike:
            continue
        trial = trials.alone(case, {dim.path: size})
        if trials.spoils_nothing(trial) and not mends & set(trial.broken(case.key)):
            yield from mended(trials.room, (Move(part, move.side, dim, size - dim.value),), ())


def _judged(trials: Trials, case: Case, dim: Dim) -> set[bool]:
    """Whether the fits of a case that rest on a size hold; empty where none does."""
    own = f"{case.key}."
    over = trials.reach.fits_over(dim.path)
    return {fit.holds for fit in over if fit.path.startswith(own) and slope(fit.gap, dim)}
