"""Readings of a room that have no meaning: names that are not there, walls that cannot close."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Unit, size_text
from casewright.job.content import Content
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.survey_edges import edges_of, free_width
from casewright.job.tables import CornerTable, FixedTable, RunTable, WallTable
from casewright.job.tables.survey import ReadingTable

__all__ = ["check_survey"]

_OVER = {"in": Fraction(254, 10), "mm": Fraction(25)}
"""How far past the widest reading something may still reach: walls are crooked."""


def check_survey(content: Content, reporter: Reporter) -> None:
    """Tell every name in the survey that is not known, and every size that cannot be."""
    for key, run in content.runs.items():
        _stands_on(key, run.on, bool(run.wall), content, reporter)
        _fillers_and_centres(key, run, content, reporter)
    for key, wall in content.walls.items():
        _Wall(key, wall, content.unit, reporter).check()
    for key, corner in content.corners.items():
        _corner(key, corner, content, reporter)


def _stands_on(
    key: str, on: str | None, has_own: bool, content: Content, reporter: Reporter
) -> None:
    path: KeyPath = ("run", key, "on")
    if on is None or ("wall", on) in content.lost or ("wall",) in content.lost:
        return
    if on not in content.walls:
        _no_wall(path, on, content, reporter)
    elif has_own:
        want = f"take one of them out: wall here, or on and [wall.{on}]"
        reporter.tell(path, "this run has readings of its own and those of a wall", want)
    elif not content.walls[on].width:
        what = f"wall {on} has no width yet"
        reporter.tell(path, what, f'write width = ["...", "...", "..."] in [wall.{on}]')


def _fillers_and_centres(key: str, run: RunTable, content: Content, reporter: Reporter) -> None:
    path: KeyPath = ("run", key)
    end = "wall" if run.wall or run.on else "open"
    if run.left_filler is not None and (run.left or end, run.right or end) != ("wall", "wall"):
        what = "only between two walls can one filler be told from the other"
        reporter.tell((*path, "left_filler"), what, "take it out")
    wall = content.walls.get(run.on or "")
    _ends(path, run, content, reporter)
    for case, thing in run.centre.items():
        where = (*path, "centre", case)
        if case not in run.cases:
            reporter.unknown(where, case, run.cases, f"case {case} is not in this run")
        elif wall is None and run.on is not None:
            continue  # told already
        elif wall is None:
            reporter.tell(where, "nothing is known of its wall", 'write on = "..." and that wall')
        elif thing not in wall.fixed and thing not in (there := _beside(run, content)):
            what = f"there is no {thing} on wall {run.on}"
            if wall.fixed or there:
                reporter.unknown(where, thing, [*wall.fixed, *there], what)
            else:
                reporter.tell(where, what, f"write [wall.{run.on}.fixed.{thing}]")


def _ends(path: KeyPath, run: RunTable, content: Content, reporter: Reporter) -> None:
    """What a run begins after and ends before is on its wall, with the edge it needs."""
    wall, known = content.walls.get(run.on or ""), list[Fraction]()
    for name, key, side in (("after", run.after, 1), ("before", run.before, 0)):
        if key is None or (wall is None and run.on is not None):
            continue
        if wall is None:
            reporter.tell((*path, name), "nothing is known of its wall", 'write on = "..."')
        elif key not in wall.fixed:
            _at_case((*path, name), key, run, content, reporter)
        elif (edge := edges_of(wall, key)[side]) is None:
            what = f"the {'right' if side else 'left'} edge of {key} is not known"
            reporter.tell((*path, name), what, f"write its left and its width in [wall.{run.on}]")
        else:
            known.append(edge)
    free = None if wall is None else free_width(run, wall)
    for name, end, key in (("left", run.left, run.after), ("right", run.right, run.before)):
        word = "after" if name == "left" else "before"
        if end == "flush" and key is None:
            what = f"nothing is named that its {name} end could stand against"
            reporter.tell((*path, name), what, f'write {word} = "...", or take it out')
        elif end == "corner" and key is not None:
            what = f"what stands at its {name} end is said twice, here and by {word}"
            reporter.tell((*path, name), what, "take one of them out")
    if known and free is not None and free <= 0:
        name = "before" if run.before is not None else "after"
        what = "nothing is left of the wall between what it stands after and before"
        reporter.tell((*path, name), what, "read the edges again, or swap the two")


def _at_case(path: KeyPath, key: str, run: RunTable, content: Content, reporter: Reporter) -> None:
    """A case or an appliance of another run that stands or hangs on the same wall."""
    others = {each: other for each, other in content.runs.items() if other is not run}
    home = next((each for each, other in others.items() if key in other.cases), None)
    if key in run.cases:
        what, want = (
            f"{key} stands in this run itself",
            "name what it ends at beyond its own cases",
        )
        reporter.tell(path, what, want)
    elif home is not None:
        other = others[home].on
        if other != run.on and ("run", home) not in content.lost:
            where = f"on wall {other}" if other else "at no surveyed wall"
            what = f"{key} stands {where}, in run {home}, and this run on wall {run.on}"
            reporter.tell(path, what, "name what stands on this wall")
    elif (beside := _round_corner(path, key, run, content)) is not None:
        _at_swing(path, key, run, content.walls[beside], reporter)
    elif key in content.cases or key in content.appliances:
        want = f"put it into a run with on = {run.on!r}, or name what stands there"
        reporter.tell(path, f"{key} stands in no run", want.replace("'", '"'))
    elif not {("case",), ("case", key), ("run",), ("appliance", key)} & content.lost:
        there = _beside(run, content)
        wall = content.walls.get(run.on or "")
        known = sorted({*(wall.fixed if wall is not None else ()), *there})
        what = f"there is no {key} on wall {run.on}, nor in another run there"
        reporter.unknown(path, key, known or [f"[wall.{run.on}.fixed.{key}]"], what)


def _beside(run: RunTable, content: Content) -> list[str]:
    """Cases and appliances of the other runs on its wall."""
    others = (other for other in content.runs.values() if other is not run and other.on == run.on)
    return [key for other in others for key in other.cases]


def _round_corner(path: KeyPath, key: str, run: RunTable, content: Content) -> str | None:
    """The wall round the corner at that end of a run, where what is named is a door on it."""
    for corner in content.corners.values():
        left, right = corner.walls
        here, there = (right, left) if path[-1] == "after" else (left, right)
        wall = content.walls.get(there)
        thing = wall.fixed.get(key) if wall is not None else None
        if not corner.outside and here == run.on and thing is not None and thing.kind == "door":
            return there
    return None


def _at_swing(path: KeyPath, key: str, run: RunTable, wall: WallTable, reporter: Reporter) -> None:
    """A door round the corner: where its leaf has swept by, the run may begin."""
    thing, side = wall.fixed[key], "left" if path[-1] == "after" else "right"
    end = run.left if side == "left" else run.right
    if thing.swing is None:
        what = f"{key} is on the wall round the corner, and does not open into the room"
        reporter.tell(path, what, "take it out; if it does, write its swing there")
    elif None in edges_of(wall, key):
        reporter.tell(path, f"the edges of {key} are not known", "write its left and its width")
    elif end != "open":
        what = f"where {key} sweeps by nothing stands that a filler could close"
        reporter.tell(path, what, f'write {side} = "open"')


def _no_wall(path: KeyPath, word: str, content: Content, reporter: Reporter) -> None:
    what = f"there is no wall {word}"
    if content.walls:
        reporter.unknown(path, word, content.walls, what)
    else:
        reporter.tell(path, what, f"write a section [wall.{word}] with its readings")


class _Wall:
    def __init__(self, key: str, wall: WallTable, unit: Unit, reporter: Reporter) -> None:
        self.path: KeyPath = ("wall", key)
        self.wall, self.unit, self.reporter = wall, unit, reporter
        widest = max((each.read for each in wall.width), default=None)
        self.end = None if widest is None else widest + _OVER[unit]

    def check(self) -> None:
        """All of it."""
        for n, station in enumerate(self.wall.stations):
            self._inside(station.along, ("stations", n, "along"), "a station")
        for n, stud in enumerate(self.wall.studs):
            self._inside(stud.read, ("studs", n), "a stud")
        for n, hollow in enumerate(self.wall.hollows):
            self._inside(hollow.along, ("hollows", n, "along"), "a hollow")
        for key, thing in self.wall.fixed.items():
            self._thing(thing, ("fixed", key))
        self._rings()

    def _inside(self, reached: Fraction, path: KeyPath, what: str) -> None:
        if self.end is not None and reached > self.end:
            widest = size_text(self.end - _OVER[self.unit], self.unit)
            says = f"{what} at {size_text(reached, self.unit)} is outside the wall of {widest}"
            want = "read it again from the wall's left end, or correct the width"
            self.reporter.tell((*self.path, *path), says, want)

    def _thing(self, thing: FixedTable, path: KeyPath) -> None:
        for name in ("left", "width", "right", "centre"):
            reading: ReadingTable | None = getattr(thing, name)
            if reading is not None:
                what = f"this {thing.kind}" if name == "width" else f"the {name} of it"
                self._length(reading.read, (*path, name), what)
        if thing.centre is not None and (thing.left is not None or thing.right is not None):
            what = "its place is given by centre and by an edge"
            self._tell((*path, "centre"), what, "take one of them out")
        for n, top in enumerate(thing.tops):
            self._inside(top.along, (*path, "tops", n, "along"), "a place")
        if thing.bottom and thing.top and thing.top.read <= thing.bottom.read:
            what = "its top is not over its bottom"
            self._tell((*path, "top"), what, "both are read up from the floor")
        if thing.swing is not None and thing.kind != "door":
            what = f"a {thing.kind} has no swing"
            self._tell((*path, "swing"), what, "take it out; only a door has one")

    def _length(self, size: Fraction, path: KeyPath, what: str) -> None:
        if self.end is not None and size > self.end:
            widest = size_text(self.end - _OVER[self.unit], self.unit)
            says = f"{what} is {size_text(size, self.unit)}, wider than the wall of {widest}"
            self._tell(path, says, "read it again, or correct the width of the wall")

    def _tell(self, path: KeyPath, what: str, want: str) -> None:
        self.reporter.tell((*self.path, *path), what, want)

    def _rings(self) -> None:
        """What is read from what must end at the wall."""
        for key, thing in self.wall.fixed.items():
            if thing.after is None:
                continue
            path = ("fixed", key, "after")
            if thing.after not in self.wall.fixed:
                others = [each for each in self.wall.fixed if each != key]
                what = f"there is no {thing.after} on this wall"
                if others:
                    self.reporter.unknown((*self.path, *path), thing.after, others, what)
                else:
                    self._tell(path, what, "take it out: left then counts from the wall's end")
            elif self._comes_round(key):
                what = "what is read from each other begins nowhere"
                self._tell(path, what, "read one of them from the wall's left end")

    def _comes_round(self, key: str) -> bool:
        seen, here = {key}, self.wall.fixed[key].after
        while here is not None and here in self.wall.fixed:
            if here in seen:
                return here == key
            seen.add(here)
            here = self.wall.fixed[here].after
        return False


def _corner(key: str, corner: CornerTable, content: Content, reporter: Reporter) -> None:
    path: KeyPath = ("corner", key)
    for n, name in enumerate(corner.walls):
        if name not in content.walls and ("wall", name) not in content.lost:
            _no_wall((*path, "walls", n), name, content, reporter)
    if corner.walls[0] == corner.walls[1]:
        reporter.tell((*path, "walls", 1), "a wall has no corner with itself", "name the other")
        return
    marks = corner.triangle
    if marks is not None:
        sides = (marks.left.read, marks.right.read, marks.across.read)
        _closes(sides, (*path, "triangle", "across"), content.unit, reporter)
    walls = [content.walls[name] for name in corner.walls if name in content.walls]
    if corner.diagonal is not None and len(walls) == 2 and all(wall.width for wall in walls):
        left, right = (min(each.read for each in wall.width) for wall in walls)
        sides = (left, right, corner.diagonal.read)
        _closes(sides, (*path, "diagonal"), content.unit, reporter)


def _closes(
    sides: tuple[Fraction, Fraction, Fraction], path: KeyPath, unit: Unit, reporter: Reporter
) -> None:
    """Whether three sides make a triangle at all."""
    left, right, across = sides
    low, high = abs(left - right), left + right
    if not low < across < high:
        what = (
            f"sides of {size_text(left, unit)} and {size_text(right, unit)} cannot have "
            f"{size_text(across, unit)} between their ends"
        )
        want = f"over {size_text(low, unit)} and under {size_text(high, unit)} would close"
        reporter.tell(path, what, want)
