"""Lengths in the words of cutting lead to numbers of the chain."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.builders import APPLIED, case_spec, job, length

from casewright.breakdown import Breakdown, break_down
from casewright.cutting.engine import Stop
from casewright.dims import Measure, Origin, parts_of
from casewright.facts import Fact
from casewright.findings import entered
from casewright.room.build import build
from casewright.room.specs import JobSpec


def _cut(spec: JobSpec) -> Breakdown:
    """Broken down with every thickness read."""
    facts = {
        f"stock.{key}.thickness": Fact(Origin("measured", "calliper"), built=goods.thickness.value)
        for key, goods in spec.stock.items()
    }
    return break_down(build(spec, facts), stop=Stop(2000))


@pytest.fixture(scope="module")
def framed() -> Breakdown:
    """A case with rabbets and with strips on its doors."""
    return _cut(job(case_spec(front=APPLIED)))


def _told(words: str) -> list[Measure]:
    return [part for part in parts_of(words) if isinstance(part, Measure)]


def test_a_test_piece_names_the_cut_that_is_tried_on_it(framed: Breakdown) -> None:
    """Width and depth are those of the feature, not copies of them."""
    titles = [piece.title for plan in framed.plans
              for piece in (*plan.pieces.values(), *plan.from_offcuts)]  # fmt: skip
    told = [_told(title) for title in titles if "rabbet" in title]
    assert told
    for wide, deep in told:
        place = wide.path.rpartition(".")[0]
        assert deep.path == f"{place}.depth"
        assert framed.chain.nodes[wide.path].value == wide.value


def test_how_strips_are_milled_leads_to_their_width_and_their_stock(framed: Breakdown) -> None:
    """What is ripped is the width of a strip; what is planed, the thickness of its stock."""
    [plan] = [plan for plan in framed.plans if plan.milling is not None]
    assert plan.milling is not None
    rip, plane = _told(plan.milling.words)
    assert plane.path == "stock.strip.thickness"
    assert framed.chain.nodes[rip.path].value == rip.value == plan.milling.width
    [spare] = {piece.title for piece in plan.pieces.values() if piece.kind == "spare"}
    assert _told(spare)[0].path == rip.path


def test_what_is_larger_than_its_sheet_tells_its_own_sizes() -> None:
    """Both sizes stand on the chain or are worked out in the finding."""
    found = _cut(job(case_spec(width="120")))
    nodes = dict(found.chain.nodes)
    for finding in found.findings:
        entered(finding.numbers, nodes)
        told = _told(finding.says)
        assert len(told) == 2
        assert [nodes[each.path].value for each in told] == [each.value for each in told]
        assert max(each.value for each in told) > length("96")


def test_what_a_sheet_leaves_to_spare_is_solved_by_its_plan() -> None:
    """The question names the tightest side; the number says that the plan decided it."""
    case = case_spec(height="95 31/32", width="24", shelves=0, back="inset")
    found = _cut(job(case))
    [question] = [each for each in found.questions if each.path == "stock.ply18.size"]
    [told] = _told(question.because)
    dim = found.chain.nodes[told.path]
    spares = [fit.spare for plan in found.plans for fit in plan.just_fit]
    assert dim.value == told.value == min(spares) > Fraction(0)
    assert dim.origin is not None
    assert dim.origin.kind == "solved"
