"""Corners and the way in, as the survey prints them."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import isfinite

from casewright.dims import Unit, format_length, measure_of, size_text
from casewright.outputs.blocks import Block, Callout, Column, Heading, Paragraph, Row, Table
from casewright.outputs.inlines import Blank, Rich, Strong
from casewright.packet.words import about_text
from casewright.sources import INCH
from casewright.survey.angles import angle_of, departure_mm
from casewright.survey.corner_advice import CornerAdvice, advise_corner
from casewright.survey.corners import SurveyedCorner
from casewright.survey.readings import TAPE
from casewright.survey.survey import Survey

__all__ = ["corner_blocks", "next_of_corners"]

_DEPTH: dict[Unit, Fraction] = {"in": 24 * INCH, "mm": Fraction(600)}
_CORNERS = (
    Column("Corner", share=1.6), Column("Along the left wall", share=1.0),
    Column("Along the right wall", share=1.0), Column("Across", share=1.0),
    Column("Diagonal", share=1.0), Column("So it has", share=1.8),
)  # fmt: skip
_WAY_IN = (
    Column("On the way in", share=1.6), Column("Clear width", share=1.0),
    Column("Clear height", share=1.0), Column("Landing to turn on", share=1.0),
)  # fmt: skip
_TRIANGLE: dict[Unit, str] = {"in": "48 and 36", "mm": "1200 and 900"}
_HOW = (
    "Mark three units along one wall and four along the other, the longer the better: five across "
    "is square. Or read the diagonal from the far end of the one wall to the far end of the other."
)


def corner_blocks(survey: Survey, unit: Unit) -> tuple[Block, ...]:
    """Both tables, with blanks for what is missing and a row or two to add."""
    doubts = [d for d in survey.doubts if d.paths[0].startswith("survey.corner.")]
    return (
        Paragraph(_HOW, soft=True),
        *(
            Callout("ask", f"{doubt.says[:1].upper()}{doubt.says[1:]}.", "Read again")
            for doubt in doubts
        ),
        *(
            Callout("measure first", f"{words[:1].upper()}{words[1:]}.", "Read next")
            for words in next_of_corners(survey, unit).values()
        ),
        Heading("Corners", 3),
        Table(_CORNERS, tuple(_corner_rows(survey, unit)), small=True),
        Heading("The way in", 3),
        Table(_WAY_IN, tuple(_passage_rows(survey, unit)), small=True),
    )


def next_of_corners(survey: Survey, unit: Unit) -> dict[str, str]:
    """By corner, the further reading that would tell most of it, in words."""
    found: dict[str, str] = {}
    doubtful = {path for doubt in survey.doubts for path in doubt.paths}
    for key, corner in survey.corners.items():
        walls = (survey.walls.get(corner.spec.left), survey.walls.get(corner.spec.right))
        left, right = (wall.width.value if wall and wall.width else None for wall in walls)
        if any(path.startswith(f"survey.corner.{key}.") for path in doubtful):
            continue
        advice = advise_corner(corner, (left, right), TAPE, _DEPTH[unit])
        if advice is not None:
            found[key] = _next_words(corner, advice, unit)
    return found


def _next_words(corner: SurveyedCorner, advice: CornerAdvice, unit: Unit) -> str:
    title = corner.spec.title
    title = title if "corner" in title else f"corner {title}"
    what = f"the diagonal of both walls of the {title}, from far end to far end"
    if advice.read == "triangle":
        what = (
            f"a triangle in the {title}, {_TRIANGLE[unit]} along the walls, and what lies across"
        )
    after = about_text(2 * advice.after_mm, unit)
    known = "known only by eye"
    if isfinite(advice.before_mm):
        known = f"known to {about_text(2 * advice.before_mm, unit)} either way"
    deep = size_text(_DEPTH[unit], unit)
    return f"{what}: where the wall lies {deep} out of it is {known} now, to {after} after it"


def _corner_rows(survey: Survey, unit: Unit) -> Iterator[Row]:
    for corner in survey.corners.values():
        ways = {way.name: way for way in corner.ways}
        marks, diagonal = ways.get("triangle"), ways.get("diagonal")
        sides = (marks.left, marks.right, marks.across) if marks else (None, None, None)
        cells = [*sides, diagonal.across if diagonal else None]
        read: list[Rich] = [
            Blank(15.0) if dim is None else Strong(measure_of(dim, unit)) for dim in cells
        ]
        yield Row((corner.spec.title, *read, _verdict(corner, unit)))
    for _ in range(2):
        yield Row((Blank(24.0), *(Blank(15.0) for _ in range(4)), ""))


def _verdict(corner: SurveyedCorner, unit: Unit) -> str:
    """Degrees, and how far off square over the depth of a base case."""
    if corner.cosine is None:
        return ""
    angle, depth = angle_of(corner.cosine), _DEPTH[unit]
    off_mm = departure_mm(corner.cosine.value, depth)
    text = format_length(
        Fraction(abs(off_mm)), unit, precision=16 if unit == "in" else 1, with_unit=True,
        rounded_mark="",
    )  # fmt: skip
    way = "comes in" if off_mm > 0 else "runs off"
    over = f"; {way} {text} over {size_text(depth, unit)}" if abs(off_mm) > 1 else ""
    return f"{angle.degrees:.1f}° ± {2 * angle.sigma_degrees:.1f}°{over}"


def _passage_rows(survey: Survey, unit: Unit) -> Iterator[Row]:
    for passage in survey.spec.way_in:
        sizes = [survey.way_in.get(f"{passage.key}.{n}") for n in ("width", "height", "landing")]
        cells: list[Rich] = [
            "" if dim is None else Strong(measure_of(dim, unit)) for dim in sizes
        ]  # fmt: skip
        yield Row((f"{passage.title} ({passage.kind})", *cells))
    for _ in range(2):
        yield Row((Blank(24.0), *(Blank(15.0) for _ in range(3))))
