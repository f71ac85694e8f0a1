"""Corners and the way in, as the survey prints them."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.dims import (
    Chain,
    Dim,
    Measure,
    Origin,
    Told,
    Unit,
    Way,
    as_said,
    format_length,
    measure_of,
    root,
    round_to,
    tell,
)
from casewright.outputs.blocks import Block, Callout, Column, Heading, Paragraph, Row, Table
from casewright.outputs.inlines import Blank, Rich, Strong
from casewright.sources import INCH
from casewright.survey.angles import angle_of, departure_mm
from casewright.survey.corner_advice import advise_corner
from casewright.survey.corners import SurveyedCorner
from casewright.survey.form import FORM
from casewright.survey.next_words import FRONTS, corner_words
from casewright.survey.readings import TAPE
from casewright.survey.survey import Survey
from casewright.survey.usual import cited
from casewright.survey.words import size_of

__all__ = ["corner_blocks", "corner_numbers", "next_of_corners"]

_TO: dict[Unit, tuple[Fraction, int]] = {"in": (INCH / 16, 16), "mm": (Fraction(1), 1)}
"""What a departure from square is told to [mm], and its parts of a unit [-]."""

_REST = Origin("solved", "what the square of the cosine leaves of 1")
_CORNERS = (
    Column("Corner", share=1.6), Column("Along the left wall", share=1.0),
    Column("Along the right wall", share=1.0), Column("Across", share=1.0),
    Column("Diagonal", share=1.0), Column("So it has", share=1.8),
)  # fmt: skip
_WAY_IN = (
    Column("On the way in", share=1.6), Column("Clear width", share=1.0),
    Column("Clear height", share=1.0), Column("Landing to turn on", share=1.0),
)  # fmt: skip
_HOW = (
    "Mark three units along one wall and four along the other, the longer the better: five across "
    "is square. Or read the diagonal from the far end of the one wall to the far end of the other."
)


def corner_blocks(survey: Survey, unit: Unit) -> tuple[Block, ...]:
    """Both tables, with blanks for what is missing and a row or two to add."""
    doubts = [d for d in survey.doubts if d.paths[0].startswith("survey.corner.")]
    found = next_of_corners(survey, unit).values()
    return (
        Paragraph(_HOW, soft=True),
        *(Callout("ask", doubt.says.capital + ".", "Read again") for doubt in doubts),
        *(Callout("measure first", words.capital + ".", "Read next") for words in found),
        Heading("Corners", 3),
        Table(_CORNERS, tuple(_corner_rows(survey, unit)), small=True),
        Heading("The way in", 3),
        Table(_WAY_IN, tuple(_passage_rows(survey, unit)), small=True),
    )


def next_of_corners(survey: Survey, unit: Unit, chain: Chain | None = None) -> dict[str, Told]:
    """By corner, the further reading that would tell most of it, in words.

    Parameters
    ----------
    chain
        On which its numbers are entered; None: one of their own.
    """
    found: dict[str, Told] = {}
    place = (chain or Chain()).place(FORM)
    doubtful = {path for doubt in survey.doubts for path in doubt.paths}
    for key, corner in survey.corners.items():
        walls = (survey.walls.get(corner.spec.left), survey.walls.get(corner.spec.right))
        left, right = (wall.width.value if wall and wall.width else None for wall in walls)
        if any(path.startswith(f"survey.corner.{key}.") for path in doubtful):
            continue
        advice = advise_corner(corner, (left, right), TAPE, FRONTS[unit])
        if advice is not None:
            found[key] = corner_words(corner, advice, unit, place)
    return found


def corner_numbers(survey: Survey, unit: Unit, chain: Chain) -> None:
    """Enter what the survey's page of corners works out."""
    next_of_corners(survey, unit, chain)
    for corner in survey.corners.values():
        _verdict(corner, unit, chain)


def _corner_rows(survey: Survey, unit: Unit) -> Iterator[Row]:
    for corner in survey.corners.values():
        ways = {way.name: way for way in corner.ways}
        marks, diagonal = ways.get("triangle"), ways.get("diagonal")
        sides = (marks.left, marks.right, marks.across) if marks else (None, None, None)
        cells = [*sides, diagonal.across if diagonal else None]
        read: list[Rich] = [
            Blank(15.0) if dim is None else Strong(measure_of(dim, unit)) for dim in cells
        ]
        yield Row((corner.spec.title, *read, _verdict(corner, unit, Chain())))
    for _ in range(2):
        yield Row((Blank(24.0), *(Blank(15.0) for _ in range(4)), ""))


def _verdict(corner: SurveyedCorner, unit: Unit, chain: Chain) -> Told:
    """Degrees, and how far off square over the depth of a base case."""
    if corner.cosine is None:
        return Told()
    angle, off_mm = angle_of(corner.cosine), departure_mm(corner.cosine.value, FRONTS[unit])
    words = f"{angle.degrees:.1f}° ± {2 * angle.sigma_degrees:.1f}°"
    if abs(off_mm) <= 1:
        return Told(words)
    way = "comes in" if off_mm > 0 else "runs off"
    off, deep = _departure(corner.spec.key, corner.cosine, unit, chain)
    return tell("{}; {} {} over {}", words, way, off, deep)


def _departure(key: str, cosine: Dim, unit: Unit, chain: Chain) -> tuple[Measure, Measure]:
    """How far a wall departs from square over the depth of a base case: D / tan of the angle."""
    place = chain.place(FORM)
    own = place.at("corner").at(key)
    depth = cited(place, "fronts", FRONTS[unit], "as deep as a base case, to its fronts")
    rest = own.let("rest", Dim("by", (cosine,), 1 - cosine.value**2, 0))
    rest.origin = _REST
    exact = own.let("off_exact", root((depth * depth) * (cosine * cosine) / rest))
    step, parts = _TO[unit]
    off = own.let("off", Dim("round", (exact, step), round_to(exact.value, step, Way.NEAREST)[0]))
    text = format_length(off.value, unit, precision=parts, with_unit=True)
    return as_said(off, unit, text), size_of(depth, unit)


def _passage_rows(survey: Survey, unit: Unit) -> Iterator[Row]:
    for passage in survey.spec.way_in:
        sizes = [survey.way_in.get(f"{passage.key}.{n}") for n in ("width", "height", "landing")]
        cells: list[Rich] = [
            "" if dim is None else Strong(measure_of(dim, unit)) for dim in sizes
        ]  # fmt: skip
        yield Row((f"{passage.title} ({passage.kind})", *cells))
    for _ in range(2):
        yield Row((Blank(24.0), *(Blank(15.0) for _ in range(3))))
