"""Finishing, and the day of hanging."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.checks.words import kilograms
from casewright.dims import Dim, Measure, Unit, mark_of, measure_of
from casewright.install.hanging import Hanging, WallHanging
from casewright.install.order import Lift
from casewright.install.stud_map import CaseScrews, WallScrew
from casewright.outputs.blocks import CheckList, Heading, Step
from casewright.outputs.inlines import Strong
from casewright.packet.wall_page import wall_section
from casewright.packet.words import edge_words
from casewright.room.model import Room
from casewright.web.shop_lines import caution_line, line_of, size_text
from casewright.web.shop_schema import Line, ShopCard, ShopFigure, ShopRow, ShopTick

__all__ = ["finishing_cards", "hanging_cards"]

_FINISHING = (
    "Vapours: open the windows, no flame, pilot light, heater or spark. Rags with oil dry flat "
    "outdoors, never in a heap. What the tin and its data sheet say comes first."
)
_LIFT = (
    "A weight shown is no permission to lift. The ledger or a jack carries a case and a helper "
    "steadies it until its last screw is in; doors, drawers and loose shelves stay off."
)
_CABLES = (
    "Cables and pipes run up, down and across from outlets, switches and taps. Switch the circuit "
    "off, probe with a thin nail, and ask the trade where you cannot tell."
)

_SIDEWAYS = "Circuit off, find the cable, and bore only once you know where it runs."


def finishing_cards(room: Room) -> Iterator[ShopCard]:
    """A card for each case and its fronts, and for what a run has of its own."""
    for case in room.cases:
        yield _finish_card(
            f"finish.{case.key}", case.spec.title, tuple(_finished(case)), _edges(case)
        )
    for run in room.runs:
        own = tuple(
            _tick("finished", part.path, f"{part.mark} {part.title}", (part.path,))
            for part in run.own_parts
        )
        if own:
            yield _finish_card(f"finish.{run.spec.key}", run.spec.title, own, ())


def _finish_card(
    key: str, title: str, ticks: tuple[ShopTick, ...], edges: tuple[Line, ...]
) -> ShopCard:
    return ShopCard(
        id=key,
        station="finish",
        over="Finish",
        title=title,
        lines=(
            ("Try it on a test piece first.",),
            ("Hinges and pulls off, bores masked, dust off.",),
            ("Fill, sand, prime, sand; then as many coats as the tin says, sanded between.",),
            *edges,
        ),
        warns=(caution_line(_FINISHING),),
        ticks=ticks,
        parts=tuple(path for tick in ticks for path in tick.parts),
        timer="paint",
    )


def _edges(case: Case) -> tuple[Line, ...]:
    """What is done to edges before the first coat, each way of it once."""
    ways: dict[str, list[str]] = {}
    for part in case.parts:
        if part.edges:
            ways.setdefault(edge_words(part), []).append(part.mark)
    return tuple(line_of(Strong(f"{', '.join(marks)}: "), way) for way, marks in ways.items())


def _finished(case: Case) -> Iterator[ShopTick]:
    box = tuple(part.path for part in case.parts if not part.front)
    yield _tick("finished", case.key, f"{case.spec.title}, the box", box)
    for front in case.fronts:
        yield _tick("finished", front.path, front.title, front.parts)


def hanging_cards(room: Room, day: Hanging) -> Iterator[ShopCard]:
    """First what is done at every wall, then its marks and its lifts in order, then the rest."""
    steps = list(_told(wall_section(room, day).blocks))
    before = [each for each in steps if each[0] != "Last"]
    after = [each for each in steps if each[0] == "Last"]
    yield from (_step_card(*each) for each in before)
    for key, hang in day.walls.items():
        yield _marks_card(room, key, hang)
        for number, lift in enumerate(hang.lifts, 1):
            yield _lift_card(room, hang, lift, (number, len(hang.lifts)))
    placed = {lift.case.key for hang in day.walls.values() for lift in hang.lifts}
    for case in room.boxes:
        if case.key not in placed:
            yield _place_card(case)
    yield from (_step_card(*each) for each in after)


def _told(blocks: tuple[object, ...]) -> Iterator[tuple[str, int, Step]]:
    title, number = "", 0
    for block in blocks:
        if isinstance(block, Heading):
            title = block.text
        elif isinstance(block, CheckList):
            for step in block.steps:
                number += 1
                yield title, number, step


def _step_card(title: str, number: int, step: Step) -> ShopCard:
    words = size_text(line_of(step.text))
    lead, _, rest = words.partition(". ")
    notes = tuple(line_of(note) for note in step.notes)
    return ShopCard(
        id=f"hang.step.{number}",
        station="hang",
        over="At the wall",
        title=title,
        lead=lead.rstrip("."),
        lines=(((rest,),) if rest else ()) + notes,
        warns=tuple(caution_line(size_text(line_of(each))) for each in step.cautions),
    )


def _marks_card(room: Room, key: str, hang: WallHanging) -> ShopCard:
    unit = room.spec.unit
    rows = [
        ShopRow(label=_BANDS[mark.band], what=(mark.says,), lead="from its left end",
                big=line_of(mark_of(mark.at, unit)))
        for mark in hang.marks
    ]  # fmt: skip
    for high in hang.heights:
        line = high.from_line
        lines = () if line is None or not line.value else (_from_line(line, unit),)
        rows.append(
            ShopRow(label="up", what=(high.says,), lead="above the highest floor", lines=lines,
                    big=line_of(mark_of(high.above_floor, unit)))
        )  # fmt: skip
    rows.extend(_off_limits(hang, unit))
    return ShopCard(
        id=f"hang.marks.{key}", station="hang", over=hang.wall.spec.title, title="Mark the wall",
        lead="Every mark from one end, every height from one line", rows=tuple(rows),
        figures=(_wall(hang),),
    )  # fmt: skip


def _from_line(dim: Dim, unit: Unit) -> Line:
    """How far from the level line, and which way."""
    way = " up" if dim.value > 0 else " down"
    return line_of("from the level line ", replace(mark_of(dim, unit), value=abs(dim.value)), way)


def _off_limits(hang: WallHanging, unit: Unit) -> Iterator[ShopRow]:
    """Where no wall screw goes, and where a cable may lie sideways."""
    for strip in hang.strips:
        yield ShopRow(
            label="no screw", what=(f"above and below: {strip.thing.spec.title}",),
            lead="from its left end", big=line_of(*_from_to(strip.left, strip.right, unit)),
        )  # fmt: skip
    for run in hang.cables:
        yield ShopRow(
            label="cable", what=(f"one may lie between {run.says}",), lead="from its left end",
            big=line_of(*_from_to(run.left, run.right, unit)),
            lines=(line_of("above the floor ", *_from_to(run.low, run.high, unit)),),
            warns=(caution_line(_SIDEWAYS),),
        )  # fmt: skip


def _from_to(low: Fraction, high: Fraction, unit: Unit) -> tuple[Measure, str, Measure]:
    return Measure(low, unit), " to ", Measure(high, unit)


_BANDS = {"hung": "above", "standing": "below", "": "wall"}


def _lift_card(room: Room, hang: WallHanging, lift: Lift, place: tuple[int, int]) -> ShopCard:
    case, unit = lift.case, room.spec.unit
    screws = next((each for each in hang.screws if each.place.case.key == case.key), None)
    shims = [
        ShopRow(label="shim", what=(f"{shim.says}, at the {shim.depth}",),
                lead="under it", big=line_of(measure_of(shim.shim, unit)))
        for shim in hang.floor_shims
        if lift.place.left.value <= shim.at.value <= lift.place.right.value
    ]  # fmt: skip
    return ShopCard(
        id=f"hang.lift.{case.key}",
        station="hang",
        over=f"{hang.wall.spec.title}: lift {place[0]} of {place[1]}",
        title=case.spec.title,
        lead="left side at",
        big=line_of(mark_of(lift.place.left, unit)),
        lines=(
            line_of("Right side at ", mark_of(lift.place.right, unit), ", underside ",
                    mark_of(lift.place.bottom, unit), " above the highest floor"),
            (f"{kilograms(room, lift.weight)}; {lift.because}",),
        ),
        warns=(caution_line(_LIFT), caution_line(_CABLES)),
        figures=(_lifted(case, hang),),
        rows=(*shims, *(_screws(screws, room) if screws else ())),
        ticks=tuple(_hung(case)),
        parts=tuple(part.path for part in case.parts),
    )  # fmt: skip


def _lifted(case: Case, hang: WallHanging) -> ShopFigure:
    says = f"{case.spec.title} at its place on the {hang.wall.spec.title}"
    return ShopFigure(name=f"lift.{case.key}", says=says, key=f"at.{case.key}")


def _wall(hang: WallHanging) -> ShopFigure:
    spec = hang.wall.spec
    return ShopFigure(
        name=f"wall.{spec.key}", says=f"{spec.title} with its marks, studs and wall screws"
    )


def _screws(found: CaseScrews, room: Room) -> Iterator[ShopRow]:
    for screw in found.screws:
        yield _screw(screw, room)


def _screw(screw: WallScrew, room: Room) -> ShopRow:
    unit = room.spec.unit
    what = (f"Wall screws through the {screw.row}",)
    if screw.strip is not None:
        warns = (caution_line(f"No screw here: {screw.strip.thing.spec.title}"),)
        return ShopRow(label="stud", what=what, warns=warns)
    low, high = screw.up
    lines = (
        line_of(measure_of(low, unit), " and ", measure_of(high, unit), " up from its lower edge"),
        line_of("stud ", mark_of(screw.stud, unit), " from the wall's left end; shim ",
                measure_of(screw.shim, unit)),
        line_of("screw ", measure_of(screw.length, unit), ", bites ",
                measure_of(screw.bite, unit)),
    )  # fmt: skip
    deep: tuple[Line, ...] = (
        () if screw.depth == "right" else (caution_line(f"It bites {screw.depth}."),)
    )
    if screw.cable is not None:
        said = f"A cable may lie here, between {screw.cable.says}. {_SIDEWAYS}"
        deep = (caution_line(said), *deep)
    return ShopRow(
        label="stud", what=what, lead="inside, from the left side",
        big=line_of(mark_of(screw.inside, unit)), lines=lines, warns=deep,
    )  # fmt: skip


def _place_card(case: Case) -> ShopCard:
    return ShopCard(
        id=f"hang.place.{case.key}", station="hang", over="At the wall", title=case.spec.title,
        lines=(
            ("Fasten it in its place.",),
            ("No wall is surveyed for it: its place is where it was planned by eye.",),
        ),
        warns=(caution_line(_LIFT), caution_line(_CABLES)), ticks=tuple(_hung(case)),
        parts=tuple(part.path for part in case.parts),
    )  # fmt: skip


def _hung(case: Case) -> Iterator[ShopTick]:
    box = tuple(part.path for part in case.parts if not part.front)
    word = "hung" if case.spec.kind == "wall" else "in its place"
    yield _tick("hung", case.key, f"{case.spec.title} {word}", box)
    for front in case.fronts:
        yield _tick("hung", front.path, f"{front.title} hung", front.parts)


def _tick(kind: str, path: str, words: str, parts: tuple[str, ...]) -> ShopTick:
    label = line_of(Strong(words[:1].upper() + words[1:]))
    return ShopTick.model_validate(
        {"key": f"{kind}:{path}", "kind": kind, "words": (path,), "label": label, "parts": parts}
    )
