"""Lines under the tables of a survey form: plumb, studs, how flat, baseboard, counters."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from casewright.dims import Dim, Unit, as_said, measure_of, size_text, tell
from casewright.outputs.blocks import Beside, Block, Paragraph
from casewright.outputs.inlines import Blank, Inline, Small
from casewright.survey.form import SurveyForm
from casewright.survey.specs import PlumbOf
from casewright.survey.words import size_of

__all__ = ["more_lines", "survey_lines"]

_FIRST, _MORE = 6, 2  # blanks for studs where none, and where some were found
_LINE = 6  # hollows that a line takes
_SHORT, _SHORTER = 14.0, 10.0  # [mm]
_ENDS: Mapping[PlumbOf, str] = {
    "left": "at the left end", "right": "at the right end", "face": "this wall itself",
}  # fmt: skip


def survey_lines(form: SurveyForm, unit: Unit) -> Iterator[Block]:
    """What of a wall goes into no table, a line each, with blanks for what was not read."""
    yield Beside(((*_plumbs(form, unit, "left", "right"),),
                  (*_plumbs(form, unit, "face"), _baseboard(form, unit))))  # fmt: skip
    yield Paragraph(("Studs, middles from the left: ", *_studs(form, unit)))
    yield from _flat(form, unit)
    yield from _counters(form, unit)


def more_lines(form: SurveyForm) -> int:
    """How many lines more than a usual one those of a wall take, about."""
    heights = {each.height for each in form.wall.spec.hollows} or {Fraction(0)}
    of_one = -(-max(1, len(form.wall.studs)) // _LINE)
    return len(heights) * of_one - 1 + len(form.wall.studs) // (2 * _LINE)


def _baseboard(form: SurveyForm, unit: Unit) -> Block:
    board = form.wall.spec.baseboard
    if board is None:
        return Paragraph(("Baseboard: ", Blank(), " high, ", Blank(), " thick"))
    sizes = (size_of(form.wall.at[f"baseboard.{name}"], unit) for name in ("height", "thickness"))
    return Paragraph(tell("Baseboard: {} high, {} thick.", *sizes))


def _plumbs(form: SurveyForm, unit: Unit, *whose: PlumbOf) -> Iterator[Block]:
    spec, read, at = form.wall.spec, form.wall.read, form.wall.at
    for of in whose:
        words = _ENDS[of]
        known = [(n, p) for n, p in enumerate(spec.plumbs, start=1) if p.of == of]
        for n, plumb in known:
            way = "in" if plumb.lean.value >= 0 else "out"
            lean = read[f"plumb_{n}"]
            off = as_said(lean, unit, size_text(abs(lean.value), unit))
            over = size_of(at[f"plumb_{n}.over"], unit)
            yield Paragraph(tell("Plumb, {}: leans {} by {} over {}.", words, way, off, over))
        if not known:
            blanks = (Blank(_SHORTER), " over ", Blank(_SHORTER), ", head in / out")
            yield Paragraph((f"Plumb, {words}: off ", *blanks))


def _studs(form: SurveyForm, unit: Unit) -> Iterable[Inline]:
    studs = list(zip(form.wall.studs, form.wall.spec.studs, strict=True))
    for dim, stud in studs:
        yield from (measure_of(dim, unit), " probed; " if stud.probed else "; ")
    for _ in range(_MORE if studs else _FIRST):
        yield from (Blank(_SHORT), "  ")
    yield Small("circle those that a nail hit")


def _flat(form: SurveyForm, unit: Unit) -> Iterator[Block]:
    """How far the wall lies behind a straight edge: as read, and blanks at the other studs."""
    heights: dict[Fraction, Dim] = {}
    for n, each in enumerate(form.wall.spec.hollows, start=1):
        heights.setdefault(each.height, form.wall.at[f"hollow_{n}.height"])
    if not heights:
        blank = ("Flat, along a straight edge ", Blank(_SHORT), " above the floor; behind it: ")
        yield Paragraph((*blank, *_beside_studs(form, unit)))
    for height, dim in heights.items():
        words = ("Flat, behind a straight edge ", size_of(dim, unit), " above the floor: ")
        yield Paragraph((*words, *_hollows(form, height, unit)))


def _beside_studs(form: SurveyForm, unit: Unit) -> Iterator[Inline]:
    for dim in form.wall.studs:
        yield from (Blank(_SHORTER), " at ", measure_of(dim, unit), "; ")
    for _ in range(_MORE):
        yield from (Blank(_SHORTER), " at ", Blank(_SHORTER), "; ")


def _hollows(form: SurveyForm, height: Fraction, unit: Unit) -> Iterator[Inline]:
    names = [f"hollow_{n}" for n, each in enumerate(form.wall.spec.hollows, start=1)
             if each.height == height]  # fmt: skip
    for name in names:
        along = size_of(form.wall.at[f"{name}.along"], unit)
        yield from (measure_of(form.wall.read[name], unit), " at ", along, "; ")
    known = {form.wall.at[f"{name}.along"].value for name in names}
    for stud in form.wall.studs:
        if stud.value not in known:
            yield from (Blank(_SHORTER), " at ", measure_of(stud, unit), "; ")


def _counters(form: SurveyForm, unit: Unit) -> Iterator[Block]:
    """Heights of what stands there under the level line, station by station."""
    for thing in form.wall.things:
        if thing.spec.kind != "counter":
            continue
        words: list[Inline] = [f"{thing.spec.title}, from the level line down to its top: "]
        for n in range(1, len(thing.spec.tops) + 1):
            top = f"fixed.{thing.spec.key}.top_{n}"
            along = size_of(form.wall.at[f"{top}.along"], unit)
            words += [measure_of(form.wall.read[top], unit), " at ", along, "; "]
        for _ in range(max(1, 3 - len(thing.spec.tops))):
            words += [Blank(_SHORTER), " at ", Blank(_SHORTER), "; "]
        yield Paragraph(tuple(words))
