"""Proof of assembly: from cut sizes, features and placements only, in whole numbers."""

from casewright.casework.proof.as_findings import as_findings, of_goods
from casewright.casework.proof.failure import CheckName, Failure, Proof
from casewright.casework.proof.prove import prove

__all__ = ["CheckName", "Failure", "Proof", "as_findings", "of_goods", "prove"]
