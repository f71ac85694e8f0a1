"""What a failed proof means to the person, where the sizes are those of real things."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType

from casewright.casework.proof.failure import Failure, Proof
from casewright.dims import (
    Dim,
    Measure,
    Origin,
    Told,
    Unit,
    joined,
    parts_of,
    plain_text,
    shop_text,
    tell,
)
from casewright.findings import Finding, Reckoning, Severity

__all__ = ["PROOF", "PROOF_RULE", "as_findings", "gathered", "of_goods", "that_follow", "told_of"]

PROOF = "proof"
"""Under which the numbers of a failed proof stand on the chain."""

_NOBODY: Mapping[str, Dim] = MappingProxyType({})
_SIZES = ("length", "width", "thickness", "depth", "height")
_OFF = Origin("solved", "how far they are off where they are put together: the proof of assembly")

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
    proof: Proof,
    *,
    unit: Unit = "in",
    absorbed: Fraction = _ABSORBED,
    nodes: Mapping[str, Dim] = _NOBODY,
) -> tuple[Finding, ...]:
    """Failures on built values as findings.

    Parameters
    ----------
    unit
        The job's unit.
    absorbed
        Mismatch of surfaces that assembly takes up [mm]; up to that a finding is a note only, and
        several of them are one note.
    nodes
        The numbers of the job; none: nobody asks for theirs.
    """
    told = told_of(proof, unit=unit, absorbed=absorbed, nodes=nodes)
    taken_up = [(failure, each) for failure, each in told if each.severity is Severity.NOTE]
    if len(taken_up) < _MANY:
        return tuple(each for _, each in told)
    sums = _sums([failure for failure, _ in told], unit, nodes)
    most, off = max(
        ((failure, each) for (failure, found), each in zip(told, sums, strict=True)
         if found.severity is Severity.NOTE),
        key=lambda pair: pair[0].amount,
    )  # fmt: skip
    grave = (each for _, each in told if each.severity is not Severity.NOTE)
    notes = [each for _, each in taken_up]
    return (
        *grave,
        _together(notes, off, off.said(shop_text(most.amount, unit, with_unit=True))),
    )


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
    sentences = list(dict.fromkeys(_place_of(each.says) for each in grave))
    said, more = sentences[:_SAID], len(sentences) - _SAID
    places = joined("; ", said) + (f"; and {more} more" if more > 0 else "")
    stops = any(each.severity is Severity.STOP for each in grave)
    with_it = ("put right the gap that is out of its band: this goes with it",)
    whole = Finding(
        rule=f"{PROOF_RULE}as built",
        severity=Severity.STOP if stops else Severity.CARE,
        path=key,
        says=f"{title} does not go together {'with that, ' if is_told else ''}as built: " + places,
        source="common practice",
        remedies=with_it if is_told else grave[0].remedies,
        numbers=tuple(number for each in grave for number in each.numbers),
    )
    return (whole, *notes)


def _place_of(says: str) -> Told:
    """A sentence without its beginning."""
    first, *rest = parts_of(says)
    begins = first.removeprefix("as built, ") if isinstance(first, str) else first
    return joined("", (begins, *rest))


class _Off:
    """By how much something is off, as a number that can be asked about, where anybody asks.

    Parameters
    ----------
    of
        What no other failure of the check is about.
    nodes
        The numbers of the job; none: nobody asks.
    """

    def __init__(self, failure: Failure, of: str, unit: Unit, nodes: Mapping[str, Dim]) -> None:
        self._own: Reckoning | None = None
        if not nodes or not failure.amount:
            return
        own = Reckoning(failure.check, of, unit, nodes, PROOF)
        sizes = (f"{path}.{size}" for path in failure.paths for size in _SIZES)
        rests_on = (nodes[path] for path in sizes if path in nodes)
        self._dim = own.worked("off", failure.amount, _OFF, *rests_on)
        self._own = own

    def said(self, text: str) -> str | Measure:
        """The number, in these words."""
        return text if self._own is None else self._own.said(self._dim, text, "off")

    @property
    def numbers(self) -> tuple[Dim, ...]:
        """What is to be entered where it is asked for."""
        return () if self._own is None else self._own.numbers


def _sums(failures: Sequence[Failure], unit: Unit, nodes: Mapping[str, Dim]) -> list[_Off]:
    """By how much each is off."""
    found: list[_Off] = []
    alike: Counter[tuple[str, str]] = Counter()
    for failure in failures:
        of = ".".join(failure.paths)
        alike[failure.check, of] += 1
        number = alike[failure.check, of]
        found.append(_Off(failure, of if number == 1 else f"{of}.{number}", unit, nodes))
    return found


def told_of(
    proof: Proof,
    *,
    unit: Unit = "in",
    absorbed: Fraction = _ABSORBED,
    nodes: Mapping[str, Dim] = _NOBODY,
) -> tuple[tuple[Failure, Finding], ...]:
    """`as_findings` with each failure beside what it means, and no two of them made one."""
    close = {f.paths[:2]: f.amount for f in proof.failures if f.check == "overlap"}
    known = [_with_overlap(failure, close) for failure in proof.failures]
    return tuple(
        (failure, _finding(failure, absorbed, unit, off))
        for failure, off in zip(known, _sums(known, unit, nodes), strict=True)
    )


def _with_overlap(failure: Failure, close: Mapping[tuple[str, ...], Fraction]) -> Failure:
    """What is in the way of another thing, by how far the two would be in one place."""
    if failure.check != "path":
        return failure
    overlap = close.get(failure.paths, close.get(failure.paths[::-1], Fraction(0)))
    return replace(failure, amount=overlap)


def _together(taken_up: Sequence[Finding], sums: _Off, most: str | Measure) -> Finding:
    """What assembly takes up in one case, as one note."""
    case = taken_up[0].path.partition(".")[0]
    return Finding(
        rule=f"{PROOF_RULE}taken up",
        severity=Severity.NOTE,
        path=case,
        says=tell(
            "{} as built: {} places are off by {} at the most; glue lines and clamps take that up",
            case,
            len(taken_up),
            most,
        ),
        measured=plain_text(most),
        source="common practice",
        remedies=("clamp it close, look that it is square", "plane flush what stands proud"),
        numbers=sums.numbers,
    )


def of_goods(
    proof: Proof, title: str, unit: Unit, nodes: Mapping[str, Dim] = _NOBODY
) -> tuple[Finding, ...]:
    """Failures that other fasteners would mend, as findings: of like ones the one most off.

    Parameters
    ----------
    title
        Of the case.
    nodes
        The numbers of the job; none: nobody asks for theirs.
    """
    worst: dict[tuple[str, str], Failure] = {}
    for failure in proof.failures:
        if failure.of_goods:
            like = (failure.check, failure.says.partition(" inside ")[0])
            worst[like] = max(worst.get(like, failure), failure, key=lambda each: each.amount)
    failures = list(worst.values())
    return tuple(
        replace(_stop(each, title, *_mended(each, unit, off)), numbers=off.numbers)
        for each, off in zip(failures, _sums(failures, unit, nodes), strict=True)
    )


def _mended(failure: Failure, unit: Unit, sums: _Off) -> tuple[str, ...]:
    """Fasteners how much longer or shorter; or how much less or more of a board before them."""
    is_short = failure.mended_by == "a longer one"
    by: str = ""
    if failure.amount:
        by = tell("over {} ", sums.said(shop_text(failure.amount, unit, with_unit=True)))
    ways = (tell("fasteners {}{}", by, "longer" if is_short else "shorter"),)
    if failure.check == "pockets":
        return (*ways, "their length left out of the job: it then follows from the boards")
    other = "thinner" if is_short else "thicker"
    return (*ways, tell("a board {}{} before them", by, other))


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


def _finding(failure: Failure, absorbed: Fraction, unit: Unit, sums: _Off) -> Finding:
    measured = shop_text(failure.amount, unit) if failure.amount else ""
    by = tell(", by {}", sums.said(measured)) if measured else ""
    return Finding(
        rule=f"{PROOF_RULE}{failure.check}",
        severity=_severity(failure, absorbed),
        path=failure.paths[0],
        says=f"as built, {failure.says}" + by,
        measured=measured,
        limit=shop_text(absorbed, unit) if measured and failure.check in _LENGTHS else "",
        source="common practice",
        remedies=("measure again the sizes that were read", "recut what is not yet assembled"),
        numbers=sums.numbers,
    )


def _severity(failure: Failure, absorbed: Fraction) -> Severity:
    if 0 < failure.amount <= absorbed and failure.check in (*_LENGTHS, *_STOPS):
        return Severity.NOTE
    if failure.check in _LENGTHS and failure.amount > 0:
        return Severity.CARE
    return Severity.STOP
