"""Blind corner bases in the job file."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from casewright.casework.specs import CaseSpec
from casewright.dims import Way
from casewright.job.case_sizes import CaseSizes
from casewright.job.content import Content
from casewright.job.face_choices import has_face_frame
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.tables import CaseTable

__all__ = ["as_blind_corner", "check_blind_corner", "check_blind_width"]

_MOUTH = Fraction(235)
"""Least clear mouth beside the blind part: an arm and a driver [mm]."""

_PANEL = Fraction(75)
"""Least width of the blind part behind the other run [mm]."""

_NOT_BESIDE = ("drawers", "roll_outs", "sink", "lid", "divider", "fixed_shelves", "mullion")


def as_blind_corner(spec: CaseSpec, table: CaseTable, origins: Origins) -> CaseSpec:
    """A base case as the blind corner that it is to be: one door, hinged away from the corner."""
    if table.blind is None or spec.front is None:
        return spec
    deep = table.corner_depth
    hinge = "right" if table.blind == "left" else "left"
    return replace(
        spec, blind=table.blind,
        front=replace(spec.front, leaves=1, hinge="right" if hinge == "right" else "left"),
        corner_depth=None
        if deep is None
        else origins.given(deep, ("case", spec.key, "corner_depth")),
    )  # fmt: skip


def check_blind_corner(key: str, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """Tell a blind side on what cannot have one, and what cannot stand beside it."""
    base: KeyPath = ("case", key)
    if case.blind is None:
        if case.corner_depth is not None:
            what = "this case stands in no corner, so corner_depth means nothing"
            reporter.tell((*base, "corner_depth"), what, 'take it out, or write blind = "left"')
        return
    if case.kind != "base":
        what = "only a base case can be a blind corner"
        reporter.tell((*base, "blind"), what, 'take blind out, or write kind = "base"')
        return
    for name in _NOT_BESIDE:
        if getattr(case, name):
            what = (
                f"behind the blind part of a corner there is no room for {name.replace('_', ' ')}"
            )
            want = (
                "take it out: the case has one door and shelves, and a drawer over it at the most"
            )
            reporter.tell((*base, name), what, want)
    _drawer(base, case, content, reporter)
    if (case.face or content.boxes.face) == "strips":
        what = "a blind corner base has no face strips"
        want = 'write face = "frameless" or face = "face frame" for this case'
        reporter.tell((*base, "blind"), what, want)
    if has_face_frame(case, content):
        _framed(base, case, content, reporter)
    if case.blind in case.finished:
        what = f"the {case.blind} end stands in the corner and does not show"
        reporter.tell((*base, "finished"), what, f"take {case.blind} out of finished or of blind")
    if case.width is None:
        what = "a blind corner base has a width of its own"
        reporter.tell((*base, "blind"), what, "write width = ...")
    _front(base, case, content, reporter)


def _drawer(base: KeyPath, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """One drawer may run over its door, on the far side and on a partition under the top."""
    kinds = [row.kind for row in case.rows or ()]
    if kinds and kinds != ["drawer", "doors"]:
        what = "the mouth of a blind corner has one door, and at the most one drawer over it"
        reporter.tell(
            (*base, "rows"), what, 'write rows = ["drawer 6", "doors"], or take rows out'
        )
        return
    name = "rows" if kinds else "top_drawer"
    if not kinds and case.top_drawer is None:
        return
    if has_face_frame(case, content):
        what = "behind the blind stile of a face frame no drawer runs over the door"
        reporter.tell((*base, name), what, f'take {name} out, or write face = "frameless"')
    elif _overlay(case, content) == "inset":
        what = "no rail goes through the blind panel, and inset fronts are parted by one"
        want = f'take {name} out, or write front = {{ overlay = "full" }} or "partial"'
        reporter.tell((*base, name), what, want)
    elif case.rails:
        what = "a rail between drawer and door would run into the blind panel"
        reporter.tell((*base, "rails"), what, "take it out")


def _overlay(case: CaseTable, content: Content) -> str:
    own = None if case.front is None else case.front.overlay
    return own or content.doors.overlay or "full"


def _framed(base: KeyPath, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """Its frame has a stile beside the mouth, which stands between the rails."""
    if (case.face_joint or content.boxes.face_joint) == "tenons":
        what = "the blind stile is screwed between the rails of its frame, and these have tenons"
        path: KeyPath = (*base, "face_joint") if case.face_joint else (*base, "blind")
        reporter.tell(path, what, 'write face_joint = "pocket screws" for this case')
    if case.blind in case.scribe:
        what = f"the {case.blind} end stands off the corner wall: there is nothing to scribe"
        reporter.tell((*base, "scribe"), what, f"take {case.blind} out of scribe or of blind")


def _front(base: KeyPath, case: CaseTable, content: Content, reporter: Reporter) -> None:
    front = case.front
    if front is not None and front.construction == "none":
        what = "a blind corner base has a door"
        reporter.tell((*base, "front"), what, "take front out")
        return
    if front is not None and front.leaves == 2:
        what = "a blind corner base has one door"
        reporter.tell((*base, "front", "leaves"), what, "take leaves out")
    if front is not None and front.hinge == case.blind:
        what = "a door hinged at the corner does not open before the other run"
        reporter.tell((*base, "front", "hinge"), what, "take hinge out: it hangs on the far side")


def check_blind_width(sizes: CaseSizes) -> None:
    """Tell a case too narrow for what is behind the other run and for a door beside that."""
    case = sizes.case
    if case.blind is None or case.width is None or case.front is None:
        return
    deep = case.corner_depth.value if case.corner_depth else sizes.value("base_depth")
    front = case.front
    first = deep + sizes.value("corner_clear")
    if front.overlay != "inset":
        first += sizes.value("bumper") + sizes.door_thickness(front)
    if front.pull:
        first += sizes.content.hardware.pull.projection or Fraction(30)
    behind = first - sizes.value("blind_pull_off")
    need = behind + (2 * sizes.value("face_stile") if case.framed else sizes.board) + _MOUTH
    if case.framed:
        _check_hidden(sizes, deep)
    if case.width.value < need:
        what = (
            f"the run round the corner hides {sizes.text(behind)} of this case, and what is left "
            "is no door"
        )
        sizes.tell("width", what, sizes.at_least(need))
    if behind - sizes.board < _PANEL:
        what = f"only {sizes.text(behind)} of this case stand behind the run round the corner"
        sizes.tell("blind", what, "a plain base case, or less of blind_pull_off under [style]")


def _check_hidden(sizes: CaseSizes, deep: Fraction) -> None:
    """Between the end stile of a frame and its blind one a driver reaches the pocket screws."""
    stile = sizes.value("face_stile")
    hidden = deep - sizes.value("blind_pull_off") - 2 * stile
    if hidden < _PANEL:
        least = deep + _PANEL - hidden
        what = "the stile at the corner and the one beside the mouth would overlap"
        if hidden > 0:
            what = f"only {sizes.text(hidden)} lie between the stiles at the corner and the mouth"
        want = f"corner_depth of {sizes.rough(least, Way.UP)} or more, or less of blind_pull_off"
        sizes.tell("blind", what, want)
