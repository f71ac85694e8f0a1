"""What a box that was read as it stands says of its pieces: that they meet, whatever they lack.

The pieces of a box that stands clamped meet; what it is over or under their sum is in its joints.
As long as its own size is within what the style allows, that is no fault of any piece.
"""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.proof import Failure, Proof
from casewright.dims import Dim, Origin, size_text, tell
from casewright.findings import Finding, Reckoning, Severity
from casewright.room.model import Room

__all__ = ["told_as_read", "without_play"]

_RULE = "box as read"
_OFF = Origin("solved", "what its readings are over and under what its pieces come to, together")
_UNTOLD = Fraction(1, 2)
"""What glue lines and clamps take up without a word (common practice) [mm]."""


def without_play(room: Room, case: Case, proof: Proof) -> Proof:
    """The failures that no reading of the box itself explains.

    Parameters
    ----------
    proof
        Of the case on built values.
    """
    play = _play(room, case)
    if not play:
        return proof
    most = play + room.spec.style["cut_step"].value
    pairs = {
        frozenset(failure.paths)
        for failure in proof.failures
        if failure.check == "overlap" and failure.amount <= play
    }

    def is_explained(failure: Failure) -> bool:
        if failure.check == "path":
            return frozenset(failure.paths) in pairs
        return 0 < failure.amount <= (most if failure.check in ("size", "fronts") else play)

    return Proof(tuple(each for each in proof.failures if not is_explained(each)))


def told_as_read(room: Room, case: Case) -> tuple[Finding, ...]:
    """A note where a box that was read is off by more than goes without a word."""
    play, unit = _play(room, case), room.spec.unit
    if play <= _UNTOLD:
        return ()
    read = _read(room, case)
    names = [dim.path.rpartition(".")[2].replace("_", " ") for dim in read]
    own = Reckoning(_RULE, case.key, unit, room.chain.nodes)
    off = own.length(own.worked("off", play, _OFF, *read))
    return (
        Finding(
            rule=_RULE,
            severity=Severity.NOTE,
            path=case.key,
            says=tell(
                "the {} of {} came out {} off what its pieces come to; its joints take that up, "
                "and what is made later goes by the reading",
                " and the ".join(names),
                case.spec.title,
                off,
            ),
            measured=off.text,
            limit=size_text(case.tolerance.value, unit),
            source="common practice",
            remedies=("clamp it closer while it can be", "go on by the reading"),
            numbers=own.numbers,
        ),
    )


def _play(room: Room, case: Case) -> Fraction:
    """How far a box is off its pieces by its readings, in all; 0 when its own size is out [mm]."""
    fits = (fit for fit in room.chain.fits.values() if fit.owner == case.key)
    if not all(fit.holds for fit in fits):
        return Fraction(0)
    return sum((abs(dim.value - dim.wanted) for dim in _read(room, case)), Fraction(0))


def _read(room: Room, case: Case) -> list[Dim]:
    """The sizes of the box that were read, and are not what its pieces come to."""
    read = {
        path
        for path, fact in room.chain.facts.items()
        if fact.built is not None and path.rpartition(".")[0] == case.key
    }
    if not read:
        return []
    own = (node for path, node in room.chain.nodes.items() if path in read)
    return [node for node in own if node.built is not None and node.built != node.wanted]
