"""Diagonal corners in the job file."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from casewright.casework.diagonal import OVER_ROOT_2, UNDER_ROOT_2
from casewright.casework.specs import CaseSpec, FrontSpec
from casewright.job.case_sizes import CaseSizes
from casewright.job.content import Content
from casewright.job.face_choices import has_face_frame
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.tables import CaseTable

__all__ = ["as_diagonal", "check_diagonal", "check_diagonal_sizes"]

_NOT_IN_ONE = (
    "drawers", "top_drawer", "roll_outs", "lid", "blind", "divider",
    "fixed_shelves", "mullion", "skirt", "crown", "nosing", "finished", "scribe",
)  # fmt: skip
_ROOM = Fraction(230)
"""Least width of the door that is of use, and a driver between strips and post [mm]."""

_LEAF = Fraction(180)
"""Least width of each of two leaves: cup, frame and pull beside one another [mm]."""

_ARM = Fraction(250)
"""Least length of the sleeper in a plinth's arm: room for the driver between [mm]."""

_LAP = Fraction(6)
"""Least that a door lies over a stile [mm] (common practice)."""

_STILES = "under [style], for face_stile"

_PINS = Fraction(32)
"""Least distance between the two rows of pins in a return side [mm]."""


def as_diagonal(spec: CaseSpec, table: CaseTable) -> CaseSpec:
    """A wall or base case as the diagonal corner that it is to be: one door, two return sides."""
    if table.diagonal is None:
        return spec
    front = None if spec.front is None else replace(spec.front, leaves=spec.front.leaves or 1)
    return replace(spec, diagonal=table.diagonal, under=table.bottom == "under", front=front)


def check_diagonal(key: str, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """Tell a diagonal corner on what cannot be one, and what there is no place for in it."""
    base: KeyPath = ("case", key)
    if case.diagonal is None:
        if case.bottom is not None:
            what = "only the bottom of a diagonal corner can lie under its sides"
            reporter.tell((*base, "bottom"), what, 'take it out, or write diagonal = "left"')
        return
    if case.kind not in ("wall", "base"):
        what = "only a wall or a base case can be a diagonal corner"
        reporter.tell((*base, "diagonal"), what, 'write kind = "wall" or kind = "base"')
        return
    for name in _NOT_IN_ONE:
        if getattr(case, name):
            what = f"a diagonal corner has no {name.replace('_', ' ')}"
            want = "take it out: it has a door or a pair, and shelves or a bowl"
            reporter.tell((*base, name), what, want)
    _bowl(base, case, content, reporter)
    if case.width is None:
        what = "a diagonal corner has a width of its own: its leg along either wall"
        reporter.tell((*base, "diagonal"), what, "write width = ...")
    if case.kind == "base" and case.bottom == "under":
        what = "the bottom of a base case lies above its toe space, between the sides"
        reporter.tell((*base, "bottom"), what, 'write bottom = "between"')
    _boxes(base, case, content, reporter)
    _front(base, case, content, reporter)
    _places(key, case, content, reporter)


def _bowl(base: KeyPath, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """Under a bowl its face has a false front over the doors, else its doors alone."""
    kinds = [row.kind for row in case.rows or ()]
    if kinds and (not case.sink or kinds != ["false front", "doors"]):
        what = "the face of a diagonal corner has no rows but those of a sink base"
        want = 'take rows out, or write sink = true and rows = ["false front", "doors"]'
        reporter.tell((*base, "rows"), what, want)
    overlay = (case.front.overlay if case.front else None) or content.doors.overlay
    if case.sink and case.rails and overlay != "inset":
        what = "across a corner a rail parts false front and doors only where they are inset"
        reporter.tell((*base, "rails"), what, "take it out")
    if case.sink and case.shelves:
        what = "a shelf across a corner would lie on the post, before which the pipes come up"
        reporter.tell((*base, "shelves"), what, "take it out")


def _boxes(base: KeyPath, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """What all boxes may have, and this one cannot."""
    boxes = content.boxes
    if (case.face or boxes.face) == "strips":
        what = "a diagonal corner has no face strips: its front edges meet the face at a slant"
        want = 'write face = "face frame" or "frameless" for this case'
        reporter.tell((*base, "face" if case.face else "diagonal"), what, want)
    if has_face_frame(case, content):
        _framed(base, case, content, reporter)
    if not case.sink and (case.back or boxes.back or "rabbeted") != "rabbeted":
        where: KeyPath = (*base, "back") if case.back else (*base, "diagonal")
        what = "the two backs of a diagonal corner lie in rabbets of its return sides"
        reporter.tell(where, what, 'write back = "rabbeted" for this case')
    if (case.edge or boxes.edge) == "lip":
        where = (*base, "edge") if case.edge else (*base, "diagonal")
        what = "the front edges of a diagonal corner run at a slant: no lip is glued on them"
        reporter.tell(where, what, 'write edge = "band" or edge = "painted" for this case')


def _framed(base: KeyPath, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """What there is no place for behind a frame across a corner."""
    if case.sink:
        what = "behind the face frame of a diagonal corner no corner blocks tie a box for a bowl"
        reporter.tell((*base, "sink"), what, 'write face = "frameless" for this case')
    if (case.toe or "notch") == "plinth" and case.kind == "base":
        what = "a bottom behind the rail of a diagonal face frame leaves no seat on a plinth"
        reporter.tell((*base, "toe"), what, 'write toe = "notch", or face = "frameless"')
    if case.bottom == "under":
        what = "behind a face frame the bottom lies between the return sides, hidden by its rail"
        reporter.tell((*base, "bottom"), what, 'write bottom = "between"')


def _front(base: KeyPath, case: CaseTable, content: Content, reporter: Reporter) -> None:
    front = case.front
    if front is not None and front.construction == "none":
        what = "a diagonal corner has a door"
        reporter.tell((*base, "front"), what, "take front out")
        return


def _places(key: str, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """It stands at the end of its run that it names."""
    for name, run in content.runs.items():
        if key not in run.cases:
            continue
        end = 0 if case.diagonal == "left" else -1
        if run.cases[end] != key:
            what = f"{key} fills the corner at the {case.diagonal} end of its run"
            want = f"write it {'first' if end == 0 else 'last'} in cases"
            reporter.tell(("run", name, "cases"), what, want)


def check_diagonal_sizes(sizes: CaseSizes) -> None:
    """Tell sizes that leave no door in the mouth, or no room for the pins of its shelves."""
    case = sizes.case
    if case.diagonal is None or case.width is None or case.front is None:
        return
    if case.framed:
        _stile_room(sizes, case.front)
    need = _least_difference(sizes, case.front)
    leg = case.width.value - case.depth.value
    if leg < need:
        what = (
            f"legs of {sizes.text(case.width.value)} and sides {sizes.text(case.depth.value)} "
            f"deep leave no room for {'a pair of doors' if case.front.leaves == 2 else 'a door'} "
            "in the mouth"
        )
        sizes.tell("width", what, sizes.at_least(case.depth.value + need))
    if case.toe == "plinth":
        room = sizes.value("toe_setback") + 4 * sizes.board + _ARM
        if case.depth.value < room:
            what = "no arm of a plinth that a driver goes into has room under sides so shallow"
            sizes.tell("depth", what, sizes.at_least(room))
    strip = sizes.value("hinge_strip")
    if case.front.overlay == "inset" and not case.framed:
        strip += sizes.door_thickness(case.front)
    if case.framed:  # it stands before the return sides
        strip += sizes.thickness(case.face_stock)
    line = (strip + sizes.value("shelf_setback")) * OVER_ROOT_2
    deep = line + sizes.back + _PINS + Fraction(25)
    if case.shelves and case.depth.value < deep:
        what = "strips and post leave no room for two rows of pins in sides of this depth"
        sizes.tell("depth", what, sizes.at_least(deep))


def _least_difference(sizes: CaseSizes, front: FrontSpec) -> Fraction:
    """What its legs must be longer than its sides are deep, for doors and a driver [mm]."""
    wide = _ROOM if front.leaves != 2 else 2 * _LEAF + sizes.value("gap")
    if sizes.case.framed:
        stiles = 2 * sizes.value("face_stile")
        bare = 2 * _bare(sizes, front)
        if front.overlay == "inset":
            bare = stiles + 2 * sizes.value("inset_gap")
        return max(wide + bare, _ROOM + stiles) / UNDER_ROOT_2
    strips = (_ROOM + 2 * sizes.board) / UNDER_ROOT_2 + sizes.board
    if front.overlay == "inset":
        beside = 2 * (sizes.board + sizes.value("inset_gap"))
        return max((wide + beside) / UNDER_ROOT_2 + sizes.board, strips)
    out = sizes.door_thickness(front) + sizes.value("bumper")
    need = max((wide + 2 * out) / UNDER_ROOT_2 + 2 * sizes.value("reveal"), strips)
    if front.overlay == "partial":
        bare = 2 * sizes.value("partial_reveal")
        need = max(need, (wide + bare) / UNDER_ROOT_2 + sizes.board)
    return need


def _bare(sizes: CaseSizes, front: FrontSpec) -> Fraction:
    """What a door over a frame leaves bare of it at either end, to clear its neighbours [mm]."""
    out = sizes.door_thickness(front) + sizes.value("bumper")
    bare = out + sizes.value("reveal") * OVER_ROOT_2
    if front.overlay == "partial":
        bare = max(bare, sizes.value("face_stile") - sizes.value("face_overlay"))
    return bare


def _stile_room(sizes: CaseSizes, front: FrontSpec) -> None:
    """Tell stiles that a door which clears its neighbours does not lie over far enough."""
    if front.overlay == "inset":
        return
    stile, need = sizes.value("face_stile"), _bare(sizes, front) + _LAP
    if stile < need:
        thick = sizes.text(sizes.door_thickness(front))
        what = (
            f"a door {thick} thick that clears the cases beside it does not lie over stiles of "
            f"{sizes.text(stile)}"
        )
        sizes.tell("diagonal", what, f"{_STILES} {sizes.at_least(need)}, or make it inset")
