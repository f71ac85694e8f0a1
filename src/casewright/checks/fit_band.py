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
from casewright.checks.words import gap
from casewright.findings import Severity
from casewright.room.fit_words import fit_problem
from casewright.room.model import Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    for fit in room.chain.fits.values():
        if fit.holds:
            continue
        wide = fit.gap.value > fit.high
        found, bound = (gap(room, fit, each) for each in (
            fit.gap.value, fit.high if wide else fit.low
        ))  # fmt: skip
        remedies: tuple[str, ...] = (
            "cut what is still to be cut to the sizes now shown",
            "shim or pack" if wide else "plane or recut the piece that is too big",
        )
        if fit.path.endswith("_error"):
            remedies = ("what can be done, the least work first: casewright resolve JOB",)
        says = fit_problem(fit, room.spec.unit)
        yield Breach(fit.path, says, measured=found, limit=bound, remedies=remedies)


RULE = Rule("fit band", Severity.STOP, __doc__ or "", "common practice", _examine)
