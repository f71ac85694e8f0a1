"""What a failed proof means to the person, where the sizes are those of real things."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from casewright.casework.proof.failure import Failure, Proof
from casewright.dims import Unit, shop_text
from casewright.findings import Finding, Severity

__all__ = ["PROOF_RULE", "as_findings", "gathered", "of_goods", "that_follow", "told_of"]

PROOF_RULE = "proof: "
"""How the names of all findings begin that a failed proof gives."""

# What glue lines, clamps and a plane take up without a word (common practice).
_ABSORBED = Fraction(1, 2)
_MANY = 2
_SAID = 2
"""Of what goes with one cause, so many places are named."""

_LENGTHS = ("joints", "size", "fronts", "overlap", "pins", "edges", "hands")
# What stops the work beyond that, by however little.
_STOPS = ("drawers", "pockets", "path")


def as_findings(
    proof: Proof, *, unit: Unit = "in", absorbed: Fraction = _ABSORBED
) -> tuple[Finding, ...]:
    """Failures on built values as findings.

    Parameters
    ----------
    unit
        The job's unit.
    absorbed
        Mismatch of surfaces that assembly takes up [mm]; up to that a finding is a note only, and
        several of them are one note.
    """
    told = told_of(proof, unit=unit, absorbed=absorbed)
    taken_up = [(failure, each) for failure, each in told if each.severity is Severity.NOTE]
    if len(taken_up) < _MANY:
        return tuple(each for _, each in told)
    most = max(failure.amount for failure, _ in taken_up)
    grave = (each for _, each in told if each.severity is not Severity.NOTE)
    notes = [each for _, each in taken_up]
    return (*grave, _together(notes, shop_text(most, unit, with_unit=True)))


def gathered(
    told: Sequence[Finding], key: str, title: str, *, is_told: bool
) -> tuple[Finding, ...]:
    """What one wrong size makes fail in many places of a case, as one finding; notes as they are.

    Parameters
    ----------
    told
        Of one case, as `as_findings` gives them.
    key, title
        Of the case.
    is_told
        Whether a gap of the case is out of its band, which a finding of its own tells: then all of
        this goes with it, and that the outside has another size is not said twice.
    """
    grave = [each for each in told if each.severity is not Severity.NOTE]
    notes = [each for each in told if each.severity is Severity.NOTE]
    if is_told and all(each.rule == f"{PROOF_RULE}size" for each in grave):
        return tuple(notes)
    if not is_told and len(grave) <= _SAID:
        return tuple(told)
    sentences = list(dict.fromkeys(each.says.removeprefix("as built, ") for each in grave))
    said, more = sentences[:_SAID], len(sentences) - _SAID
    places = "; ".join(said) + (f"; and {more} more" if more > 0 else "")
    stops = any(each.severity is Severity.STOP for each in grave)
    with_it = ("put right the gap that is out of its band: this goes with it",)
    whole = Finding(
        rule=f"{PROOF_RULE}as built",
        severity=Severity.STOP if stops else Severity.CARE,
        path=key,
        says=f"{title} does not go together {'with that, ' if is_told else ''}as built: {places}",
        source="common practice",
        remedies=with_it if is_told else grave[0].remedies,
    )
    return (whole, *notes)


def told_of(
    proof: Proof, *, unit: Unit = "in", absorbed: Fraction = _ABSORBED
) -> tuple[tuple[Failure, Finding], ...]:
    """`as_findings` with each failure beside what it means, and no two of them made one."""
    close = {f.paths[:2]: f.amount for f in proof.failures if f.check == "overlap"}
    known = [_with_overlap(failure, close) for failure in proof.failures]
    return tuple((failure, _finding(failure, unit, absorbed)) for failure in known)


def _with_overlap(failure: Failure, close: Mapping[tuple[str, ...], Fraction]) -> Failure:
    """What is in the way of another thing, by how far the two would be in one place."""
    if failure.check != "path":
        return failure
    overlap = close.get(failure.paths, close.get(failure.paths[::-1], Fraction(0)))
    return replace(failure, amount=overlap)


def _together(taken_up: Sequence[Finding], most: str) -> Finding:
    """What assembly takes up in one case, as one note."""
    case = taken_up[0].path.partition(".")[0]
    return Finding(
        rule=f"{PROOF_RULE}taken up",
        severity=Severity.NOTE,
        path=case,
        says=f"{case} as built: {len(taken_up)} places are off by {most} at the most; "
        "glue lines and clamps take that up",
        measured=most,
        source="common practice",
        remedies=("clamp it close, look that it is square", "plane flush what stands proud"),
    )


def of_goods(proof: Proof, title: str, unit: Unit) -> tuple[Finding, ...]:
    """Failures that other fasteners would mend, as findings: of like ones the one most off.

    Parameters
    ----------
    title
        Of the case.
    """
    worst: dict[tuple[str, str], Failure] = {}
    for failure in proof.failures:
        if failure.of_goods:
            like = (failure.check, failure.says.partition(" inside ")[0])
            worst[like] = max(worst.get(like, failure), failure, key=lambda each: each.amount)
    return tuple(_stop(each, title, *_mended(each, unit)) for each in worst.values())


def _mended(failure: Failure, unit: Unit) -> tuple[str, ...]:
    """Fasteners how much longer or shorter; or how much less or more of a board before them."""
    is_short = failure.mended_by == "a longer one"
    by = f"over {shop_text(failure.amount, unit, with_unit=True)} " if failure.amount else ""
    ways = (f"fasteners {by}{'longer' if is_short else 'shorter'}",)
    if failure.check == "pockets":
        return (*ways, "their length left out of the job: it then follows from the boards")
    return (*ways, f"a board {by}{'thinner' if is_short else 'thicker'} before them")


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
    if 0 < failure.amount <= absorbed and failure.check in (*_LENGTHS, *_STOPS):
        return Severity.NOTE
    if failure.check in _LENGTHS and failure.amount > 0:
        return Severity.CARE
    return Severity.STOP
