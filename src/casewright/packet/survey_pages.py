"""The survey on paper: a form for each wall, with blanks for what was not read yet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from fractions import Fraction

from casewright.dims import Chain, Dim, Origin, Told, Unit, measure_of, tell
from casewright.drawing import ScaleError, largest
from casewright.drawing.wall_elevation import thing_marks, wall_scene
from casewright.outputs.blocks import (
    Beside,
    Block,
    Callout,
    Column,
    Figure,
    Heading,
    Keep,
    Paragraph,
    Row,
    Table,
)
from casewright.outputs.document import Document, Section, paper_named
from casewright.outputs.inlines import Blank, Inline, Rich, Small, Strong
from casewright.packet.corner_table import corner_blocks, corner_numbers
from casewright.packet.survey_lines import more_lines, survey_lines
from casewright.room.model import Room
from casewright.survey.advice import advise
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.form import SurveyForm, asks_heights, form_place, survey_form
from casewright.survey.network import network
from casewright.survey.next_words import advice_words
from casewright.survey.specs import is_small
from casewright.survey.walls import SurveyedWall, readings_of
from casewright.survey.words import size_of

__all__ = [
    "advice_on",
    "form_numbers",
    "has_doubtful_width",
    "survey_document",
    "survey_sections",
]

_ROUND_MM, _ROW_MM, _CALLOUT_MM = 113.0, 6.0, 9.0  # all else on the page, a row, a doubt
_HOW_MM = 18.0  # of that what only a form has
_LEAST_MM = 45.0  # a smaller drawing tells too little
_BUSY_MM = 100.0  # of the drawing of a wall that takes two pages anyway
_HINGES_MM = 9.0
_COARSE = Fraction(3, 2)  # farther off than a tape strays, so that the form says it [mm]
_AT_MOST = Origin("chosen", "at most, by its tool or as it was judged")
_HOW = (
    "Tape along the wall from its left end. Read each width at the back, along the wall, and "
    "where the fronts will be. One level line goes round the whole room: down to the floor and up "
    "to the ceiling at each numbered place. Casings count to their outer edges. Write every "
    "reading down, then read it once more."
)
_WIDTHS = (
    Column(""), Column("Above the floor"), Column("At the"), Column("Width", share=1.0),
)  # fmt: skip
_STATIONS = (
    Column(""), Column("From the left"), Column("Down", share=1.0), Column("Up", share=1.0),
    Column("Floor to ceiling", share=1.0),
)  # fmt: skip
_THINGS = (
    Column(""), Column("On the wall", share=1.4), Column("From the left", share=1.0),
    Column("Width", share=1.0), Column("To the right", share=1.0), Column("Lower edge", share=1.0),
    Column("Upper edge", share=1.0), Column("Stands out", share=0.8),
)  # fmt: skip
_ROWS = 4  # of things on a wall, empty ones filling up


def survey_document(room: Room, walls: Sequence[SurveyedWall], fingerprint: str) -> Document:
    """The survey as a printed document: a page or two for each wall, then corners and way in.

    Parameters
    ----------
    walls
        Those to print: the room's, or bare ones to take out and fill in.
    """
    spec = room.spec
    sections = [_wall(room, wall) for wall in walls]
    rest = corner_blocks(room.survey, spec.unit)
    unit = "inches" if spec.unit == "in" else "millimetres"
    return Document(
        title="Survey",
        job=spec.name,
        fingerprint=fingerprint,
        unit=spec.unit,
        paper=paper_named(spec.paper),
        sections=(*sections, Section("Corners and the way in", rest, "corners")),
        unit_note=f"Sizes in {unit}",
    )


def survey_sections(room: Room) -> tuple[Section, ...]:
    """The room as measured, for a packet: one section of all walls; none without a survey.

    The head of a wall and its drawing stay together, so that each wall begins a page.
    """
    walls = tuple(room.survey.walls.values())
    if not walls:
        return ()
    blocks: list[Block] = []
    for wall in walls:
        form = survey_form(wall, room.spec.unit)
        title = Heading(wall.spec.title, 2, f"wall:{wall.spec.key}")
        blocks += [
            Keep((title, *_head(room, form, _HOW_MM))),
            *_tables(form, room.spec.unit),
        ]
    rest = corner_blocks(room.survey, room.spec.unit)
    blocks.append(Keep((Heading("Corners and the way in", 2, "corners"), *rest)))
    return (Section("The room as measured", tuple(blocks), "survey"),)


def _wall(room: Room, wall: SurveyedWall) -> Section:
    form = survey_form(wall, room.spec.unit)
    head = _head(room, form, 0.0)
    blocks = (Paragraph(_HOW, soft=True), *head, *_tables(form, room.spec.unit))
    return Section(wall.spec.title, blocks, f"wall:{wall.spec.key}")


def _head(room: Room, form: SurveyForm, more: float) -> Iterator[Block]:
    """What the readings of a wall come to, and its drawing.

    Parameters
    ----------
    more
        Of the page that is free here and is not on a form [mm].
    """
    unit = room.spec.unit
    paper = paper_named(room.spec.paper)
    yield from _judged(room, form.wall)
    scene, free = wall_scene(form, unit), paper.text_height_mm - _height(room, form) + more
    words = f"{form.wall.spec.title} as measured, with its marks"
    for high in (free, _BUSY_MM) if free >= _LEAST_MM else (_BUSY_MM,):
        with suppress(ScaleError):
            plot = largest(scene, paper.text_width_mm, high, unit, fine=True)
            yield Figure(plot, alternative=words)
            return


def _tables(form: SurveyForm, unit: Unit) -> Iterator[Block]:
    yield Beside(
        (
            (
                Heading("Widths, from end to end", 3),
                Table(_WIDTHS, tuple(_width_rows(form, unit)), small=True),
            ),
            (
                Heading("Floor and ceiling, from the level line", 3),
                Table(_STATIONS, tuple(_station_rows(form, unit)), small=True),
            ),
        ),
        (0.9, 1.2),
    )
    yield Heading("On the wall, casings included", 3)
    yield Table(_THINGS, tuple(_thing_rows(form, unit)), small=True)
    yield from survey_lines(form, unit)


def _height(room: Room, form: SurveyForm) -> float:
    """What stands round the drawing of a wall takes about so much [mm]."""
    rows = max(len(form.widths), len(form.stations)) + max(_ROWS, len(form.wall.things) + 1)
    path = f"{form.wall.place.path}."
    doubts = sum(doubt.paths[0].startswith(path) for doubt in room.survey.doubts)
    counters = sum(thing.spec.kind == "counter" for thing in form.wall.things)
    rows += counters + more_lines(form)
    return _ROUND_MM + rows * _ROW_MM + doubts * _CALLOUT_MM


def _judged(room: Room, wall: SurveyedWall) -> Iterator[Block]:
    """What counts, what is doubtful, and what to read next."""
    unit = room.spec.unit
    counts: list[Inline] = []
    width = None if has_doubtful_width(room, wall) else wall.width
    for words, dim in (
        ("narrowest ", width), ("highest floor to lowest ceiling ", wall.clear),
        ("floor falls ", wall.fall),
    ):  # fmt: skip
        if dim is not None:
            counts += ["; " if counts else "Counts: ", words, Strong(measure_of(dim, unit))]
    if counts:
        yield Paragraph((*counts, "."))
    for doubt in room.survey.doubts:
        if doubt.paths[0].startswith(f"{wall.place.path}."):
            yield Callout("ask", doubt.says.capital + ".", "Read again")
    words = advice_on(room, wall)
    if words:
        yield Callout("measure first", words + ".", "Read next")


def has_doubtful_width(room: Room, wall: SurveyedWall) -> bool:
    """Whether a width of a wall is in doubt, so that none of them counts yet."""
    widths = f"{wall.place.path}.width_"
    return any(path.startswith(widths) for doubt in room.survey.doubts for path in doubt.paths)


def advice_on(room: Room, wall: SurveyedWall, chain: Chain | None = None) -> Told:
    """The further reading of a wall that would cut the risk most, doubtful ones left out.

    Parameters
    ----------
    chain
        On which its numbers are entered; None: one of their own.

    Returns
    -------
    In words, with what it would do; empty where none would tell much more.
    """
    tape, unit = room.spec.survey.next_accuracy, room.spec.unit
    path = f"{wall.place.path}."
    doubtful = frozenset(
        each.removeprefix(path)
        for doubt in room.survey.doubts
        for each in doubt.paths
        if each.startswith(path)
    )
    advice = advise(network(wall, tape, unit, doubtful))
    if advice is None:
        return Told()
    return advice_words(advice, wall, tape, unit, form_place(chain or Chain(), wall))


def form_numbers(room: Room, chain: Chain) -> None:
    """Enter what the forms of a room work out: usual places, and what a reading would tell."""
    for wall in room.survey.walls.values():
        form = survey_form(wall, room.spec.unit, chain)
        for dim in wall.read.values():
            _within(form, dim)
        advice_on(room, wall, chain)
    corner_numbers(room.survey, room.spec.unit, chain)


def _read(form: SurveyForm, dim: Dim | None, unit: Unit) -> Rich:
    """A reading with its tool where it is not the tape, and how far it may be off; or a blank."""
    if dim is None:
        return Blank(15.0)
    tool = dim.origin.note if dim.origin else ""
    said = Told("" if tool == "tape" else tool)
    within = _within(form, dim)
    if within is not None:
        said = tell("{} ± {}" if said else "{}± {}", said, size_of(within, unit))
    size = Strong(measure_of(dim, unit))
    return (size, " ", Small(said)) if said else size


def _within(form: SurveyForm, dim: Dim) -> Dim | None:
    """How far a reading may be off, where that is farther than a tape strays [mm]."""
    name = dim.path.removeprefix(f"{form.wall.place.path}.")
    reading = dict(readings_of(form.wall.spec)).get(name)
    if reading is None or reading.accuracy.limit <= _COARSE:
        return None
    path = f"{form.place.path}.{name}.within"
    known = form.place.chain.nodes.get(path)
    if known is None:
        known = form.place.let(f"{name}.within", Dim("by", (dim,), reading.accuracy.limit))
        known.origin = _AT_MOST
    return known


def _width_rows(form: SurveyForm, unit: Unit) -> Iterator[Row]:
    for each in form.widths:
        height: Rich = Blank(13.0) if each.height is None else size_of(each.height, unit)
        yield Row((each.mark, height, each.depth, _read(form, each.dim, unit)))


def _station_rows(form: SurveyForm, unit: Unit) -> Iterator[Row]:
    for each in form.stations:
        along = size_of(each.along, unit)
        place: Rich = along if each.depth == "back" else (along, ", at the front")
        yield Row(
            (each.mark, place, *(_read(form, d, unit) for d in (each.down, each.up, each.whole)))
        )


def _thing_rows(form: SurveyForm, unit: Unit) -> Iterator[Row]:
    marks = thing_marks(form)
    for thing in form.wall.things:
        yield _thing_row(form, thing, marks[thing.spec.key], unit)
    for _ in range(max(1, _ROWS - len(form.wall.things))):
        yield Row(("", Blank(22.0), *(Blank(13.0) for _ in range(6))))


def _thing_row(form: SurveyForm, thing: PlacedThing, mark: str, unit: Unit) -> Row:
    def read(name: str) -> Rich:
        return _read(form, form.wall.read.get(f"fixed.{thing.spec.key}.{name}"), unit)

    spec = thing.spec
    left: Rich = read("left")
    if spec.after is not None:
        left = (*_several(left), " ", Small(f"from {form.wall.spec.thing(spec.after).title}"))
    if spec.centre is not None:
        left = (*_several(read("centre")), " ", Small("middle"))
    lower, upper = asks_heights(spec.kind)
    top = read("top") if spec.height is None or spec.top is not None else (
        *_several(read("height")), " ", Small("high"),
    )  # fmt: skip
    notes = [spec.kind, *([] if spec.built else ["not built yet"])]
    if spec.swing is not None:
        notes.append(f"hinged {spec.swing}")
    said = ", ".join(n for n in notes if n != spec.title)
    words: tuple[Inline, ...] = (f"{spec.title} ", Small(said))
    if spec.kind == "door" and spec.swing is None:
        words += (Small(f"{', ' if said else ''}hinged "), Blank(_HINGES_MM))
    stands = form.wall.at.get(f"fixed.{spec.key}.out")
    out: Rich = Blank(11.0) if stands is None else size_of(stands, unit)
    middle = is_small(spec.kind) and spec.centre is not None
    across: tuple[Rich, ...] = (read("width"), read("right"))
    if middle:
        across = ("" if spec.width is None else across[0], "")
    if is_small(spec.kind) and spec.bottom is not None and spec.top is None:
        top = ""
    heights = (read("bottom") if lower else "", top if upper else _highest(thing, unit))
    return Row((mark, words, left, *across, *heights, out))


def _highest(thing: PlacedThing, unit: Unit) -> Rich:
    """Of a counter: how far its highest place lies under the level line."""
    if thing.spec.kind != "counter":
        return ""
    if thing.highest is None:
        return Blank(15.0)
    return (Strong(measure_of(thing.highest, unit)), " ", Small("under the line"))


def _several(rich: Rich) -> tuple[Inline, ...]:
    return rich if isinstance(rich, tuple) else (rich,)
