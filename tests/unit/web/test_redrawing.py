"""A run drawn before all the rest is worked out is drawn as it is with the rest."""

from __future__ import annotations

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
