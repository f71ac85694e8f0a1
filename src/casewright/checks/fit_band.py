"""Gaps between real things that are outside the band they must keep.

Every fit is declared with the least and the greatest gap that works. By design each lies
inside; once something has been cut or measured, it may not.

Passes
------
A back 1/16 narrower than its rabbets are apart.

Fails
-----
A back recorded as cut 1/8 wider than that.

Sources
-------
`common practice`: bands are declared where the fit is made.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.findings import Severity
from casewright.room.fit_words import FitNumbers, fit_problem
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "fit band"


def _examine(room: Room) -> Iterator[Breach]:
    for fit in room.chain.fits.values():
        if fit.holds:
            continue
        wide = fit.gap.value > fit.high
        own = reckoning(room, _NAME, fit.path)
        numbers = FitNumbers(fit, own)
        found, bound = (numbers.said(each) for each in (
            numbers.gap, numbers.high if wide else numbers.low
        ))  # fmt: skip
        remedies: tuple[str, ...] = (
            "cut what is still to be cut to the sizes now shown",
            "shim or pack" if wide else "plane or recut the piece that is too big",
        )
        if fit.path.endswith("_error"):
            remedies = ("what can be done, the least work first: casewright resolve JOB",)
        says = fit_problem(fit, room.spec.unit, numbers)
        yield Breach(
            fit.path, says, measured=found.text, limit=bound.text, remedies=remedies, own=own
        )


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "common practice", _examine)
