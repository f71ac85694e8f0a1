"""Places on the floor as they are written: what they are measured from, and what cannot be."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.dims import Given, Origin
from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.survey_edges import edges_of
from casewright.job.tables import IslandSolvedTable, PlaceTable
from casewright.room.floor_spec import FloorPlace
from casewright.survey.readings import TAPE, Reading

__all__ = ["check_floor_places", "floor_places"]

_Written = tuple[KeyPath, str, PlaceTable, IslandSolvedTable | None]


def _written(content: Content) -> Iterator[_Written]:
    """Every place with where it is written, what stands there, and an accepted answer."""
    for key, island in content.islands.items():
        if island.place is not None:
            yield ("island", key), f"island.{key}", island.place, island.solved
    for key, case in content.cases.items():
        if case.place is not None:
            yield ("case", key), key, case.place, None


def floor_places(content: Content, origins: Origins) -> tuple[FloorPlace, ...]:
    """Every place on the floor, islands first."""
    return tuple(_place(content, origins, each) for each in _written(content))


def _place(content: Content, origins: Origins, written: _Written) -> FloorPlace:
    base, of, table, solved = written
    path: KeyPath = (*base, "place")
    run = content.runs.get(table.run or "")

    def answered(name: str, value: Fraction | None) -> Given | None:
        """As the accepted answer gave it."""
        if solved is None or value is None:
            return None
        where = origins.where((*base, "solved", name))
        return Given(value, Origin("solved", solved.because or "layout", where=where))

    offs = tuple(
        origins.given(each, (*path, "off", number) if len(table.off or ()) > 1 else (*path, "off"))
        for number, each in enumerate(table.off or ())
    )
    off = offs[0] if len(offs) == 1 else answered("off", solved.off if solved else None)
    along = None if table.along is None else origins.given(table.along, (*path, "along"))
    is_island = of.startswith("island.")
    side = table.side or (solved.side if solved else None)
    return FloorPlace(
        of=of,
        wall=(run.on if run else table.wall) or "",
        run=table.run or "",
        off=off,
        along=along or answered("along", solved.along if solved else None),
        centre=table.centre or "",
        side=side or (None if is_island else "back"),
        band=(offs[0], offs[1]) if len(offs) > 1 else None,
        floor=tuple(
            Reading(origins.measured(each, (*path, "floor", number), "tape"), TAPE)
            for number, each in enumerate(table.floor or ())
        ),
        side_is_solved=table.side is None and side is not None,
        where=origins.where(path),
    )  # fmt: skip


def check_floor_places(content: Content, reporter: Reporter) -> None:
    """Tell places that are measured from nothing known, and cases that have another."""
    in_runs = {case: key for key, run in content.runs.items() for case in run.cases}
    for base, of, table, _ in _written(content):
        path: KeyPath = (*base, "place")
        run = in_runs.get(of)
        if run is not None:
            what = f"case {of} stands in run {run} already"
            reporter.tell(path, what, f"take place out, or {of} out of [run.{run}]", key=True)
        elif not of.startswith("island."):
            _loose(of, table, path, content, reporter)
        wall = _measured_from(table, path, content, reporter)
        if wall is not None:
            _centre(table, wall, path, content, reporter)
        low, high = (table.off or (None,))[0], (table.off or (None,))[-1]
        if low is not None and high is not None and low > high:
            what = "the least comes before the greatest"
            reporter.tell((*path, "off"), what, "swap the two")


def _loose(
    key: str, table: PlaceTable, path: KeyPath, content: Content, reporter: Reporter
) -> None:
    """A case is laid out by nobody: it says where it stands, and it stands."""
    case = content.cases[key]
    if case.kind in ("wall", "hood"):
        what = f"case {key} hangs: it has its place in a run on a wall"
        reporter.tell(path, what, f"take place out, and write [run.{key}]", key=True)
        return
    if table.off is None or len(table.off) > 1:
        where = path if table.off is None else (*path, "off")
        reporter.tell(where, f"how far off case {key} stands is not said",
                      "write off = ... with one number, 0 against the wall")  # fmt: skip
    if table.along is None and table.centre is None:
        reporter.tell(path, f"where along the wall case {key} stands is not said",
                      "write along = ..., or centre = ...")  # fmt: skip


def _measured_from(
    table: PlaceTable, path: KeyPath, content: Content, reporter: Reporter
) -> str | None:
    """The wall it is measured from; None where that has no meaning, which is told."""
    if (table.wall is None) == (table.run is None):
        known = ", ".join(content.walls) or "none yet"
        what = "it is not said what this place is measured from"
        if table.wall is not None:
            what = "this place is measured from a wall and from a run"
        reporter.tell(path, what, f'write wall = "...", or run = "..."; walls: {known}')
        return None
    if table.run is not None:
        return _run_wall(table.run, (*path, "run"), content, reporter)
    wall = table.wall or ""
    if {("wall",), ("wall", wall)} & content.lost or wall in content.walls:
        return wall
    what = f"there is no wall {wall}"
    if content.walls:
        reporter.unknown((*path, "wall"), wall, list(content.walls), what)
    else:
        reporter.tell((*path, "wall"), what, f"write [wall.{wall}] with its readings")
    return None


def _run_wall(key: str, path: KeyPath, content: Content, reporter: Reporter) -> str | None:
    """The surveyed wall that a run stands on."""
    run = content.runs.get(key)
    if run is None:
        if not {("run",), ("run", key)} & content.lost:
            reporter.unknown(path, key, list(content.runs), f"there is no run {key}")
        return None
    cases = [content.cases[each] for each in run.cases if each in content.cases]
    if run.on is None or any(case.kind in ("wall", "hood") for case in cases):
        what = f"run {key} does not stand on a surveyed wall"
        reporter.tell(path, what, "name one that does, or a wall")
        return None
    return run.on


def _centre(
    table: PlaceTable, wall: str, path: KeyPath, content: Content, reporter: Reporter
) -> None:
    if table.centre is None or wall not in content.walls:
        return
    if table.along is not None:
        what = "its place along the wall is said twice, by along and by centre"
        reporter.tell((*path, "centre"), what, "take one of them out")
    on_it = [key for run in content.runs.values() if run.on == wall for key in run.cases]
    things = content.walls[wall].fixed
    known = [*things, *on_it]
    if table.centre in things and None in edges_of(content.walls[wall], table.centre):
        what = f"the edges of {table.centre} are not known, so its middle is not either"
        want = f"write its left and its width in [wall.{wall}.fixed.{table.centre}]"
        reporter.tell((*path, "centre"), what, want)
    if table.centre not in known:
        what = f"nothing called {table.centre} is on wall {wall}"
        if known:
            reporter.unknown((*path, "centre"), table.centre, known, what)
        else:
            reporter.tell((*path, "centre"), what, "write along = ... instead")
