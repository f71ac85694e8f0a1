"""What a case says of the appliances in its rows that cannot go together."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from casewright.job.content import Content
from casewright.job.face_choices import has_face_frame
from casewright.job.hoods import check_hood
from casewright.job.panels import check_panels
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.tables import CaseTable

__all__ = ["appliance_rows", "check_appliance_rows"]


def appliance_rows(key: str, case: CaseTable) -> Iterator[tuple[str, KeyPath]]:
    """Keys of the appliances in a case's rows, each with its place in the file."""
    if case.appliance is not None:
        yield case.appliance, ("case", key, "appliance")
    for number, row in enumerate(case.rows or ()):
        if row.kind == "appliance":
            yield row.appliance, ("case", key, "rows", number)


def check_appliance_rows(content: Content, reporter: Reporter) -> None:
    """Tell appliances that are not known, stand twice, or stand where they cannot."""
    in_runs = set(chain.from_iterable(run.cases for run in content.runs.values()))
    seen: set[str] = set()
    for key, case in content.cases.items():
        rows = tuple(appliance_rows(key, case))
        for appliance, path in rows:
            if {("appliance", appliance), ("appliance",)} & content.lost:
                continue
            if appliance not in content.appliances:
                what = f"there is no appliance {appliance}"
                reporter.unknown(path, appliance, list(content.appliances), what)
            elif appliance in seen | in_runs:
                what = f"appliance {appliance} stands elsewhere already"
                reporter.tell(path, what, "give each its own [appliance....]")
            seen.add(appliance)
        check_hood(key, case, content, reporter)
        if case.kind == "hood":
            continue
        if case.kind == "surround" or case.appliance is not None:
            _surround(key, case, content, reporter)
        elif rows:
            _where(key, case, content, rows[0][1], reporter)
    check_panels(content, seen, reporter)


def _where(key: str, case: CaseTable, content: Content, path: KeyPath, reporter: Reporter) -> None:
    """An appliance stands between boards of a tall case, never under its top."""
    kinds = [row.kind for row in case.rows or ()]
    face = case.face or content.boxes.face or "frameless"
    overlay = case.front.overlay if case.front and case.front.overlay else content.doors.overlay
    if case.kind != "tall":
        reporter.tell(path, "only a tall case holds an appliance in a row",
                      'write kind = "tall", or put the appliance into a run')  # fmt: skip
    elif face == "strips":
        reporter.tell(path, "face strips leave the edge of a deck under an appliance bare",
                      'write face = "face frame" or "frameless"')  # fmt: skip
    elif face == "frameless" and overlay not in (None, "full"):
        reporter.tell(path, f"beside an appliance fronts are of full overlay, not {overlay}",
                      'write overlay = "full" in front')  # fmt: skip
    elif set(kinds) == {"appliance"}:
        reporter.tell(("case", key, "rows"), "nothing makes up the height of the stack",
                      'write a "drawer" or "doors" above or below')  # fmt: skip
    elif kinds[0] == "appliance" and case.divider is None:
        reporter.tell(path, "under the top stands its nailer, in an appliance's way",
                      'begin the rows with "doors"')  # fmt: skip
    elif kinds[-1] == "appliance" and face == "face frame":
        reporter.tell(path, "behind a face frame nothing carries a bottom with an appliance on it",
                      'end the rows with a "drawer" or "doors"')  # fmt: skip
    elif kinds[-1] == "appliance" and (case.toe or "notch") == "notch":
        reporter.tell(path, "over a toe space nothing carries a bottom with an appliance on it",
                      'write toe = "plinth", or end the rows with a "drawer"')  # fmt: skip


def _surround(key: str, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """A surround stands round an appliance, between two panels of sheet; nothing else does."""
    base: KeyPath = ("case", key)
    if case.kind != "surround":
        reporter.tell((*base, "appliance"), "only a surround or a hood is round an appliance",
                      'write kind = "surround", or put the appliance into a run')  # fmt: skip
    elif case.appliance is None:
        reporter.tell((*base, "kind"), "a surround stands round an appliance, and none is named",
                      'write appliance = "...", and its [appliance....]')  # fmt: skip
    elif (case.face or content.boxes.face) == "strips":
        reporter.tell((*base, "kind"), "a surround has no strips on its face",
                      'write face = "face frame" or "frameless"')  # fmt: skip
    elif has_face_frame(case, content) and (case.end or content.boxes.end) == "flush":
        reporter.tell((*base, "kind"), "the stiles of a face frame cover the panels' edges: none "
                      "is flush with the doors", 'write end = "skin"')  # fmt: skip
    elif has_face_frame(case, content) and case.scribe:
        reporter.tell((*base, "scribe"), "the stiles of a surround cover its panels: none is "
                      "scribed", "take it out: a filler of its run closes the gap")  # fmt: skip
    elif case.end in ("applied frame", "plain"):
        reporter.tell((*base, "end"), f'the panels of a surround are no "{case.end}"',
                      'write end = "skin", behind the doors, or "flush" with them')  # fmt: skip
    elif case.front is not None and case.front.construction == "none":
        reporter.tell((*base, "front"), "nothing hides the screws in the sides of a surround",
                      "take it out: doors hide them")  # fmt: skip
