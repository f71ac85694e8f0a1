"""What a case says of its face frame that cannot go together."""

from __future__ import annotations

from casewright.job.content import Content
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.rows import written_rows
from casewright.job.tables import CaseTable

__all__ = ["check_face", "has_face_frame"]

_OWN = ("face_joint", "face_fixing", "mullion", "scribe")
_FRAMELESS = 'write face = "frameless" for this case'


def has_face_frame(case: CaseTable, content: Content) -> bool:
    """Whether a case has a face frame, of its own or as all have."""
    return (case.face or content.boxes.face) == "face frame"


def check_face(key: str, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """Tell what a case with a face frame cannot have, and words that mean nothing without one."""
    base: KeyPath = ("case", key)
    if (case.face or content.boxes.face) == "strips":
        _strips(key, case, content, reporter)
    if not has_face_frame(case, content):
        for name in _OWN:
            if getattr(case, name):
                what = f"this case has no face frame, so {name} means nothing"
                reporter.tell((*base, name), what, 'take it out, or write face = "face frame"')
        return
    taken = {
        "skirt": "its bottom rail reaches below the bottom: take skirt out",
        "crown": _FRAMELESS,
        "rails": "a frame has a rail under every row: take rails out",
    }
    for name, want in taken.items():
        if getattr(case, name):
            reporter.tell((*base, name), f"a case with a face frame has no {name}", want)
    _rows(key, case, reporter)
    _mullion(base, case, content, reporter)
    _scribe(base, case, reporter)
    if case.finished and (case.end or content.boxes.end) == "flush":
        what = "the stile of a face frame covers the edge of whatever is on an end: none is flush"
        where: KeyPath = (*base, "end") if case.end else ("boxes", "end")
        reporter.tell(where, what, f'write end = "skin" or "plain" for {key}')


def _strips(key: str, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """Strips cover sides, bottom and top, and boards between; what else ends at the front not."""
    base: KeyPath = ("case", key)
    path: KeyPath = (*base, "face") if case.face is not None else ("boxes", "face")
    if case.sink:
        what = f"{key}: a sink base has no face strips"
        reporter.tell(path, what, _FRAMELESS)
        return
    for name in ("skirt", "crown", "nosing"):
        if getattr(case, name):
            what = f"a case with face strips has no {name}: its edge would stay bare"
            reporter.tell((*base, name), what, f"take it out, or {_FRAMELESS}")
    for kind, _, place in written_rows(key, case):
        if kind == "false front":
            what = "a row that is false front has a rail whose edge face strips leave bare"
            reporter.tell(place, what, _FRAMELESS)


def _rows(key: str, case: CaseTable, reporter: Reporter) -> None:
    if case.divider is not None and written_rows(key, case):
        what = "a divider and rows both part the face of a frame"
        reporter.tell(("case", key, "divider"), what, "take one of the two out")


def _mullion(base: KeyPath, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """A mullion stands between the two doors of a pair."""
    if not case.mullion:
        return
    if (case.face_joint or content.boxes.face_joint) == "tenons":
        what = "a mullion is screwed between the rails, and these have tenons"
        reporter.tell(
            (*base, "mullion"), what, 'take it out, or write face_joint = "pocket screws"'
        )
    front = case.front
    if front is not None and front.leaves == 1:
        what = "a mullion stands between two doors, and leaves says one"
        reporter.tell((*base, "mullion"), what, "take it out, or write leaves = 2")
    rows = [kind for kind, _, _ in written_rows(base[-1] if isinstance(base[-1], str) else "",
                                                case)]  # fmt: skip
    closed = front is None or front.construction != "none"
    if not closed or (rows and "doors" not in rows):
        what = "a mullion stands between two doors, and this case has none"
        reporter.tell((*base, "mullion"), what, "take it out")
    if case.roll_outs and rows and (rows[-1] != "doors" or rows.count("doors") > 1):
        what = "roll-outs behind a mullion run beside a partition, which stands on the bottom"
        reporter.tell((*base, "roll_outs"), what, "make doors the lowest row, and the only ones")


def _scribe(base: KeyPath, case: CaseTable, reporter: Reporter) -> None:
    """An end that shows is not at a wall."""
    both = sorted(set(case.scribe) & set(case.finished))
    if both:
        what = f"the {both[0]} end shows, and its stile cannot be scribed to a wall as well"
        reporter.tell((*base, "scribe"), what, "take it out of scribe or of finished")
