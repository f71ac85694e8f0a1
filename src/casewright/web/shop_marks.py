"""Marks of a wall on the phone: its heights, then its length, a stretch at a time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from casewright.dims import Measure, Unit, mark_of
from casewright.install.hanging import WallHanging
from casewright.install.marks import HeightMark
from casewright.install.stretches import Stretch, stretches
from casewright.web.shop_lines import caution_line, line_of
from casewright.web.shop_notes import done_tick
from casewright.web.shop_schema import ShopCard, ShopFigure, ShopRow

__all__ = ["SIDEWAYS", "first_marks", "marks_cards"]

SIDEWAYS = "Circuit off, find the cable, and bore only once you know where it runs."
_BANDS = {"hung": "above", "standing": "below", "": "wall"}


def first_marks(key: str) -> str:
    """Id of the card that the marks of a wall begin with."""
    return f"hang.marks.{key}.up"


def marks_cards(key: str, hang: WallHanging, unit: Unit) -> Iterator[ShopCard]:
    """Every height of a wall, then every mark along it."""
    title, rows = hang.wall.spec.title, tuple(_heights(hang.heights, unit))
    if rows:
        yield ShopCard(
            id=first_marks(key), station="hang", over=f"{title}: mark its heights",
            title="Mark the wall", lead="Every height from one line", rows=rows,
            figures=(
                ShopFigure(name=f"heights.{key}", says=f"heights of the {title}"),
                ShopFigure(name=f"wall.{key}",
                           says=f"the whole {title} with its marks, studs and wall screws"),
            ),
            ticks=(done_tick(f"heights of {title}", map(_told, rows)),),
        )  # fmt: skip
    found = stretches(hang.marks)
    for number, stretch in enumerate(found, 1):
        yield _stretch_card(key, hang, (number, len(found)), stretch, unit)


def _told(row: ShopRow) -> str:
    return row.model_dump_json()


def _heights(heights: Iterable[HeightMark], unit: Unit) -> Iterator[ShopRow]:
    """Each from the level line where there is one: the floor is not level."""
    for high in heights:
        above, far = mark_of(high.above_floor, unit), high.from_line
        if far is None or not far.value:
            lead = "above the highest floor"
            yield ShopRow(
                label="line" if far else "up", what=(high.says,), lead=lead, big=line_of(above)
            )
            continue
        yield ShopRow(
            label="up" if far.value > 0 else "down", what=(high.says,),
            lead="from the level line",
            big=line_of(Measure(abs(far.value), unit, far.path, above.precision)),
            lines=(line_of(above, " above the highest floor"),),
        )  # fmt: skip


def _stretch_card(
    key: str, hang: WallHanging, place: tuple[int, int], stretch: Stretch, unit: Unit
) -> ShopCard:
    number, of = place
    title = hang.wall.spec.title
    rows = (
        *(
            ShopRow(label=_BANDS[mark.band], what=(mark.says,), lead="from its left end",
                    big=line_of(mark_of(mark.at, unit)))
            for mark in stretch.marks
        ),
        *_off_limits(hang, stretch, unit),
    )  # fmt: skip
    return ShopCard(
        id=f"hang.marks.{key}.{number}",
        station="hang",
        over=f"{title}: stretch {number} of {of}",
        title="Mark the wall",
        lead="Every mark from the wall's left end",
        rows=rows,
        figures=(
            ShopFigure(
                name=f"stretch.{key}.{number}",
                says=f"{title}, stretch {number} of {of} with its marks",
                key=f"within.{key}.{number}",
            ),
        ),
        ticks=(done_tick(f"stretch {number} of {title}", map(_told, rows)),),
    )


def _off_limits(hang: WallHanging, stretch: Stretch, unit: Unit) -> Iterator[ShopRow]:
    """Where no wall screw goes, and where a cable may lie sideways, as far as it is here."""

    def is_here(left: Fraction, right: Fraction) -> bool:
        return left <= stretch.right and right >= stretch.left

    for strip in hang.strips:
        if is_here(strip.left, strip.right):
            yield ShopRow(
                label="no screw", what=(f"above and below: {strip.thing.spec.title}",),
                lead="from its left end", big=line_of(*_from_to(strip.left, strip.right, unit)),
            )  # fmt: skip
    for run in hang.cables:
        if is_here(run.left, run.right):
            yield ShopRow(
                label="cable", what=(f"one may lie between {run.says}",), lead="from its left end",
                big=line_of(*_from_to(run.left, run.right, unit)),
                lines=(line_of("above the floor ", *_from_to(run.low, run.high, unit)),),
                warns=(caution_line(SIDEWAYS),),
            )  # fmt: skip


def _from_to(low: Fraction, high: Fraction, unit: Unit) -> tuple[Measure, str, Measure]:
    return Measure(low, unit), " to ", Measure(high, unit)
