"""Studs that were probably not looked for yet: a stretch of wall too long to be without one."""

from __future__ import annotations

from tests.unit.survey.rooms import read, surveyed, thing, widths

from casewright.survey.form import missing, survey_form
from casewright.survey.specs import Stud, WallSpec


def _told(*at: str) -> list[str]:
    """What is asked of studs on a wall of 120 in with a window from 50 to 90."""
    studs = tuple(Stud(read(each), probed=True) for each in at)
    spec = WallSpec("w", "W", widths("120"), studs=studs, things=(thing(left="50", width="40"),))
    return [
        each for each in missing(survey_form(surveyed(spec), "in"), "in") if "studs from" in each
    ]


def test_a_window_ends_the_stretch_and_its_frame_is_none() -> None:
    """16 or 24 in apart, as walls are framed (common practice): nothing is asked."""
    assert _told("14", "30", "46", "95", "111") == []
    assert _told("24", "48", "96") == []


def test_a_long_stretch_is_asked_for() -> None:
    assert _told("14", "95", "111") == [
        'its studs from 14" to 50": they seldom stand so far apart'
    ]
    assert _told("14", "30", "46") == [
        'its studs from 90" to 120": they seldom stand so far apart'
    ]
