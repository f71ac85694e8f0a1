"""The day of hanging on paper: a sheet for each wall, in the order of what is done there."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from fractions import Fraction

from casewright.casework.lifted import lift_path, told_weight
from casewright.dims import Dim, Measure, Unit, as_said, mark_of, measure_of, size_text, tell
from casewright.drawing import Plot, ScaleError, largest
from casewright.drawing.hanging_elevation import hanging_scene
from casewright.install.hanging import Hanging, WallHanging
from casewright.install.levelling import FloorShim
from casewright.install.order import Lift
from casewright.install.stud_map import CaseScrews, WallScrew
from casewright.outputs.blocks import (
    Block,
    Callout,
    Caution,
    Column,
    Figure,
    Heading,
    Keep,
    Paragraph,
    Row,
    Table,
)
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Blank, Inline, Link, PageNumber, Rich, SignMark, Strong
from casewright.packet.screw_table import screw_blocks
from casewright.packet.scribe_blocks import scribe_blocks
from casewright.packet.words import unfold
from casewright.room.model import Room
from casewright.survey.specs import is_small

__all__ = ["hanging_sections", "sheet_anchor"]

_ROUND_MM = 30.0  # of a lying page besides the drawing: the title, the key under it
_KEY = (
    "Every distance runs from one datum: along the wall from its left end, up from the level line "
    "or the highest floor. Bold above: sides and seams of what hangs; below: of what stands; the "
    "rest are studs and what is on the wall. Dots: wall screws, through the boards in broken "
    "lines. Hatched: cables and pipes may run there, up and down; no screw."
)
_KEY_OF_CABLES = (
    " Wide hatching that falls to the right: a cable may lie there, sideways between two outlets."
)
_CABLES = (
    "Cables and pipes run up, down and across from outlets, switches and taps, and a bite over "
    "the limit may meet them in the stud. Switch the circuit off, probe with a thin nail, and ask "
    "the trade where you cannot tell. Gas, wiring and ventilation are for licensed trades; local "
    "codes come first. Eyes protected."
)
_NOWHERE = (
    "Its place along the wall was not read, so no strip is kept free of screws for it. Read it, "
    "write it into the job and print this sheet again; until then nothing is screwed here."
)
_SIDEWAYS = (
    "Between outlets cables mostly run sideways at their height (common practice; local codes "
    "differ). Switch the circuit off, find the cable, and bore there only once you know where it "
    "runs; else take studs outside of that zone, or a rail."
)
_LIFT = (
    "A weight shown is no permission to lift. The ledger or a jack carries a case and a helper "
    "steadies it until its last screw is in; nobody holds it up meanwhile. Doors, drawers and "
    "loose shelves stay off, and what is not screwed to the wall yet can tip."
)
_DEPTHS = {
    "too deep": "In so deep a cable or a pipe may be met in the stud: find what runs in the wall "
    "before driving it, or take a shorter screw.",
    "too shallow": "It holds too little: take a longer screw, or fasten a rail first.",
}
_SCREWS = (
    Column("Through the", share=1.2), Column("Stud, from the wall's left", "size"),
    Column("Inside, from the left side", "size"),
    Column("Up from the board's lower edge", "right"),
    Column("Behind it", "size"), Column("Screw", "size"), Column("Bites", "size"),
)  # fmt: skip
_LIFTS = (
    Column(""), Column("Case", share=1.4), Column("Weight", "right"), Column("Why now", share=2.0),
    Column("Page", "right"),
)  # fmt: skip


def sheet_anchor(wall: str) -> str:
    """Anchor of a wall's sheet."""
    return f"hanging:{wall}"


def hanging_sections(room: Room, day: Hanging, paper: Paper) -> tuple[Section, ...]:
    """For each wall that cases go to its picture, on a lying page, and what is done there."""
    return tuple(section for key in day.walls for section in _sheets(room, day, paper, key))


def _sheets(room: Room, day: Hanging, paper: Paper, key: str) -> Iterator[Section]:
    """The last of the walls has what screws are worth, for all of them."""
    hang, is_last = day.walls[key], key == tuple(day.walls)[-1]
    worth = tuple(screw_blocks(room, day.worths)) if is_last else ()
    title = hang.wall.spec.title
    on, figures = _picture(room, hang, paper)
    picture = (*figures, Paragraph(_KEY + (_KEY_OF_CABLES if hang.cables else ""), soft=True))
    yield Section(f"Hanging: {title}", picture, sheet_anchor(key), paper=on)
    yield Section(f"Lifts and screws: {title}", (*_work(room, hang, paper), *worth))


def _picture(room: Room, hang: WallHanging, paper: Paper) -> tuple[Paper, tuple[Block, ...]]:
    """The wall on the page, lying or standing, on which it is larger."""
    scene, unit = hanging_scene(hang, room.spec.unit), room.spec.unit
    drawn: list[tuple[Fraction, int, Paper, Plot]] = []
    for n, page in enumerate((paper.turned, paper)):
        with suppress(ScaleError):
            tall = page.text_height_mm - _ROUND_MM
            plot = largest(scene, page.text_width_mm, tall, unit, fine=True)
            drawn.append((plot.scale or Fraction(0), n, page, plot))
    if not drawn:
        return paper, ()
    _, _, page, plot = min(drawn, key=lambda each: each[:2])
    words = f"{hang.wall.spec.title}: marks, studs and wall screws"
    return page, (Figure(plot, alternative=words),)


def _work(room: Room, hang: WallHanging, paper: Paper) -> Iterator[Block]:
    unit = room.spec.unit
    yield from _asked(hang)
    yield Keep((Heading("Lifts, in order", 3), Caution(_LIFT), _lifts(room, hang)))
    yield from _screws(hang, unit)
    yield from _levels(hang, unit)
    yield from _behind(room, hang)
    yield from scribe_blocks(hang, unit, paper)


def _cables(hang: WallHanging) -> Iterator[Block]:
    """What screws go in between two outlets."""
    for run in hang.cables:
        titles = [
            case.place.case.spec.title
            for case in hang.screws
            if any(screw.cable == run and screw.strip is None for screw in case.screws)
        ]
        if titles:
            head = f"{', '.join(titles)}: a cable may lie between {run.says}"
            yield Callout("look", _SIDEWAYS, head)


def _asked(hang: WallHanging) -> Iterator[Block]:
    """What must be there before anything is hung."""
    if not hang.wall.spec.studs:
        yield Callout(
            "ask",
            "No studs were found yet: find both edges of each at three heights, write their "
            "middles into the job and print this sheet again. Until then nothing is screwed here.",
            "Studs",
        )
    nowhere = [
        thing.spec.title
        for thing in hang.wall.things
        if is_small(thing.spec.kind) and thing.left is None
    ]
    if nowhere:
        yield Callout("ask", _NOWHERE, f"Where is: {', '.join(nowhere)}")
    for depth, words in _DEPTHS.items():
        titles = [
            case.place.case.spec.title
            for case in hang.screws
            if any(screw.depth == depth and screw.strip is None for screw in case.screws)
        ]
        if titles:
            yield Callout("look", words, f"{', '.join(titles)}: a screw bites {depth}")
    yield from _cables(hang)
    rails: dict[str, list[str]] = {}
    for case in hang.screws:
        if case.asks_for_rail:
            rails.setdefault(_rail(case), []).append(case.place.case.spec.title)
    for words, titles in rails.items():
        yield Callout("ask", words, f"A rail for {', '.join(titles)}")


def _rail(case: CaseScrews) -> str:
    count = "one stud" if case.hold == "one column" else "no stud"
    boards = " and ".join(dict.fromkeys(title for title, _, _ in case.rows))
    return (
        f"A wall case is asked to hang on two studs; {count} lies here that screws may go into. "
        f"Before it goes up, fasten blocking between studs, or a rail across two of them flush "
        f"with the wall's board, behind the {boards}. Until then the case does not count as hung."
    )


def _lifts(room: Room, hang: WallHanging) -> Table:
    rows = [
        Row(
            (
                str(n), Link(lift.case.spec.title, lift.case.key), _weight(room, lift),
                lift.because, PageNumber(lift.case.key),
            )
        )
        for n, lift in enumerate(hang.lifts, start=1)
    ]  # fmt: skip
    return Table(_LIFTS, tuple(rows))


def _weight(room: Room, lift: Lift) -> Measure:
    path = lift_path(lift.case.key, "bare_weight")
    return told_weight(lift.weight, room.spec.unit, path, fine=True)


def _screws(hang: WallHanging, unit: Unit) -> Iterator[Block]:
    rows = [row for case in hang.screws for row in _case_rows(case, hang, unit)]
    if not rows:
        return
    yield Keep((Heading("Wall screws, two at each place", 3), Caution(_CABLES)))
    yield Paragraph(
        "Bore for them from inside, before the case is lifted. Behind it: the shim between case "
        "and wall, as read or as reckoned with, the wall's lean included; where it is less, the "
        "screw bites deeper.",
        soft=True,
    )
    yield Table(_SCREWS, tuple(rows), small=True)


def _case_rows(case: CaseScrews, hang: WallHanging, unit: Unit) -> Iterator[Row]:
    title = case.place.case.spec.title
    if not case.screws:
        if case.hold == "stands" and hang.wall.studs:
            unheld = ": no stud found behind it; a rail, or join it to neighbours that are held"
            yield Row(((Strong(title), unheld),))
        return
    yield Row(((Strong(title), _held(case)),))
    for screw in case.screws:
        yield Row(tuple(_cells(screw, unit)))


def _held(case: CaseScrews) -> str:
    words = {
        "two columns": ": screws at two studs or more",
        "one column": ": one stud, a rail is asked for",
        "no column": ": no stud, a rail is asked for",
        "studs not found": ": studs not found yet",
        "stands": ": stands on the floor; join it to its neighbours too",
    }
    return words[case.hold]


def _cells(screw: WallScrew, unit: Unit) -> Iterator[Rich]:
    yield screw.row
    yield Strong(mark_of(screw.stud, unit))
    yield mark_of(screw.inside, unit)
    if screw.strip is not None:
        yield (SignMark("look"), " none here")
        yield from (screw.strip.thing.spec.title, "", "")
        return
    low, high = (measure_of(dim, unit) for dim in screw.up)
    yield (low, " and ", high)
    yield _shim(screw.shim, unit)
    length = measure_of(screw.length, unit)
    yield length if screw.cable is None else (SignMark("look"), " a cable may lie: ", length)
    bite = measure_of(screw.bite, unit)
    yield bite if screw.depth == "right" else (SignMark("look"), " ", bite)


def _levels(hang: WallHanging, unit: Unit) -> Iterator[Block]:
    """Shims under the row that stands."""
    shims: dict[Fraction, dict[str, FloorShim]] = {}
    for shim in hang.floor_shims:
        shims.setdefault(shim.at.value, {})[shim.depth] = shim
    if not shims:
        return
    depths = sorted({shim.depth for shim in hang.floor_shims})
    columns = (
        Column("Sides of", share=2.0), Column("From the wall's left", "size"),
        *(Column(f"Shim at the {depth}", "size") for depth in depths), Column("As set", share=1.0),
    )  # fmt: skip
    rows = []
    for at in sorted(shims):
        known = shims[at]
        one = next(iter(known.values()))
        cells: list[Rich] = [one.says, mark_of(one.at, unit)]
        cells += [_or_none(known[d].shim if d in known else None, unit) for d in depths]
        rows.append(Row((*cells, Blank())))
    yield Keep(
        (
            Heading("Under the cases that stand", 3),
            Paragraph(
                "All of them are set level with the highest floor of the room, which gets none. "
                "Shim under sides only; level from left to right and from front to rear, then "
                "look at the diagonals again."
            ),
            Table(columns, tuple(rows), small=True),
        )
    )


def _or_none(dim: Dim | None, unit: Unit) -> Rich:
    return "" if dim is None else Strong(_shim(dim, unit))


def _shim(dim: Dim, unit: Unit) -> str | Measure:
    """A shim as it is read; one that no tape shows is none."""
    measure = measure_of(dim, unit)
    return "0" if measure.text == "~0" else measure


def _behind(room: Room, hang: WallHanging) -> Iterator[Block]:
    """Shims behind rows, where the wall was read along a straight edge."""
    if not hang.wall_shims:
        return
    unit, titles = room.spec.unit, {run.spec.key: run.spec.title for run in room.runs}
    rows: dict[tuple[str, Fraction], list[Row]] = {}
    for shim in hang.wall_shims:
        thick = _shim(shim.shim, unit)
        bears = "bears" if str(thick) == "0" or not shim.shim.value else ""
        cells = (mark_of(shim.at, unit), Strong(thick), bears)
        rows.setdefault((shim.run, shim.height), []).append(Row(cells))
    levels = {
        shim.height: as_said(shim.level, unit, size_text(shim.height, unit))
        for shim in hang.wall_shims
    }
    words: list[Inline] = ["A straight row bears where the table shows 0; everywhere else "]
    words.append("the shim goes in before the screw is tightened, or the case is racked.")
    columns = (Column("From the wall's left", "size"), Column("Shim", "size"), Column("", share=1))
    groups = [
        row
        for (run, height), own in rows.items()
        for row in (Row((tell("{}: {} above the floor", titles[run], levels[height]),)), *own)
    ]
    yield Keep(
        (
            Heading("Behind the cases", 3),
            Paragraph(unfold(*words)),
            Table(columns, tuple(groups), small=True),
        )
    )
