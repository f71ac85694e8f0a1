"""Proof of assembly: from cut sizes, features and placements only, in whole numbers."""

from casewright.casework.proof.as_findings import (
    PROOF,
    PROOF_RULE,
    as_findings,
    gathered,
    of_goods,
    that_follow,
    told_of,
)
from casewright.casework.proof.failure import CheckName, Failure, Proof
from casewright.casework.proof.prove import prove

__all__ = [
    "PROOF",
    "PROOF_RULE",
    "CheckName",
    "Failure",
    "Proof",
    "as_findings",
    "gathered",
    "of_goods",
    "prove",
    "that_follow",
    "told_of",
]
