"""A run drawn before all the rest is worked out is drawn as it is with the rest."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.jobs import example, loaded

from casewright.facts import NO_FACTS
from casewright.room.build import build
from casewright.web.drawings import drawing_names, drawn
from casewright.web.redrawing import redrawn


@pytest.mark.parametrize("name", ["kitchen", "gallery_rooms", "gallery_trims"])
def test_alone_as_with_the_rest(name: str) -> None:
    """Round corners, over and under each other; the plan with all there is."""
    job = loaded(example(name))
    room = build(job.spec)
    shown = [each for each in drawing_names(room) if each != "overview"]
    assert shown
    for each in shown:
        assert redrawn(job, NO_FACTS, each) == drawn(room, each), each


@pytest.mark.parametrize("name", ["run.", "run.none", "wall.none", "none", ""])
def test_what_is_not_there_is_not_drawn(name: str) -> None:
    assert redrawn(loaded(example("kitchen")), NO_FACTS, name) is None


@pytest.mark.parametrize("name", ["gallery", "gallery_rooms", "gallery_islands"])
def test_cases_taken_over_are_as_built_anew(name: str) -> None:
    """After one case became lower: every number, every drawing, everything found is the same."""
    spec = loaded(example(name)).spec
    before = build(spec)
    at = next(n for n, case in enumerate(spec.cases) if case.kind == "base" and case.key in
              before.made)  # fmt: skip
    high = spec.cases[at].height
    lower = replace(spec.cases[at], height=replace(high, value=high.value - 25))
    changed = replace(spec, cases=(*spec.cases[:at], lower, *spec.cases[at + 1 :]))
    anew, taken = build(changed), build(changed, before=before)
    assert any(taken.made[key] is made for key, made in before.made.items())
    assert {path: dim.value for path, dim in taken.chain.nodes.items()}.items() <= {
        path: dim.value for path, dim in anew.chain.nodes.items()
    }.items()
    assert [each.says for each in taken.findings] == [each.says for each in anew.findings]
    for each in drawing_names(anew):
        assert drawn(taken, each) == drawn(anew, each), each
