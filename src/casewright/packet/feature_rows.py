"""The table of a part's features: what, where, how large, with which set-up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.casework.features import Bores, Cut, Feature
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.dims.units import Unit
from casewright.drawing import Measure, measure_of
from casewright.drawing.part_view import feature_letters
from casewright.outputs.blocks import Column, Row
from casewright.outputs.inlines import Rich, SignMark
from casewright.packet.words import (
    at_words,
    feature_name,
    plane_word,
    setup_lines,
    size_words,
    unfold,
)

__all__ = ["FEATURES", "feature_rows"]

FEATURES = (
    Column("", "centre"),
    Column("What", share=1.9),
    Column("Where", share=3.4),
    Column("Set-up", share=5.0),
)
"""Columns of the table."""


_ENDS: tuple[set[object], ...] = ({"l0", "l1"}, {"w0", "w1"})
_TIMES = {
    "shelf pins": "{} rows of {}",
    "hinge plate": "holes for {} hinge plates, 2 each",
    "hinge cup": "{} {}s",
}


def feature_rows(part: Part, unit: Unit) -> Iterator[Row]:
    """A row for each feature; those made with one set-up share one."""
    letters = feature_letters(part)
    done: set[str] = set()
    two_sided = len({f.face for f in part.features}) > 1 or part.features[0].face == "B"
    for feature in part.features:
        if feature.path in done:
            continue
        twins = [other for other in part.features if other is feature or _alike(feature, other)]
        done.update(twin.path for twin in twins)
        cautions = tuple(SignMark("caution") for _ in feature.setup.cautions[:1])
        yield Row(
            (
                ", ".join(letters[twin.path] for twin in twins),
                unfold(
                    f"{_names(part, twins)}{f', face {feature.face}' if two_sided else ''}: ",
                    size_words(feature, unit),
                ),
                _where(part, twins, unit),
                unfold(*cautions, " " if cautions else "", setup_lines(feature.setup, unit)),
            )
        )


def _names(part: Part, twins: Sequence[Feature]) -> str:
    name = feature_name(part, twins[0])
    if len(twins) > 1 and twins[0].kind in _TIMES:
        return _TIMES[twins[0].kind].format(len(twins), name)
    return "; ".join(dict.fromkeys(feature_name(part, twin) for twin in twins))


def _where(part: Part, twins: Sequence[Feature], unit: Unit) -> Rich:
    """The place of the first, then by how much the others are elsewhere."""
    first, words = twins[0], at_words(part, twins[0], unit)
    if len(twins) == 1:
        return words
    if not isinstance(first, Bores) or first.kind == "pocket":
        return unfold(words, "; the same at the other end")
    for twin in twins[1:]:
        if isinstance(twin, Bores):
            words = unfold(words, "; also ", _elsewhere(part, first, twin, unit))
    return words


def _elsewhere(part: Part, first: Bores, twin: Bores, unit: Unit) -> Rich:
    """Its distance from the end when that is another one, else from the edge."""
    if (first.datum_l, _along(first)) != (twin.datum_l, _along(twin)):
        along = measure_of(twin.places[0][0], unit)
        if twin.kind == "hinge plate":
            along = Measure(_along(twin)[0], unit, f"{twin.path}.from_end")
        return (along, f" from the {plane_word(part, twin.datum_l)}")
    across = measure_of(twin.places[0][1], unit)
    return (across, f" from the {plane_word(part, twin.datum_w)}")


def _along(bores: Bores) -> list[Fraction]:
    """Where along the part it is: of a plate the middle of its holes."""
    places = [along.value for along, _ in bores.places]
    return [(places[0] + places[-1]) / 2] if bores.kind == "hinge plate" else places[:1]


def _alike(one: Feature, other: Feature) -> bool:
    """Whether two rows of holes are bored with one set-up."""
    if isinstance(one, Cut) and isinstance(other, Cut):
        return {one.datum, other.datum} in _ENDS and _cutting(one) == _cutting(other)
    if not isinstance(one, Bores) or not isinstance(other, Bores):
        return False
    if (one.kind, one.face, _boring(one)) != (other.kind, other.face, _boring(other)):
        return False
    if one.kind == "pocket":
        opposite = {one.toward, other.toward} in _ENDS
        return opposite and _values(one.places) == _values(other.places)
    return one.kind in _TIMES and _shape(one) == _shape(other)


def _cutting(cut: Cut) -> tuple[object, ...]:
    """All of a cut but the end it is at."""
    setup = cut.setup
    dims = (cut.at, cut.width, cut.depth, cut.start, cut.end, setup.fence, setup.depth,
            setup.stop, setup.collar, setup.check)  # fmt: skip
    words = (cut.kind, cut.face, cut.runs, setup.tool, setup.bit, setup.passes, setup.check_words)
    return (*words, *(dim.value if dim is not None else None for dim in dims))


def _boring(bores: Bores) -> tuple[object, ...]:
    """What is set once for all of them."""
    setup = bores.setup
    dims = (bores.diameter, bores.depth, setup.fence, setup.depth, setup.stop, setup.collar,
            setup.bit_size)  # fmt: skip
    return (setup.tool, setup.bit, setup.passes, setup.cautions,
            *(dim.value if dim is not None else None for dim in dims))  # fmt: skip


def _shape(bores: Bores) -> list[tuple[Fraction, Fraction]]:
    """Its holes from the first of them [mm]."""
    (l0, w0), *_ = places = _values(bores.places)
    return [(along - l0, across - w0) for along, across in places]


def _values(places: Sequence[tuple[Dim, Dim]]) -> list[tuple[Fraction, Fraction]]:
    return [(along.value, across.value) for along, across in places]
