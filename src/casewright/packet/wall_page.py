"""At the wall: cases hung, stood, joined and scribed, in order, with what each step needs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.buying.wall import seam_screw, seam_sums
from casewright.casework.cases import Case
from casewright.casework.cautions import CAUTIONS
from casewright.dims import Dim, Measure, Unit, as_said, joined, measure_of, tell
from casewright.install.hanging import Hanging
from casewright.outputs.blocks import Block, CheckList, Heading, Paragraph, Step
from casewright.outputs.document import Section
from casewright.outputs.inlines import Inline, Link, PageNumber, Rich, Strong
from casewright.packet.hanging_pages import sheet_anchor
from casewright.packet.island_steps import island_steps
from casewright.packet.last_steps import last_steps
from casewright.packet.words import unfold
from casewright.room.model import Room, Run
from casewright.room.style_numbers import told_style
from casewright.room.wall_fixing import WallFixing, wall_fixings

__all__ = ["HANGING", "wall_section"]

HANGING = "hanging"
"""Anchor of the section."""

_WALL = (
    "Cables and pipes run up, down and across from outlets, switches and taps: do not bore there. "
    "Switch the circuit off, and ask the trade where you cannot tell. Eyes protected."
)
_LIFT = (
    "Nobody holds a case up while its screws are driven: the ledger or a jack carries it, and a "
    "helper steadies it until the last screw is in. Stand on a firm step, not on a case."
)
_TIP = (
    "A case that is not yet screwed to the wall can tip: leave its doors and drawers off and "
    "nothing in it."
)
_CARRIES = (
    "What a wall carries is not worked out here: it depends on the studs, the screws and what is "
    "put in. Where a case has fewer than two studs behind it, fasten a rail across studs first, "
    "or join it to its neighbours. Local codes and the screw maker's tables come first."
)


def wall_section(room: Room, day: Hanging) -> Section:
    """Every case to its wall: those that hang, then those that stand, then fillers and doors.

    Parameters
    ----------
    day
        Of hanging: its sheets are led to.
    """
    fixings = {fixing.case: fixing for fixing in wall_fixings(room)}
    hung = [case for case in room.boxes if case.spec.is_hung]
    free = room.in_islands
    standing = [case for case in room.boxes if not case.spec.is_hung and case.key not in free]
    blocks: list[Block] = [Paragraph(_planned(room, day) + _CARRIES)]
    number = 1
    for title, steps in (
        ("First", (_studs(day),)),
        ("Cases that hang", tuple(_hung(room, hung, fixings, day)) if hung else ()),
        ("Cases that stand", tuple(_standing(room, standing, fixings, day)) if standing else ()),
        ("Islands", tuple(island_steps(room))),
        ("Last", tuple(last_steps(room))),
    ):
        if steps:
            blocks += [Heading(title, 3), CheckList(steps, number)]
            number += len(steps)
    return Section("At the wall", tuple(blocks), HANGING)


def _planned(room: Room, day: Hanging) -> str:
    """What screws are counted by where studs are still to be found."""
    known = {
        place.case.key
        for hang in day.walls.values()
        if hang.wall.spec.studs
        for place in hang.places
    }
    if all(case.key in known or case.key in room.in_islands for case in room.boxes):
        return ""
    studs = as_said(told_style(room, "stud_spacing"), room.spec.unit)
    return tell(
        "Planned for studs {} from middle to middle, where they are not found yet. ", studs
    )


def _studs(day: Hanging) -> Step:
    sheets = tuple(
        unfold(
            Link(hang.wall.spec.title, sheet_anchor(key)), " p. ", PageNumber(sheet_anchor(key)),
            ": its marks, studs, screws, shims and lifts",
        )
        for key, hang in day.walls.items()
    )  # fmt: skip
    return Step(
        "Clear the wall. Find both edges of every stud at three heights and mark the middles; "
        "where a case will hide the hole, probe with a thin nail.",
        sheets,
        (_WALL,),
    )


def _datum(room: Room) -> str:
    """What heights are measured from: one floor for all where a level line goes round."""
    if room.survey.floor is None:
        return "the highest point of the floor under the row"
    return "the highest point of the room's floor: from the level line, never up from the floor"


def _from_line(day: Hanging, unit: Unit, *, hung: bool) -> Iterator[Rich]:
    """Each wall's ledgers, or the tops of what stands there, from the level line."""
    for hang in day.walls.values():
        wanted = {
            (place.bottom if hung else place.top).value
            for place in hang.places
            if place.is_hung is hung and place.case.spec.hood is None
        }
        found: list[Inline] = []
        for mark in hang.heights:
            if mark.from_line is None or mark.above_floor.value not in wanted:
                continue
            way = " up" if mark.from_line.value > 0 else " down"
            size = Measure(abs(mark.from_line.value), unit, mark.from_line.path)
            found += ["; " if found else f"{hang.wall.spec.title}, from the level line: ",
                      Strong(size), way]  # fmt: skip
        if found:
            yield tuple(found)


def _hung(
    room: Room, cases: list[Case], fixings: Mapping[str, WallFixing], day: Hanging
) -> Iterator[Step]:
    unit = room.spec.unit
    yield Step(
        (
            "Draw the ledger's line level on the wall, ",
            Strong(measure_of(room.wall_bottom, unit)),
            f" above {_datum(room)}. Screw the ledger to the studs below it.",
        ),
        tuple(_from_line(day, unit, hung=True)),
    )  # fmt: skip
    yield Step(
        "Set the first case of a row on the ledger; shim the hollows behind its nailers at the "
        "studs, so that a tightened screw does not rack the box; then drive its wall screws and "
        "measure the diagonals once more.",
        tuple(_rows(room, cases, fixings, day)),
        (_LIFT,),
    )
    yield from _joined(room, [run for run in room.runs if run.cases[0].spec.is_hung], day)
    for case in cases:
        if case.spec.hood is not None:
            yield _hood(room, case)
    yield Step("Take the ledger off and fill its holes.")


def _hood(room: Room, case: Case) -> Step:
    """A hood stands out before its neighbours and hangs on its own screws."""
    hood = case.spec.hood
    over = "what is cooked on" if hood is None else hood.over_title
    then = (
        " on a stand until all of its wall screws are in studs, then join it to its neighbours. "
        f"Measure from {over} up to its underside before the liner goes in: no less than both "
        "sheets ask."
    )
    return Step(("Bear ", Link(case.spec.title, case.key), then), (), (CAUTIONS["hood_work"],))


def _standing(
    room: Room, cases: list[Case], fixings: Mapping[str, WallFixing], day: Hanging
) -> Iterator[Step]:
    unit = room.spec.unit
    tops: dict[Fraction, list[Case]] = {}
    for case in cases:
        tops.setdefault(case.height.value, []).append(case)
    lines: list[Rich] = [
        unfold(_links(same), ": top at ", Strong(measure_of(same[0].height, unit)))
        for same in tops.values()
    ]
    yield Step(
        f"Draw a level line on the wall for the tops, measured from {_datum(room)}.",
        (*lines, *_from_line(day, unit, hung=False)),
    )
    if any(part.role == "sleeper" for case in room.cases for part in case.parts):
        toe = room.chain.nodes["style.toe_setback"]
        yield Step(
            (
                "Set the plinths first: shim them level from the highest point",
                _corners(room), " and fasten them. ",
                "The front of a plinth stands ", Strong(measure_of(toe, unit)),
                " behind the front edges of the sides.",
            )
        )  # fmt: skip
    yield Step(
        "Stand the cases up; shim under the sides only, until the tops meet the line and are "
        "level from front to rear. Shim the hollows behind the nailers, then drive the wall "
        "screws.",
        tuple(_rows(room, cases, fixings, day)),
        (_TIP,),
    )
    yield from _joined(room, [
        run for run in room.runs
        if not run.cases[0].spec.is_hung and run.cases[0].key not in room.in_islands
    ], day)  # fmt: skip


def _corners(room: Room) -> str:
    """How the plinth of a diagonal corner comes before those beside it."""
    spec = (case.spec for case in room.cases)
    if not any(each.diagonal is not None and each.toe == "plinth" for each in spec):
        return ""
    return (
        ", that of the corner first, tight to both walls, then those beside it, each clamped to "
        "it end to end and screwed to its end sleeper or its arm with four screws, until all are "
        "level as one,"
    )


def _rows(
    room: Room, cases: list[Case], fixings: Mapping[str, WallFixing], day: Hanging
) -> Iterator[Rich]:
    """Which boards the wall screws go through, a line for each way of it and length of screw."""
    titles = {part.path: part.title for case in cases for part in case.parts}
    lines: dict[tuple[str, tuple[Fraction, ...]], list[Case]] = {}
    screws = _lengths(room, cases, day)
    for case in cases:
        fixing = fixings.get(case.key)
        rows = [titles[path] for path in fixing.rows] if fixing else []
        if len(set(rows)) < len(rows):
            words = "under the top and over the bottom, through the back"
        else:
            words = f"through the {' and the '.join(rows)}" if rows else "none"
        lines.setdefault((words, tuple(screws.get(case.key, ()))), []).append(case)
    for (words, lengths), same in lines.items():
        found = _links(same)
        if words == "none" or not lengths:
            yield unfold(found, ": no nailer, joined to its neighbours")
            continue
        dims = screws[same[0].key]
        sizes: list[Inline] = []
        for length in lengths:
            sizes += [" or " if sizes else "", Strong(measure_of(dims[length], room.spec.unit))]
        sheet = ", as its wall's sheet lists them" if len(lengths) > 1 else ""
        said = f" at every stud{sheet}, {words}"
        yield unfold(found, ": two wall screws of ", tuple(sizes), said)


def _lengths(room: Room, cases: list[Case], day: Hanging) -> dict[str, dict[Fraction, Dim]]:
    """Screws of each case by length, as the sheet of its wall lists them; the usual one else."""
    found: dict[str, dict[Fraction, Dim]] = {}
    for hang in day.walls.values():
        for each in hang.screws:
            own = found.setdefault(each.place.case.key, {})
            for screw in sorted(each.screws, key=lambda one: one.length.value):
                if screw.strip is None:
                    own[screw.length.value] = screw.length
    for case in cases:
        usual = room.chain.nodes.get(f"{case.key}.wall_screw")
        if usual is not None and not found.get(case.key):
            found[case.key] = {usual.value: usual}
    return found


def _links(cases: list[Case]) -> tuple[Inline, ...]:
    found: list[Inline] = []
    for case in cases:
        found += [", " if found else "", Link(case.spec.title, case.key)]
    return tuple(found)


def _joined(room: Room, runs: list[Run], day: Hanging) -> Iterator[Step]:
    rows = [run for run in runs if len(run.cases) > 1]
    if rows:
        yield Step(
            "Set the next case of the row; clamp the front edges flush and join the two with four "
            "joining screws, where plates or shelves hide them. Then its wall screws, and so on "
            "to the end.",
            tuple(
                unfold(_seams(run, day), _seam_screws(room, run))
                for run in rows
            ),
        )  # fmt: skip


def _seam_screws(room: Room, run: Run) -> str:
    """Which screws join its seams: they stay inside the two boards that meet there."""
    found: dict[Fraction, Measure] = {}
    for left, right in run.neighbours:
        screw = seam_screw(left, right, room.spec.unit)
        own = seam_sums(room, left.key, right.key)
        found.setdefault(screw.length, screw.told(own))
    if not found:
        return ""
    return tell("; joining screws of {}", joined(" and ", (found[size] for size in sorted(found))))


def _seams(run: Run, day: Hanging) -> tuple[Inline, ...]:
    """Where the seams of a run are told: on the sheet of its wall, else on its elevation."""
    anchor, words = f"run:{run.spec.key}", ": seams as on its elevation, each from one end"
    if run.spec.on in day.walls:
        anchor, words = sheet_anchor(run.spec.on), ": seams as marked from the wall's left end"
    return (Link(run.spec.title, anchor), " p. ", PageNumber(anchor), words)
