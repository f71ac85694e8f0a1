"""Crowns that end at a case of another run on their wall: into its side, round it, or past it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.builders import length
from tests.jobs import read
from tests.perturbation import moved

from casewright.casework.parts import PlacedAt
from casewright.findings import Severity
from casewright.job.worked import WorkedJob, work_out
from casewright.packet.trim_steps import trim_steps
from casewright.room.model import Run
from casewright.room.trims.beside_proof import beside_failures
from casewright.room.trims.model import Trim

_JOB = """format = 1
unit = "{unit}"
[stock.crown]
kind = "board"
title = "crown moulding"
thickness = {thick}
width = {width}
lengths = [{longest}]
[wall.back]
width = {wall}
[wall.back.fixed.door]
kind = "door"
left = 0
width = {door}
[case.cups]
kind = "wall"
width = {wide}
height = {high}
[case.pantry]
kind = "tall"
width = {wide}
height = {tall}
{deep}
[run.up]
cases = ["cups"]
on = "back"
{up}
[run.up.crown]
moulding = "crown"
drop = {drop}
projection = {out}
{crown}
[run.tall]
cases = ["pantry"]
on = "back"
{stands}
"""
_SIZES: dict[str, dict[str, object]] = {
    "in": {"thick": '"5/8"', "width": '"3 5/8"', "longest": 144, "wall": 140, "door": 20,
           "wide": 30, "high": 37, "tall": 91, "drop": '"2 7/8"', "out": '"2 1/4"'},
    "mm": {"thick": 16, "width": 92, "longest": 3600, "wall": 3500, "door": 500, "wide": 760,
           "high": 900, "tall": 2274, "drop": 73, "out": 57},
}  # fmt: skip
_AT = {
    "right": ('after = "door"\nleft = "open"\nright = "open"',
              'after = "cups"\nleft = "flush"\nright = "open"'),
    "left": ('after = "pantry"\nleft = "flush"\nright = "open"',
             'after = "door"\nleft = "open"\nright = "open"'),
}  # fmt: skip


def _job(unit: str = "in", at: str = "right", crown: str = "", *, crowned: bool = True,
         **sizes: object) -> WorkedJob:  # fmt: skip
    """A wall case with a crown, and a tall one at its right or left with or without one."""
    up, stands = _AT[at]
    text = _JOB.format(unit=unit, up=up, stands=stands, crown=crown,
                       **{**_SIZES[unit], "deep": "", **sizes})  # fmt: skip
    if crowned:
        own = {key: _SIZES[unit][key] for key in ("drop", "out")}
        text += ('[run.tall.crown]\nmoulding = "crown"\ndrop = {drop}\nprojection = {out}\n'
                 .format(**own))  # fmt: skip
    return work_out(read(text))


def _crown(found: WorkedJob, key: str) -> tuple[Run, Trim]:
    run = next(each for each in found.room.runs if each.spec.key == key)
    return run, next(trim for trim in run.trims if trim.kind == "crown")


@pytest.mark.parametrize("inside", ["coped", "mitred"])
@pytest.mark.parametrize("at", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_crown_goes_round_a_deeper_case_of_its_height(unit: str, at: str, inside: str) -> None:
    """The return is as long as one face stands before the other, and p at its mitre (`CROWN`).

    The piece along the wall case ends in the inside corner at the side of the tall one.
    """
    found = _job(unit, at, f'inside = "{inside}"')
    assert found.failures == ()
    (run, low), (deep, high) = _crown(found, "up"), _crown(found, "tall")
    [piece], back = low.along, "left" if at == "right" else "right"
    cut = piece.right if at == "right" else piece.left
    assert cut.kind == ("cope" if inside == "coped" else "inside mitre")
    [turn] = [each for each in high.pieces if each.part.path.endswith(f"{back}_return")]
    rear = turn.left if back == "left" else turn.right
    assert rear.kind == ("square" if inside == "coped" else "inside mitre")
    faces = [trim.along[0].part.placed.z.value for trim in (low, high)]
    out = length(str(_SIZES[unit]["out"]).strip('"'), "in" if unit == "in" else "mm")
    assert turn.part.finished.length.value == faces[1] - faces[0] + out
    end = run.cases[0].overall_width.value + out
    assert piece.part.finished.length.value == end
    told = " ".join(str(step.text) for step in trim_steps(found.room, deep, high))
    assert "not at the wall" in told


def test_a_sixteenth_off_is_caught() -> None:
    """Either piece at the corner moved along, up, or out by a sixteenth closes no more."""
    found = _job()
    (run, low), (deep, high) = _crown(found, "up"), _crown(found, "tall")
    assert not list(beside_failures(found.room))
    for owner, trim, piece in (
        (run, low, low.along[-1]),
        (deep, high, next(p for p in high.pieces if p.rear is not None)),
    ):
        for axis in "xyz":
            placed = piece.part.placed
            x, y, z = (
                moved(at, length("1/16") if name == axis else Fraction(0))
                for name, at in zip("xyz", (placed.x, placed.y, placed.z), strict=True)
            )
            here = PlacedAt(x, y, z, placed.orientation)
            off = replace(piece, part=replace(piece.part, placed=here))
            pieces = tuple(off if each is piece else each for each in trim.pieces)
            trims = tuple(replace(each, pieces=pieces) if each is trim else each
                          for each in owner.trims)  # fmt: skip
            runs = tuple(replace(each, trims=trims) if each is owner else each
                         for each in found.room.runs)  # fmt: skip
            assert list(beside_failures(replace(found.room, runs=runs))), (piece.part.path, axis)


def test_a_crown_dies_into_a_case_that_reaches_past_it() -> None:
    """Lower than the tall case's top and out no farther than its front: its end is square."""
    found = _job(crown="to_ceiling = false", crowned=False, tall=95, high=36)
    assert found.failures == ()
    _, low = _crown(found, "up")
    assert low.along[-1].right.kind == "square"
    assert not any(part.path.endswith("right_return") for part in low.parts)


def test_a_crown_over_a_lower_case_turns_back_to_the_wall() -> None:
    """A tall case that ends under the crown's frieze stops nothing."""
    found = _job(crowned=False, tall=80)
    _, low = _crown(found, "up")
    [back] = [piece for piece in low.pieces if piece.part.path.endswith("right_return")]
    assert back.rear is None
    assert back.part.placed.z.value - back.part.finished.length.value == Fraction(0)


def test_a_case_that_ends_within_the_crown_stops_with_what_it_lacks() -> None:
    """Cases to 91 in, their crown to 96: a tall case of 93 ends 3 in below that."""
    found = _job(crowned=False, tall=93)
    [told] = [each for each in found.findings if each.rule == "crown beside a case"]
    assert told.severity is Severity.STOP
    assert (told.measured, told.remedies[0]) == ('3"', 'pantry 3" higher')


@pytest.mark.parametrize(("tall", "deep", "turns"), [(80, "", False), (80, "depth = 11", True)])
def test_a_light_rail_ends_square_at_a_case_that_covers_its_end(
    *, tall: int, deep: str, turns: bool
) -> None:
    """A tall case beside it reaches below and before it; one less deep leaves its end in sight."""
    found = _job(crown="[run.up.light_rail]", crowned=False, tall=tall, deep=deep)
    run = next(each for each in found.room.runs if each.spec.key == "up")
    rail = next(trim for trim in run.trims if trim.kind == "light rail")
    assert any(part.path.endswith("right_return") for part in rail.parts) is turns
    assert found.failures == ()


def test_a_hood_of_its_own_run_has_a_crown_that_goes_round_it() -> None:
    """A short return at either side, each the difference of the faces and p long (`CROWN`)."""
    up, stands = _AT["right"]
    text = _JOB.format(unit="in", up=up, stands=stands, crown="[run.up.light_rail]",
                       **{**_SIZES["in"], "deep": ""})  # fmt: skip
    text = text.replace(
        'kind = "tall"', 'kind = "hood"\nappliance = "liner"\nover = "top"\ndepth = 18'
    ).replace("height = 91", "height = 37")
    text = text.replace("width = 30\nheight = 37\n\n", "width = 36\nheight = 37\n")
    text += """[run.tall.crown]
moulding = "crown"
drop = "2 7/8"
projection = "2 1/4"
[case.plates]
kind = "wall"
width = 30
height = 37
[run.on]
cases = ["plates"]
on = "back"
after = "pantry"
left = "flush"
right = "open"
[run.on.crown]
moulding = "crown"
drop = "2 7/8"
projection = "2 1/4"
[case.pots]
kind = "base"
width = 30
[run.low]
cases = ["pots", "top"]
[appliance.top]
width = 30
cooks = true
clear_above = 30
[appliance.liner]
width = "28 3/8"
height = 10
depth = "11 1/4"
above_cooking = 27
duct = 6
duct_back = 7
"""
    found = work_out(read(text))
    assert found.failures == ()
    run, crown = _crown(found, "up")
    rail = next(trim for trim in run.trims if trim.kind == "light rail")
    assert any(part.path.endswith("right_return") for part in rail.parts), "under a higher hood"
    _, crown = _crown(found, "tall")
    faces = [_crown(found, key)[1].along[0].part.placed.z.value for key in ("up", "tall", "on")]
    returns = [piece for piece in crown.pieces if piece.rear is not None]
    assert [each.part.finished.length.value for each in returns] == [
        faces[1] - faces[0] + length("2 1/4"), faces[1] - faces[2] + length("2 1/4"),
    ]  # fmt: skip
