"""What a failed proof means to the person, where the sizes are those of real things."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.proof.failure import Failure, Proof
from casewright.dims import Unit, shop_text
from casewright.findings import Finding, Severity

__all__ = ["PROOF_RULE", "as_findings", "of_goods", "that_follow"]

PROOF_RULE = "proof: "
"""How the names of all findings begin that a failed proof gives."""

# What glue lines, clamps and a plane take up without a word (common practice).
_ABSORBED = Fraction(1, 2)
_LENGTHS = ("joints", "size", "fronts", "overlap", "pins", "edges")


def as_findings(
    proof: Proof, *, unit: Unit = "in", absorbed: Fraction = _ABSORBED
) -> tuple[Finding, ...]:
    """Failures on built values as findings.

    Parameters
    ----------
    unit
        The job's unit.
    absorbed
        Mismatch of surfaces that assembly takes up [mm]; up to that a finding is a note only.
    """
    return tuple(_finding(failure, unit, absorbed) for failure in proof.failures)


def of_goods(proof: Proof, title: str) -> tuple[Finding, ...]:
    """Failures that other fasteners would mend, as findings, like ones together.

    Parameters
    ----------
    title
        Of the case.
    """
    first: dict[tuple[str, str], Failure] = {}
    for failure in proof.failures:
        if failure.of_goods:
            first.setdefault((failure.check, failure.says.partition(" inside ")[0]), failure)
    return tuple(
        _stop(failure, title, "fasteners of another length", "a sheet of another thickness")
        for failure in first.values()
    )


def that_follow(proof: Proof, title: str, first: Finding) -> tuple[Finding, ...]:
    """Failures in a case that is stopped anyway by what it is made of, like ones together.

    A door on hinges that cannot reach, or a pocket in a side too thick for its screws, cannot be
    proved to go together; its reason was found already.

    Parameters
    ----------
    title
        Of the case.
    first
        What stops it.
    """
    alike = {
        (failure.check, failure.says): failure for failure in reversed(proof.failures)
        if not failure.of_goods
    }  # fmt: skip
    return tuple(
        _stop(
            failure, title, f"put right '{first.rule}' of {first.path} first; this may go with it"
        )
        for failure in reversed(alike.values())
    )


def _stop(failure: Failure, title: str, *remedies: str) -> Finding:
    """What stops a case: the failure, and what would mend it."""
    return Finding(
        rule=f"{PROOF_RULE}{failure.check}",
        severity=Severity.STOP,
        path=failure.paths[0],
        says=f"in {title}, {failure.says}",
        source="common practice",
        remedies=remedies,
    )


def _finding(failure: Failure, unit: Unit, absorbed: Fraction) -> Finding:
    measured = shop_text(failure.amount, unit) if failure.amount else ""
    by = f", by {measured}" if measured else ""
    return Finding(
        rule=f"{PROOF_RULE}{failure.check}",
        severity=_severity(failure, absorbed),
        path=failure.paths[0],
        says=f"as built, {failure.says}{by}",
        measured=measured,
        limit=shop_text(absorbed, unit) if measured and failure.check in _LENGTHS else "",
        source="common practice",
        remedies=("measure again the sizes that were read", "recut what is not yet assembled"),
    )


def _severity(failure: Failure, absorbed: Fraction) -> Severity:
    if failure.check in _LENGTHS and failure.amount > 0:
        return Severity.NOTE if failure.amount <= absorbed else Severity.CARE
    return Severity.STOP
