"""Rows that close against nothing and stand on the middle of something: a hood over its range."""

from __future__ import annotations

from collections.abc import Mapping

from casewright.casework.house import House
from casewright.dims import TAPE_MARK, Dim, Place, Way, least, total
from casewright.room.specs import JobSpec, RunSpec
from casewright.survey.survey import Survey

__all__ = ["centred_on", "middle_of_thing", "stands_on", "stood_off"]


def stands_on(run: RunSpec) -> tuple[str, str] | None:
    """Which of its places stands on the middle of what; None where a row closes against anything.

    A row that ends at a wall, in a corner or at another row stands there; what it wishes to be in
    the middle of is then for a layout to see to.
    """
    if (run.left, run.right) != ("open", "open") or run.after or run.before:
        return None
    return next((wish for wish in run.centre if wish[0] in run.places), None)


def centred_on(spec: JobSpec, run: RunSpec) -> RunSpec | None:
    """The other run on its wall on the middle of whose case or appliance a row stands.

    None where it stands on the middle of something that is on the wall itself, or of nothing.
    """
    wish, wall = stands_on(run), spec.survey.wall(run.on)
    if wish is None or wall is None or any(thing.key == wish[1] for thing in wall.things):
        return None
    others = (each for each in spec.runs if each.key != run.key and each.on == run.on)
    return next((each for each in others if wish[1] in each.places), None)


def middle_of_thing(measured: Survey, run: RunSpec, key: str) -> Dim | None:
    """Middle of what is on the wall of a run, from its left end [mm]; None: it is not known."""
    wall = measured.walls.get(run.on)
    things = () if wall is None else wall.things
    thing = next((each for each in things if each.spec.key == key), None)
    if thing is None or thing.left is None or thing.right is None:
        return None
    return (thing.left + thing.right) / 2


def stood_off(
    house: House, place: Place, run: RunSpec, middle: Dim, rest: Dim, widths: Mapping[str, Dim]
) -> Dim:
    """How far off the wall's left end a row stands, on a mark of the tape [mm].

    Where the wall is too short for that, it stands against its end.

    Parameters
    ----------
    middle
        Of what it stands on, from the wall's left end [mm].
    rest
        What the row leaves of the wall [mm].
    widths
        Of its places [mm].
    """
    wish = stands_on(run)
    key = run.places[0] if wish is None else wish[0]
    before = [widths[each] for each in run.places[: run.places.index(key)]]
    exact = middle - total(*before, widths[key] / 2)
    off, _ = place.rounded("off_left", exact, TAPE_MARK[house.unit], Way.NEAREST)
    if off.value < 0:
        return house.zero
    return off if off.value <= rest.value else least(rest, off)
