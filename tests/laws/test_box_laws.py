"""Laws of boxes: whatever the sizes and choices, what is built proves and goes together."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from hypothesis import event, example, given, settings
from hypothesis import strategies as st
from tests.builders import APPLIED, GLASS, SLAB, Unit, hardware, one_case, stock

from casewright.casework.verification import verify
from casewright.findings import Severity

SHEETS: dict[Unit, tuple[str, ...]] = {
    "in": ("23/32", "45/64", "3/4", "5/8"),
    "mm": ("17.8", "18.3", "16", "19"),
}
BACKS: dict[Unit, tuple[str, ...]] = {"in": ("7/32", "1/4", "3/16"), "mm": ("6.2", "5", "4")}


class _Sizes:
    """Lengths on the grid of a unit, drawn between limits in inches."""

    def __init__(self, draw: st.DrawFn, unit: Unit) -> None:
        self.draw = draw
        self.step, self.per_inch = (Fraction(1, 32), 32) if unit == "in" else (Fraction(1, 2), 50)

    def between(self, low: int, high: int) -> str:
        steps = self.draw(st.integers(low * self.per_inch, high * self.per_inch))
        return str(steps * self.step)


def _wall(draw: st.DrawFn, sizes: _Sizes) -> dict[str, Any]:
    changes: dict[str, Any] = {
        "kind": "wall",
        "height": sizes.between(30, 60),
        "depth": sizes.between(10, 24),
        "pockets": "plugged",
        "joint": draw(st.sampled_from(("pocket screws", "dado", "rabbet"))),
        "divider": sizes.between(13, 16) if draw(st.booleans()) else None,
        "skirt": sizes.between(1, 3) if draw(st.booleans()) else None,
        "crown": sizes.between(1, 3) if draw(st.booleans()) else None,
        "shelves": 1,
    }
    if changes["divider"] is not None:
        changes["shelves"] = 0
        changes["upper_front"] = draw(st.sampled_from((None, SLAB, APPLIED, GLASS)))
    return changes


def _base(draw: st.DrawFn, sizes: _Sizes) -> dict[str, Any]:
    return {
        "kind": "base",
        "height": sizes.between(30, 40),
        "depth": sizes.between(18, 26),
        "toe": draw(st.sampled_from(("notch", "plinth", "none"))),
        "joint": draw(st.sampled_from(("pocket screws", "dado", "rabbet"))),
        "shelves": draw(st.integers(0, 2)),
    }


def _bookcase(draw: st.DrawFn, sizes: _Sizes) -> dict[str, Any]:
    return {
        "kind": "bookcase",
        "joint": "dado",
        "height": sizes.between(36, 96),
        "depth": sizes.between(9, 16),
        "nosing": sizes.between(1, 2) if draw(st.booleans()) else None,
        "shelves": draw(st.integers(0, 4)),
    }


@st.composite
def _cases(draw: st.DrawFn) -> tuple[Unit, str, str, dict[str, Any]]:
    """A case of any kind in a size a person would build, with its sheets' thickness."""
    unit: Unit = draw(st.sampled_from(("in", "mm")))
    sizes = _Sizes(draw, unit)
    kind = draw(st.sampled_from((_wall, _base, _bookcase)))
    changes = kind(draw, sizes)
    # A thick back's pocket screws would land in the dadoes of a side.
    plain = changes["kind"] != "bookcase" and changes["joint"] == "pocket screws"
    backs = ("rabbeted", "grooved", "applied", *(("inset",) if plain else ()))
    changes["width"] = sizes.between(14, 48)
    changes["back"] = draw(st.sampled_from(backs))
    changes["edge"] = draw(st.sampled_from(("band", "lip", "painted")))
    if changes["kind"] != "bookcase":
        changes["front"] = draw(st.sampled_from((None, SLAB, APPLIED, GLASS)))
        changes["finished"] = draw(st.sampled_from(((), ("left",), ("left", "right"))))
    sheet = draw(st.sampled_from(SHEETS[unit]))
    return unit, sheet, draw(st.sampled_from(BACKS[unit])), changes


_OPEN_UNDER_CROWN: dict[str, Any] = {
    "kind": "wall", "height": "30", "depth": "10", "width": "20", "pockets": "plugged",
    "joint": "pocket screws", "back": "rabbeted", "edge": "band", "shelves": 0, "divider": "13",
    "crown": "2", "front": SLAB, "upper_front": None,
}  # fmt: skip


@settings(max_examples=150, deadline=None)
@given(_cases())
@example(("in", "23/32", "7/32", _OPEN_UNDER_CROWN))
def test_what_is_built_proves_and_goes_together(
    drawn: tuple[Unit, str, str, dict[str, Any]],
) -> None:
    """A case that building it did not warn off is what was meant, and can be assembled."""
    unit, ply, thin, changes = drawn
    case = one_case(unit, goods=stock(unit, ply=ply, thin=thin), **changes)
    if any(finding.severity is Severity.STOP for finding in case.findings):
        event("warned off")
        return
    event(f"{changes['kind']}, {changes['back']} back")
    failures = verify(case, hardware=hardware(unit)).failures
    assert not failures, [(f.check, f.paths, f.says, float(f.amount)) for f in failures]
