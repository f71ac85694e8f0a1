"""The day of hanging: what is done at every wall, marks, lifts, islands, the last steps."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.casework.cautions import CAUTIONS
from casewright.checks.words import kilograms
from casewright.dims import Dim, Measure, Unit, mark_of, measure_of
from casewright.install.hanging import Hanging, WallHanging
from casewright.install.order import Lift
from casewright.install.stud_map import CaseScrews, WallScrew
from casewright.room.model import Room
from casewright.web.shop_floor import floor_cards
from casewright.web.shop_lines import caution_line, line_of
from casewright.web.shop_marks import SIDEWAYS, marks_cards
from casewright.web.shop_notes import part_tick
from casewright.web.shop_schema import Line, ShopCard, ShopFigure, ShopRow, ShopTick
from casewright.web.shop_things import box_parts, things
from casewright.web.shop_wall_steps import WallSteps

__all__ = ["hanging_cards"]

_LIFT = (
    "A weight shown is no permission to lift. The ledger or a jack carries a case and a helper "
    "steadies it until its last screw is in; doors, drawers and loose shelves stay off."
)
_CABLES = (
    "Cables and pipes run up, down and across from outlets, switches and taps. Switch the circuit "
    "off, probe with a thin nail, and ask the trade where you cannot tell."
)


def hanging_cards(room: Room, day: Hanging) -> Iterator[ShopCard]:
    """What is done at every wall, each wall's marks and lifts in order, islands, then the rest."""
    steps = WallSteps(room, day)
    yield from steps.cards(*(title for title in steps.titles if title not in ("Islands", "Last")))
    for key, hang in day.walls.items():
        yield from marks_cards(key, hang, room.spec.unit)
        for number, lift in enumerate(hang.lifts, 1):
            yield _lift_card(room, hang, lift, (number, len(hang.lifts)))
    yield from floor_cards(room)
    yield from steps.cards("Islands")
    placed = {lift.case.key for hang in day.walls.values() for lift in hang.lifts}
    for case in room.boxes:
        if case.key not in placed:
            yield _place_card(room, case)
    yield from steps.cards("Last")


def _lift_card(room: Room, hang: WallHanging, lift: Lift, place: tuple[int, int]) -> ShopCard:
    case, unit = lift.case, room.spec.unit
    screws = next((each for each in hang.screws if each.place.case.key == case.key), None)
    shims = [] if lift.place.is_hung else [
        ShopRow(label="shim", what=(f"{shim.says}, at the {shim.depth}",),
                lead="under it", big=line_of(measure_of(shim.shim, unit)))
        for shim in hang.floor_shims
        if lift.place.left.value <= shim.at.value <= lift.place.right.value
        and not _is_nothing(shim.shim, unit)
    ]  # fmt: skip
    return ShopCard(
        id=f"hang.lift.{case.key}",
        station="hang",
        over=f"{hang.wall.spec.title}: lift {place[0]} of {place[1]}",
        title=case.spec.title,
        lead="left side from the wall's left end",
        big=line_of(mark_of(lift.place.left, unit)),
        lines=(
            line_of("Right side at ", mark_of(lift.place.right, unit), *_height(hang, lift, unit)),
            (f"{kilograms(room, lift.weight)}; {lift.because}",),
        ),
        warns=(caution_line(_LIFT), caution_line(_CABLES)),
        figures=(_lifted(case, hang),),
        rows=(*shims, *(_screws(screws, room) if screws else ())),
        ticks=tuple(_hung(case)),
        parts=tuple(part.path for part in case.parts),
    )  # fmt: skip


def _height(hang: WallHanging, lift: Lift, unit: Unit) -> Iterator[str | Measure]:
    """How high what hangs begins and what stands ends: from the level line where there is one."""
    place = lift.place
    word, dim = ("underside", place.bottom) if place.is_hung else ("top", place.top)
    mark = next((m for m in hang.heights if m.above_floor.value == dim.value), None)
    far = None if mark is None else mark.from_line
    if far is None:
        yield from (f"; {word} ", mark_of(dim, unit), " above the highest floor")
        return
    size = Measure(abs(far.value), unit, far.path, mark_of(dim, unit).precision)
    way = "up" if far.value > 0 else "down"
    yield from (f"; {word} ", size, f" {way} from the level line")


def _is_nothing(dim: Dim, unit: Unit) -> bool:
    """Whether a tape shows nothing."""
    return not any(sign in "123456789" for sign in measure_of(dim, unit).text)


def _lifted(case: Case, hang: WallHanging) -> ShopFigure:
    says = f"{case.spec.title} at its place on the {hang.wall.spec.title}"
    return ShopFigure(name=f"lift.{case.key}", says=says, key=f"at.{case.key}")


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
        line_of("stud ", mark_of(screw.stud, unit), " from the wall's left end; ",
                *(("no shim",) if _is_nothing(screw.shim, unit)
                  else ("shim ", measure_of(screw.shim, unit)))),
        line_of("screw ", measure_of(screw.length, unit), ", bites ",
                measure_of(screw.bite, unit)),
    )  # fmt: skip
    deep: tuple[Line, ...] = (
        () if screw.depth == "right" else (caution_line(f"It bites {screw.depth}."),)
    )
    if screw.cable is not None:
        said = f"A cable may lie here, between {screw.cable.says}. {SIDEWAYS}"
        deep = (caution_line(said), *deep)
    return ShopRow(
        label="stud", what=what, lead="inside, from the left side",
        big=line_of(mark_of(screw.inside, unit)), lines=lines, warns=deep,
    )  # fmt: skip


def _place_card(room: Room, case: Case) -> ShopCard:
    """What no surveyed wall has a place for: a box of an island, or one placed by eye."""
    lines: tuple[Line, ...] = (
        ("Fasten it in its place.",),
        ("No wall is surveyed for it: its place is where it was planned by eye.",),
    )
    warns, over = (caution_line(_LIFT), caution_line(_CABLES)), "At the wall"
    if case.key in room.in_islands:
        over = "On its ladders"
        lines = (("Set it on the ladders of its island and join it to its neighbours.",),)
        warns = (caution_line(CAUTIONS["island_tips"]), caution_line(CAUTIONS["clamp_screws"]))
    return ShopCard(
        id=f"hang.place.{case.key}", station="hang", over=over, title=case.spec.title,
        lines=lines, warns=warns, ticks=tuple(_hung(case)),
        parts=tuple(part.path for part in case.parts),
    )  # fmt: skip


def _hung(case: Case) -> Iterator[ShopTick]:
    word = "hung" if case.spec.kind == "wall" else "in its place"
    yield part_tick("hung", case.key, f"{case.spec.title} {word}", box_parts(case))
    for thing in things(case):
        yield part_tick("hung", thing.path, thing.placed, thing.parts)
