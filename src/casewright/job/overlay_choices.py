"""Cases whose doors cannot lie as they were asked to: inside the box, or over a part of it."""

from __future__ import annotations

from casewright.job.content import Content
from casewright.job.face_choices import has_face_frame
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.requests import front_table
from casewright.job.rows import written_rows
from casewright.job.tables import CaseTable

__all__ = ["check_overlay"]

_FULL = 'write front = { overlay = "full" } for this case'


def check_overlay(key: str, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """Tell what stands in the way of doors that do not cover the whole face."""
    framed, doors = has_face_frame(case, content), content.doors
    for name, upper in (("front", False), ("upper_front", True)):
        table = front_table(case, upper=upper)
        if table is None:
            continue
        overlay = table.overlay or doors.overlay or "full"
        if overlay == "full":
            continue
        own = getattr(case, name) is not None and table.overlay is not None
        path: KeyPath = ("case", key, name, "overlay") if own else ("doors", "overlay")
        if framed:
            continue
        if overlay == "inset":
            _inset(key, case, path, reporter)
            if not upper:
                _inset_rows(key, case, path, reporter)


def _inset_rows(key: str, case: CaseTable, path: KeyPath, reporter: Reporter) -> None:
    """Inset fronts close against a board above and below."""
    rows = written_rows(key, case)
    if rows and case.rails is False:
        what = "inset fronts close against rails: without one there is a hole between two rows"
        reporter.tell(("case", key, "rails"), what, "take it out, or write rails = true")
    if case.lid == "hinged":
        what = f"{key}: the inner front under its lid lies where an inset front would"
        reporter.tell(path, what, f'{_FULL}, or face = "face frame"')


def _inset(key: str, case: CaseTable, path: KeyPath, reporter: Reporter) -> None:
    """An inset door takes the room right behind the front edges of the box."""
    if case.kind == "bookcase" or case.fixed_shelves:
        what = f"{key}: its fixed shelves end where inset doors would lie"
        reporter.tell(path, what, f"{_FULL}, or take shelves on pins")
    if case.crown is not None:
        what = f"{key}: its crown would lap over inset doors"
        reporter.tell(path, what, f"{_FULL}, or take the crown out")
