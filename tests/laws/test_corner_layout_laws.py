"""The law of layouts beside an inside corner: what is proposed opens there, by the checks."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import hypothesis.strategies as st
from hypothesis import given, settings
from tests.jobs import read

from casewright.checks import inside_corner, opens_beside
from casewright.dims import Unit
from casewright.findings import Finding
from casewright.job.layouts import accepted, layouts
from casewright.room.build import build
from casewright.room.model import Room

_FRONTS = ("", 'front = "none"\n', "top_drawer = {six}\n", 'rows = ["drawer {six}", "drawer"]\n')
_RULES = (inside_corner.RULE, opens_beside.RULE)


class _Corner(NamedTuple):
    """Two walls with a run each; sizes in inches are written in the unit, to the millimetre."""

    unit: Unit
    kind: str
    north: tuple[int, ...]
    east: tuple[int, ...]
    is_free: bool
    keeps_out: bool
    wide: tuple[int, int]
    blind: bool
    stands_out: int | None

    def size(self, inches: float) -> str:
        """As the job writes it."""
        return str(inches) if self.unit == "in" else str(round(inches * 25.4))

    def cases(self, run: str, order: tuple[int, ...]) -> Iterator[str]:
        """Cases by what they have in front, and the run."""
        keys = [f"{run}{n}" for n in range(len(order))]
        for key, number in zip(keys, order, strict=True):
            front = _FRONTS[number % 2 if self.kind == "wall" else number]
            yield f'[case.{key}]\nkind = "{self.kind}"\n{front.format(six=self.size(6))}'
            if self.blind and key == keys[-1] and run == "n":
                yield f'blind = "right"\nwidth = {self.size(42)}\n'
        names = ", ".join(f'"{key}"' for key in keys)
        yield f"[run.{run}]\ncases = [{names}]\n"

    def text(self, north: tuple[int, ...], *, is_free: bool) -> str:
        """The job file, the run on the north wall with its cases so."""
        lines = [
            f'format = 1\nunit = "{self.unit}"\n[wall.north]\nwidth = {self.size(self.wide[0])}\n'
        ]
        lines.append(f"[wall.east]\nwidth = {self.size(self.wide[1])}\n")
        lines.append('[corner.ne]\nwalls = ["north", "east"]\n')
        if self.stands_out is not None:
            at, wide, high = (self.size(each) for each in (self.wide[0] - 40, 12, 30))
            lines.append(
                f'[wall.north.fixed.heater]\nkind = "radiator"\nleft = {at}\nwidth = {wide}\n'
                f"bottom = 0\nheight = {high}\nout = {self.size(self.stands_out)}\n"
            )
        else:
            lines += [*self.cases("n", north), 'on = "north"\n']
            lines += ['order = "free"\n'] if is_free else []
        lines += [*self.cases("e", self.east), 'on = "east"\n']
        lines += ['left = "corner"\n'] if self.keeps_out and self.stands_out is None else []
        return "".join(lines)


def _plain(corner: _Corner) -> _Corner:
    """A blind corner is a base with doors, and a drawer over them or none."""
    north, is_base = corner.north, corner.kind == "base"
    if corner.blind and is_base:
        return corner._replace(north=(*north[:-1], 2 * (north[-1] == 2)))
    return corner._replace(blind=False)


_FRONT = st.integers(0, 3)
_CORNERS = st.builds(
    _Corner,
    unit=st.sampled_from(("in", "mm")),
    kind=st.sampled_from(("base", "base", "wall")),
    north=st.tuples(_FRONT, _FRONT, _FRONT),
    east=st.tuples(_FRONT, _FRONT),
    is_free=st.booleans(),
    keeps_out=st.sampled_from((True, True, False)),
    wide=st.tuples(st.integers(86, 100), st.integers(78, 90)),
    blind=st.booleans(),
    stands_out=st.sampled_from((None, None, None, 1, 3)),
).map(_plain)


def _struck(room: Room, *runs: str) -> list[Finding]:
    """What does not open beside the corner, of the cases of some runs."""
    keys = {case.key for run in room.runs if run.spec.key in runs for case in run.cases}
    return [
        found
        for rule in _RULES
        for found in rule.findings(room)
        if found.path.partition(".")[0] in keys
    ]


@settings(deadline=None, max_examples=15)
@given(_CORNERS)
def test_what_is_proposed_opens_in_the_corner(corner: _Corner) -> None:
    """Every answer of a run; and of both, one accepted after the other."""
    text = corner.text(corner.north, is_free=corner.is_free)
    found = {run.key: run for run in layouts(build(read(text)))}
    for key, run in found.items():
        assert bool(run.answers) != bool(run.conflicts or run.corners)
        for number in range(1, len(run.answers) + 1):
            assert not _struck(build(read(accepted(text, run, number))), key)
    if len(found) == 2 and all(run.answers for run in found.values()):
        text = accepted(text, found["n"], 1)
        [after] = layouts(build(read(text)), only="e")
        for number in range(1, len(after.answers) + 1):
            assert not _struck(build(read(accepted(text, after, number))), "n", "e")


@settings(deadline=None, max_examples=10)
@given(_CORNERS.filter(lambda each: each.stands_out is None and not each.blind))
def test_where_nothing_is_proposed_for_a_corner_nothing_opens_there(corner: _Corner) -> None:
    """Whichever case stands there, the checks find it shut in, or both runs in one place."""
    text = corner.text(corner.north, is_free=corner.is_free)
    run = next(layouts(build(read(text)), only="n", best_alone=True))
    if not run.corners:
        return
    last = corner.north if corner.is_free else corner.north[-1:]
    for front in set(last):
        others = list(corner.north)
        others.remove(front)
        room = build(read(corner.text((*others, front), is_free=False)))
        assert _struck(room, "n", "e")
