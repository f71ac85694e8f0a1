"""Laws of fronts: whatever the sizes, faces add up, doors hang on their plates, all fits."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from hypothesis import event, given, settings
from hypothesis import strategies as st
from tests.builders import (
    APPLIED,
    GLASS,
    MITRED,
    PANEL,
    SLAB,
    Unit,
    case_spec,
    hardware,
    house,
    length,
    one_case,
    plain_style,
    stock,
)
from tests.builders import given as chosen

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.specs import FrontSpec, OverlayKind, front_spec
from casewright.casework.verification import verify
from casewright.dims import Origin
from casewright.facts import Fact
from casewright.findings import Severity

_OURS = ("door", "face", "end_", "plate_")


@st.composite
def _cases(draw: st.DrawFn) -> tuple[Unit, dict[str, Any]]:
    """A case with doors, in any size a person might write, sound or not."""
    unit: Unit = draw(st.sampled_from(("in", "mm")))
    step = Fraction(1, 32) if unit == "in" else Fraction(1, 2)
    inch = unit == "in"

    def size(low: int, high: int) -> Fraction:
        steps_an_inch = 32 if inch else 50
        return draw(st.integers(low * steps_an_inch, high * steps_an_inch)) * step

    stacked = draw(st.booleans())
    height = size(8, 80)
    fronts = st.sampled_from((SLAB, APPLIED, GLASS, PANEL, MITRED))
    front = replace(
        draw(fronts), hinge=draw(st.sampled_from(("left", "right"))),
        leaves=draw(st.sampled_from((None, 1, 2))),
        overlay=draw(st.sampled_from(("full", "full", "partial", "inset"))),
    )  # fmt: skip
    changes: dict[str, Any] = {
        "width": str(size(5, 48)),
        "height": str(height),
        "front": front,
        "shelves": 0,
        "edge": draw(st.sampled_from(("band", "painted"))),
        "finished": draw(st.sampled_from(((), ("left",), ("left", "right")))),
        "overrides": {
            "reveal": chosen(str(draw(st.integers(1, 3)) * step), unit),
            "gap": chosen(str(draw(st.integers(2, 6)) * step), unit),
        },
    }
    if stacked:
        changes["divider"] = str(height * draw(st.integers(30, 80)) / 100)
        changes["upper_front"] = replace(draw(fronts), leaves=front.leaves)
    changes["goods_ply"] = Fraction(draw(st.integers(165, 192)), 10)
    return unit, changes


def _built(unit: Unit, changes: dict[str, Any]) -> Case:
    given_changes = dict(changes)
    ply = given_changes.pop("goods_ply")
    text = str(ply / length(1, unit))
    return one_case(unit, goods=stock(unit, ply=text), **given_changes)


def _clear(case: Case) -> Fraction:
    """Between the sides [mm]."""
    sides = sum((p.finished.thickness.value for p in case.parts if p.role == "side"), Fraction(0))
    return case.width.value - sides


@settings(max_examples=120, deadline=None)
@given(drawn=_cases())
def test_fronts_fit_whatever_the_sizes(drawn: tuple[Unit, dict[str, Any]]) -> None:
    """Each opening is filled exactly by its leaves and gaps, or a stop says why it has no door.

    Proof and replay find nothing wrong with any door, hinge or dressed end.
    """
    unit, changes = drawn
    case = _built(unit, changes)
    stops = [f for f in case.findings if f.severity is Severity.STOP]
    wanted = 1 + ("upper_front" in changes)
    event(f"{len(case.faces)} of {wanted} faces")
    assert stops or len(case.faces) == wanted
    leaves = {front.path: front for front in case.doors}
    for face in case.faces:
        doors = [leaves[path] for path in face.leaves]
        across = sum((d.width.value for d in doors), face.left.value + face.right.value)
        across += sum((gap.value for gap in face.gaps), Fraction(0))
        assert across == face.x1.value - face.x0.value
        asked = front_spec(case.spec, face.opening)
        inset = asked is not None and asked.overlay == "inset"
        assert across == (_clear(case) if inset else case.width.value)
        for door in doors:
            up = face.bottom.value + door.height.value + face.top.value
            assert up == face.y1.value - face.y0.value
    found = verify(case, hardware=hardware(unit)).failures
    mine = [f for f in found if any(word in path for path in f.paths for word in _OURS)]
    assert not mine, mine


@settings(max_examples=40, deadline=None)
@given(drawn=_cases(), unit_step=st.sampled_from(("1/16", "1/32", "1/64")))
def test_fits_hold_as_designed(drawn: tuple[Unit, dict[str, Any]], unit_step: str) -> None:
    """On designed sizes every gap beside a front is inside its band, on any cutting grid."""
    unit, changes = drawn
    step = unit_step if unit == "in" else "1/2"
    made = house(unit, style=plain_style(unit, cut_step=step))
    sizes = {key: value for key, value in changes.items() if key != "goods_ply"}
    case = build_case(made, case_spec(unit, **sizes))
    stopped = {f.path for f in case.findings if f.severity is Severity.STOP}
    for path, fit in made.chain.fits.items():
        if "face" in path or (".door" in path and path.rpartition(".")[0] not in stopped):
            assert fit.holds, (path, fit.gap.value, fit.low, fit.high)


@settings(max_examples=30, deadline=None)
@given(
    front=st.sampled_from((SLAB, APPLIED, GLASS, PANEL, MITRED)),
    order=st.integers(0, 100),
    overlay=st.sampled_from(("full", "partial", "inset")),
    door_sheet=st.integers(145, 165),
    box_sheet=st.integers(165, 190),
)
def test_doors_fit_the_box_as_cut(
    front: FrontSpec, order: int, overlay: OverlayKind, door_sheet: int, box_sheet: int
) -> None:
    """Whatever of the box has been cut and bored stays; doors made after it still fit."""
    front = replace(front, overlay=overlay)
    plan = house("mm")
    build_case(plan, case_spec("mm", front=front, shelves=0))
    made = [
        path
        for path, node in plan.chain.nodes.items()
        if node.origin is not None and node.origin.kind == "made" and not node.flows
        if "door" not in path
    ]
    frozen = made[: len(made) * order // 100]
    origin = Origin("made", "cut")
    facts = {path: Fact(origin, cut=plan.chain.nodes[path].value) for path in frozen}
    for key, tenths in (("mdf", door_sheet), ("ply18", box_sheet)):
        reading = Origin("measured", "calliper")
        facts[f"stock.{key}.thickness"] = Fact(reading, built=Fraction(tenths, 10))
    later = house("mm", facts=facts)
    case = build_case(later, case_spec("mm", front=front, shelves=0))
    assert all(later.chain.nodes[path].value == facts[path].cut for path in frozen)
    fits = [fit for path, fit in later.chain.fits.items() if "face" in path]
    assert fits
    assert all(fit.holds for fit in fits)
    for door in case.doors:
        for hinge in door.hinges:
            assert door.y.value + hinge.on_door.value == hinge.height.value
