"""Wide drawers with thin bottoms.

A bottom of what is sold as 1/4 in or 6 mm lies in its grooves and carries what is in the drawer
on its own stiffness. In a drawer over two feet wide it sags under pans or tins until it rubs on
what is below, or slips out of a groove; a thicker one, in wider grooves, does not.

Passes
------
A drawer 22 in wide inside with a bottom of 7/32; one 34 in wide with a bottom of 1/2.

Fails
-----
A drawer 34 in wide inside with a bottom of 7/32.

Sources
-------
`common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "drawer bottom"
_WIDEST = Limit("drawer_bottom.widest", "24", "600", "widest that so thin a bottom spans")

_THIN = Fraction(8)
"""What is sold as 1/4 in or 6 mm stays under this [mm]."""


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        yield from _judge(room, case)


def _judge(room: Room, case: Case) -> Iterator[Breach]:
    """One breach for the drawers of a case, which are all as wide."""
    widest = _WIDEST.of(room.spec.unit)
    bottoms = [part for part in case.parts if part.role == "drawer bottom"]
    thin = [part for part in bottoms if part.finished.thickness.value < _THIN]
    wide = [drawer for drawer in case.drawers if drawer.inside_width.value > widest]
    if not thin or not wide:
        return
    own = reckoning(room, _NAME, case.key)
    inside = max((drawer.inside_width for drawer in wide), key=lambda dim: dim.value)
    spans, most = own.length(inside), own.length(own.limit(_WIDEST))
    span = f"the bottom of {wide[0].title} of {case.spec.title} spans"
    if len(wide) > 1:
        span = f"the bottoms of the {len(wide)} drawers of {case.spec.title} span"
    yield Breach(
        thin[0].path,
        tell(
            "{} {} with {} of sheet; over {} so thin a bottom sags",
            span, spans, own.thickness(thin[0].finished.thickness), most,
        ),
        measured=spans.text,
        limit=most.text,
        remedies=(
            _thicker(case),
            tell("a case {} narrower", own.length(inside - own.limit(_WIDEST), "narrower")),
        ),
        own=own,
    )  # fmt: skip


def _thicker(case: Case) -> str:
    """A thicker bottom; over concealed slides their hooks leave no wood for one."""
    hung = case.spec.drawer is not None and case.spec.drawer.slides == "undermount"
    where = f'bottom = "drawer_plywood" in [drawers], or in drawer of [case.{case.key}]'
    return f'slides = "side-mount", and {where}' if hung else f"a thicker bottom: {where}"


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "common practice", _examine)
