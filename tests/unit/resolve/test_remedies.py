"""What is impossible, and what helps: sizes worked out by hand beside each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Literal

import pytest
from tests.jobs import read

from casewright.casework.parts import Part
from casewright.dims import Given, Origin, parse_length
from casewright.facts import Fact
from casewright.resolve import Proposal, Remedy, propose, remedies
from casewright.resolve.trials import Trials
from casewright.room.build import build
from casewright.sources import INCH
from casewright.stock import Offcut

_SPEC = read("""
format = 1
unit = "in"
[case.left]
kind = "base"
width = 24
[case.right]
kind = "base"
width = 24
[case.pans]
kind = "base"
width = 24
drawers = 3
[run.counter]
cases = ["left", "right"]
wall = ["50", "50 1/8"]
""")
_PLAIN = build(_SPEC)
_DOORS = ("left.door_left.slab", "left.door_right.slab")


def _cut(
    sizes: Mapping[str, Fraction],
    offcuts: tuple[Offcut, ...] = (),
    state: Literal["cut", "assembled"] = "cut",
) -> Proposal:
    """What follows once these numbers are cut to other sizes than planned, by so much [mm]."""
    nodes = _PLAIN.chain.nodes
    return _made({path: nodes[path].value + off for path, off in sizes.items()}, offcuts, state)


def _made(
    sizes: Mapping[str, Fraction],
    offcuts: tuple[Offcut, ...] = (),
    state: Literal["cut", "assembled"] = "cut",
) -> Proposal:
    facts = {path: Fact(Origin("made", "cut"), cut=size) for path, size in sizes.items()}
    room = build(_SPEC, facts)

    def marked(part: Part) -> Part:
        is_cut = any(fact.startswith(f"{part.path}.") for fact in facts)
        return replace(part, state=state) if is_cut else part

    cases = tuple(replace(case, parts=tuple(map(marked, case.parts))) for case in room.cases)
    runs = tuple(
        replace(run, fillers=tuple(replace(f, part=marked(f.part)) for f in run.fillers))
        for run in room.runs
    )
    return propose(_PLAIN, replace(room, cases=cases, runs=runs), offcuts=offcuts)


def _doors(off: Fraction) -> tuple[Remedy, ...]:
    """What helps a pair of doors that lie apart by so much less than planned."""
    told = _cut({f"{_DOORS[0]}.blank_width": off, f"{_DOORS[1]}.blank_width": Fraction(0)})
    return told.conflicts[0].remedies if told.conflicts else ()


def test_a_difference_inside_the_band_of_a_fit_is_absorbed() -> None:
    told = _cut({f"{door}.blank_width": Fraction(1, 2) for door in _DOORS})
    assert not told.conflicts
    assert not told.misfits


@pytest.mark.parametrize(
    ("off", "rungs"),
    [
        (2, ["adjust", "trim", "design anew"]),
        (6, ["trim", "design anew"]),
        (-2, ["adjust", "glue a strip", "recut smaller elsewhere", "recut", "design anew"]),
        (-6, ["glue a strip", "recut smaller elsewhere", "recut", "design anew"]),
    ],
)
def test_only_what_applies_is_told_the_least_work_first(off: int, rungs: list[str]) -> None:
    """Side screws move a door by 2 mm (common practice, the usual hinge's data sheet)."""
    assert [remedy.rung for remedy in _doors(Fraction(off))] == rungs


def test_a_door_is_trimmed_to_the_next_mark_that_gives_the_planned_gap() -> None:
    """Of the one door 6 mm over, the other gives as much: 7.6 marks of 1/32 in, so 8."""
    says = next(remedy.says for remedy in _doors(Fraction(6)) if remedy.rung == "trim")
    assert -(-Fraction(6) // (INCH / 32)) == 8
    assert says == 'take 1/4" off the width of 11 (left.door_right.slab)'


def test_a_box_too_wide_is_taken_up_by_its_filler() -> None:
    told = _cut({"left.width": Fraction(3)})
    rungs = [remedy.rung for remedy in told.conflicts[0].remedies]
    assert told.conflicts[0].fit.path == "left.width_error"
    assert rungs == ["move a filler", "design anew"]


def test_the_filler_whose_width_was_not_chosen_takes_it_up() -> None:
    """Of 50 the left one gets 1: the right one has what two boxes of 24 and 3 mm leave."""
    spec = replace(_SPEC, runs=tuple(
        replace(run, left_filler=Given(INCH, Origin("chosen", "job"))) for run in _SPEC.runs
    ))  # fmt: skip
    width = Fact(Origin("made", "cut"), cut=_PLAIN.chain.nodes["left.width"].value + 3)
    room = build(spec, {"left.width": width})
    told = remedies(Trials(room), room.chain.fits["left.width_error"])
    [moved] = [each.says for each in told if each.rung == "move a filler"]
    assert "run.counter.filler_right takes it up" in moved


def test_a_stretcher_shorter_than_the_bottom_comes_out_of_the_smallest_offcut() -> None:
    """The bottom governs; what was cut beside it and differs is told with its own remedies."""
    offcuts = (
        Offcut("offcut.wide", "plywood", Fraction(700), Fraction(200)),
        Offcut("offcut.right", "plywood", Fraction(600), Fraction(110)),
        Offcut("offcut.short", "plywood", Fraction(100), Fraction(110)),
        Offcut("offcut.thin", "thin_plywood", Fraction(600), Fraction(105)),
    )
    sizes = {"left.bottom.length": Fraction(0), "left.rear_stretcher.length": Fraction(-6)}
    (misfit,) = _cut(sizes, offcuts).misfits
    assert misfit.part.path == "left.rear_stretcher"
    assert [remedy.rung for remedy in misfit.remedies] == ["recut from an offcut"]
    assert misfit.remedies[0].stock == "offcut.right"


def test_a_stretcher_longer_than_the_bottom_is_trimmed_to_it() -> None:
    sizes = {"left.bottom.length": Fraction(0), "left.rear_stretcher.length": INCH / 4}
    (misfit,) = _cut(sizes).misfits
    assert misfit.remedies[0].says == 'take 1/4" off the length of 5 (left.rear_stretcher)'


_FILLERS = ("run.counter.filler_left.width", "run.counter.filler_right.width")
_SIDES = ("right.side_left", "right.side_right")
_ENDS = ("pans.drawer_1.front_end.length", "pans.drawer_1.back_end.length")


@pytest.mark.parametrize(
    ("sizes", "path", "rungs", "says"),
    [
        pytest.param(
            {"left.width": 3, **dict.fromkeys(_FILLERS, 0)},
            "left.width_error",
            ["scribe", "design anew"],
            "scribed to the wall",
            id="a box too wide between fillers that are cut",
        ),
        pytest.param(
            dict.fromkeys((f"{side}.blank_width" for side in _SIDES), -2),
            "right.depth_error",
            ["re-band", "glue a strip", "recut smaller elsewhere", "recut", "design anew"],
            " (right.side_right) anew, at least",
            id="banded sides 2 mm narrow",
        ),
        pytest.param(
            dict.fromkeys((f"{side}.length" for side in _SIDES), -3),
            "right.height_error",
            ["shim", "recut smaller elsewhere", "recut", "design anew"],
            "stand it on shims, 3 mm thick",
            id="sides 3 mm short",
        ),
        pytest.param(
            dict.fromkeys(_ENDS, -3),
            "pans.drawer_1.slide_fit",
            ["shim", "recut smaller elsewhere", "recut", "design anew"],
            "fill the gap with a shim",
            id="a drawer 3 mm narrow",
        ),
        pytest.param(
            dict.fromkeys(_ENDS, 3),
            "pans.drawer_1.slide_fit",
            ["trim", "design anew"],
            " (pans.drawer_1.front_end) and ",
            id="a drawer 3 mm wide: both of its ends",
        ),
    ],
)
def test_each_remedy_where_it_is_right(
    sizes: dict[str, int], path: str, rungs: list[str], says: str
) -> None:
    """Common practice; the order is that of the least work."""
    told = _cut({name: Fraction(off) for name, off in sizes.items()})
    (conflict,) = [each for each in told.conflicts if each.fit.path == path]
    assert [remedy.rung for remedy in conflict.remedies] == rungs
    assert any(says in remedy.says for remedy in conflict.remedies)
    assert all(r.minutes > 0 for r in conflict.remedies if r.rung != "design anew")


@pytest.mark.parametrize(
    ("off", "first"), [(INCH / 32, ["shim", "trim"]), (Fraction(6), ["shim"])]
)
def test_a_side_shorter_than_the_other_is_packed_up_or_the_other_trimmed(
    off: Fraction, first: list[str]
) -> None:
    """Trimmed only where the case keeps its height within its band, 1/16 in: not by 6 mm."""
    sizes = {"right.side_left.length": Fraction(0), "right.side_right.length": -off}
    (misfit,) = _cut(sizes).misfits
    assert misfit.part.path == "right.side_right"
    rungs = [remedy.rung for remedy in misfit.remedies]
    assert rungs[: len(first)] == first
    assert ("trim" in rungs) == ("trim" in first)


_MISSED: tuple[dict[str, int], ...] = (
    {f"{_DOORS[0]}.blank_width": 6, f"{_DOORS[1]}.blank_width": 0},
    {f"{_DOORS[0]}.blank_width": -6, f"{_DOORS[1]}.blank_width": 0},
    {"left.back.width": 6},
    dict.fromkeys((f"{side}.blank_width" for side in _SIDES), 3),
    dict.fromkeys(_ENDS, -3),
    dict.fromkeys(_ENDS, 3),
    {"left.bottom.length": 0, "left.rear_stretcher.length": -6},
    {"left.bottom.length": 0, "left.rear_stretcher.length": 6},
    {"right.side_left.length": 0, "right.side_right.length": -3},
)


@pytest.mark.parametrize("off", _MISSED, ids=lambda off: next(iter(off)))
def test_what_a_remedy_says_really_helps(off: dict[str, int]) -> None:
    """Worked out anew with the sizes it names, what it was told for is gone, and nothing new."""
    nodes = _PLAIN.chain.nodes
    sizes = {path: nodes[path].value + by for path, by in off.items()}
    told = _made(sizes)
    offered = [r for conflict in told.conflicts for r in conflict.remedies]
    offered += [r for misfit in told.misfits for r in misfit.remedies]
    tried = [remedy for remedy in offered if remedy.sizes]
    assert tried
    for remedy in tried:
        after = _made({**sizes, **dict(remedy.sizes)})
        names = {*(c.fit.path for c in after.conflicts), *(m.part.path for m in after.misfits)}
        before = {*(c.fit.path for c in told.conflicts), *(m.part.path for m in told.misfits)}
        assert names < before, remedy.says


@pytest.mark.parametrize(
    ("sizes", "rung", "read", "size"),
    [
        (dict.fromkeys((f"{s}.length" for s in _SIDES), -3), "shim", "right.height", "34 1/2"),
        (dict.fromkeys((f"{s}.blank_width" for s in _SIDES), -2), "re-band", "right.depth",
         "23 1/4"),
        (dict.fromkeys(_ENDS, -3), "shim", "pans.drawer_1.width", None),
    ],
)  # fmt: skip
def test_what_is_shimmed_or_banded_is_in_order_once_it_is_read(
    sizes: dict[str, int], rung: str, read: str, size: str | None
) -> None:
    """Once what it asks for is read as it was planned, nothing is told of the gap any more."""
    nodes = _PLAIN.chain.nodes
    cut = {path: nodes[path].value + off for path, off in sizes.items()}
    told = next(r for c in _made(cut).conflicts for r in c.remedies if r.rung == rung)
    assert told.says.endswith(f"; then read {read} as it is with that")
    planned = nodes[read].value if size is None else parse_length(size, "in")
    facts = {path: Fact(Origin("made", "cut"), cut=value) for path, value in cut.items()}
    facts[read] = Fact(Origin("measured", "tape"), built=planned)
    assert not [fit.path for fit in build(_SPEC, facts).chain.fits.values() if not fit.holds]


def test_what_is_fastened_comes_off_first_or_stays() -> None:
    """A back that brads hold is taken off and planed; a bottom in its joints stays as it is."""
    told = _cut({"left.back.width": Fraction(6)}, state="assembled").conflicts[0]
    assert told.remedies[0].says.startswith("take it off first, then take ")
    assert (
        told.remedies[0].minutes
        > _cut({"left.back.width": Fraction(6)}).conflicts[0].remedies[0].minutes
    )
    sizes = {"left.bottom.length": Fraction(0), "left.rear_stretcher.length": Fraction(-6)}
    (misfit,) = _cut(sizes, state="assembled").misfits
    assert [remedy.rung for remedy in misfit.remedies] == ["design anew"]
    assert "is fastened: read its length again" in misfit.remedies[0].says


def test_all_that_helps_a_drawer_with_several_pieces_off_is_told_and_helps() -> None:
    """Its pieces brought to their sizes, or all of it cut again: each with what it costs."""
    nodes = _PLAIN.chain.nodes
    own = [p for p in _PLAIN.parts if p.path.startswith("pans.drawer_1.")]
    dims = [dim.path for part in own for dim in (part.blank.length, part.blank.width)]
    off = {"pans.drawer_1.side_left.width": -3, "pans.drawer_1.back_end.width": 3}
    sizes = {path: nodes[path].value + off.get(path, 0) for path in dims}
    (clash,) = _made(sizes).clashes
    pieces, again, _ = clash.remedies
    assert [pieces.rung, again.rung] == ["glue a strip", "recut"]
    assert all(remedy.minutes and remedy.stock for remedy in (pieces, again))
    assert set(again.anew) == {part.path for part in own}
    assert not _made({**sizes, **dict(pieces.sizes)}).stops
