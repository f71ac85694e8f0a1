"""What follows from what was read and cut: kept, to be made otherwise, impossible now."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from casewright.casework.parts import Part
from casewright.dims import Fit
from casewright.resolve.clashes import Clash, clashes
from casewright.resolve.differences import Difference, differences
from casewright.resolve.misfits import Misfit, misfits
from casewright.resolve.moves import Remedy
from casewright.resolve.remedies import remedies
from casewright.resolve.run_clashes import run_clashes
from casewright.resolve.sources import FactChange, Sources
from casewright.resolve.spoiled import Recut, recut
from casewright.resolve.trials import Trials
from casewright.room.model import Room
from casewright.stock import Offcut

__all__ = ["Change", "Conflict", "Kept", "Proposal", "propose"]


@dataclass(frozen=True, slots=True)
class Kept:
    """A piece that is made and stays as it is.

    Parameters
    ----------
    part
        The piece.
    otherwise
        Names of the sizes that would be other if it were cut now: the rest goes by the piece.
    """

    part: Part
    otherwise: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Change:
    """A piece to be made otherwise, and the sizes it is because of.

    Parameters
    ----------
    difference
        What is other in it.
    because
        The sizes read or cut that reach it, in the order of the chain.
    """

    difference: Difference
    because: tuple[FactChange, ...]


@dataclass(frozen=True, slots=True)
class Conflict:
    """A fit that cannot be kept by what is still to be made.

    Parameters
    ----------
    fit
        The fit, outside its band.
    because
        The sizes read or cut that reach it, in the order of the chain.
    remedies
        Those that apply, in the order in which they are tried.
    """

    fit: Fit
    because: tuple[FactChange, ...]
    remedies: tuple[Remedy, ...]


@dataclass(frozen=True, slots=True)
class Proposal:
    """What follows, to be said yes to.

    Parameters
    ----------
    facts
        The sizes that differ from what was agreed.
    kept
        Pieces that are made and stay.
    untouched
        How many pieces still to be made stay as they were planned [-].
    changes
        Pieces to be made otherwise.
    again
        Spoiled pieces, with where each is cut from.
    conflicts, misfits, clashes
        What is impossible now: fits outside their bands, pieces that do not go together with what
        is made beside them, things that do not for several of their pieces.
    """

    facts: tuple[FactChange, ...]
    kept: tuple[Kept, ...]
    untouched: int
    changes: tuple[Change, ...]
    again: tuple[Recut, ...]
    conflicts: tuple[Conflict, ...]
    misfits: tuple[Misfit, ...]
    clashes: tuple[Clash, ...]

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to say yes to."""
        return not (self.changes or self.again or self.stops)

    @property
    def stops(self) -> int:
        """How many things are impossible now [-]."""
        return len(self.conflicts) + len(self.misfits) + len(self.clashes)


def propose(
    before: Room,
    after: Room,
    *,
    spoiled: Iterable[str] = (),
    offcuts: Sequence[Offcut] = (),
) -> Proposal:
    """What follows from the facts of one room that another does not have.

    Both are built from one job. What is cut keeps its size by construction, and what is made
    later is computed from it; so nothing moves but what meets a size that did.

    Parameters
    ----------
    before
        As it was agreed: with the facts of then, or without any.
    after
        With the facts of now.
    spoiled
        Paths of pieces that are to be cut again.
    offcuts
        Those on hand.
    """
    sources, trials = Sources.of(before, after), Trials(after)
    found = differences(before, after)
    changed = {each.path for each in found}
    parts = {part.path: part for part in after.parts}
    lost = tuple(parts[path] for path in spoiled if path in parts)
    made = [part for part in after.parts if part.state != "planned"]
    still = len(parts) - len(made) - sum(parts[p].state == "planned" for p in changed & set(parts))
    conflicts = tuple(
        Conflict(fit, sources.behind(fit.gap), remedies(trials, fit, offcuts))
        for fit in after.chain.fits.values()
        if not fit.holds
    )
    alone = misfits(trials, offcuts)
    return Proposal(
        facts=sources.changes,
        kept=tuple(Kept(part, _otherwise(part)) for part in made),
        untouched=still - sum(part.path not in changed for part in lost),
        changes=tuple(
            Change(each, sources.behind_part(parts.get(each.path), each)) for each in found
        ),
        again=recut(after, lost, offcuts),
        conflicts=conflicts,
        misfits=alone,
        clashes=(
            *clashes(
                trials,
                sources,
                [says for misfit in alone for says in misfit.says],
                [remedy for conflict in conflicts for remedy in conflict.remedies[:1]],
                offcuts,
            ),
            *run_clashes(before, trials, sources, offcuts),
        ),
    )


def _otherwise(part: Part) -> tuple[str, ...]:
    sizes = (("length", part.blank.length), ("width", part.blank.width))
    return tuple(name for name, dim in sizes if dim.value != dim.wanted)
