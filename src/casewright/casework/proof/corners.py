"""Where mitred parts meet: pairs that share the square of a corner, each with half of it."""

from __future__ import annotations

from casewright.casework.proof.assembled import Assembled

__all__ = ["mates"]


def mates(case: Assembled) -> frozenset[frozenset[str]]:
    """Pairs of parts that a mitre joins, by their paths."""
    return frozenset(
        frozenset((joint.one.part, joint.other.part))
        for joint in case.joints
        if joint.form == "mitre"
    )
