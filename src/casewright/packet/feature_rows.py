"""The table of a part's features: what, where, how large, with which set-up."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from casewright.casework.features import Bores, Cut, Feature, Setup
from casewright.casework.parts import Part
from casewright.dims import Dim, Measure, measure_of
from casewright.dims.units import Unit
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
    Column("What", share=2.15),
    Column("Where", share=3.4),
    Column("Set-up", share=5.0),
)
"""Columns of the table."""


_ENDS: tuple[set[object], ...] = ({"l0", "l1"}, {"w0", "w1"})
_TIMES = {
    "shelf pins": "{} rows of {}",
    "hinge plate": "holes for {} hinge plates, 2 each",
    "hinge cup": "{} {}s",
    "slide hook": "{} {}s",
    "front screw": "{} times {}",
}


def feature_rows(part: Part, unit: Unit, waits: Collection[str] = ()) -> Iterator[Row]:
    """A row for each feature; those made with one set-up share one.

    Parameters
    ----------
    waits
        Kinds of holes that wait for an answer: a sign says so.
    """
    letters = feature_letters(part)
    done: set[str] = set()
    faces = {f.face for f in part.features if _in_a_face(f)}
    two_sided = len(faces) > 1 or "B" in faces
    for feature in part.features:
        if feature.path in done:
            continue
        twins = [other for other in part.features if other is feature or _alike(feature, other)]
        done.update(twin.path for twin in twins)
        cautions = tuple(SignMark("caution") for _ in feature.setup.cautions[:1])
        asks = (SignMark("ask"), " waits  ") if feature.kind in waits else ()
        yield Row(
            (
                ", ".join(dict.fromkeys(letters[twin.path] for twin in twins)),
                unfold(
                    f"{_names(part, twins)}{_on_face(feature) if two_sided else ''}: ",
                    size_words(feature, unit),
                ),
                _where(part, twins, unit),
                unfold(
                    *asks,
                    *cautions,
                    " " if cautions else "",
                    setup_lines(_setup(part, feature), unit),
                ),
            )
        )


def _in_a_face(feature: Feature) -> bool:
    return isinstance(feature, Bores) or (
        feature.face in ("A", "B") and feature.kind not in ("mitre", "clip", "bevel")
    )


def _on_face(feature: Feature) -> str:
    return f", face {feature.face}" if _in_a_face(feature) else ""


def _names(part: Part, twins: Sequence[Feature]) -> str:
    name = feature_name(part, twins[0])
    if twins[0].kind == "finger":
        return f"{len(twins)} slots of the box joint"
    if len(twins) > 1 and twins[0].kind in _TIMES:
        return _TIMES[twins[0].kind].format(len(twins), name)
    return "; ".join(dict.fromkeys(feature_name(part, twin) for twin in twins))


def _setup(part: Part, feature: Feature) -> Setup:
    """Its set-up, with the edge or end that it is checked from by name.

    A cut may be measured from another plane than the datums that the drawing marks.
    """
    setup = feature.setup
    if not isinstance(feature, Cut):
        return setup
    name = plane_word(part, feature.datum)
    words = setup.check_words
    for datum in ("datum edge", "datum end"):
        words = words.replace(datum, name)
    return replace(setup, check_words=words)


def _where(part: Part, twins: Sequence[Feature], unit: Unit) -> Rich:
    """The place of a feature; of several made with one set-up what they share only once."""
    first = twins[0]
    if isinstance(first, Cut) and first.kind == "finger":
        return _slots(part, twins, unit)
    if isinstance(first, Cut) and first.kind in ("notch", "clip"):
        edge = plane_word(part, "w0")
        one = f"corner of the {plane_word(part, first.datum)} and the {edge}"
        return one if len(twins) == 1 else f"both corners of the {edge}"
    words: Rich = "from end to end" if first.kind == "bevel" else at_words(part, first, unit)
    if len(twins) == 1:
        return words
    if not isinstance(first, Bores) or first.kind == "pocket":
        return unfold(words, "; the same at the other end")
    bores = [twin for twin in twins if isinstance(twin, Bores)]
    if any(twin.datum_l != first.datum_l for twin in bores):
        return unfold(*_joined([at_words(part, twin, unit) for twin in bores], "; "))
    return _places(part, bores, unit)


def _slots(part: Part, twins: Sequence[Feature], unit: Unit) -> Rich:
    """Slots of a box joint by their lower walls; the ends alike."""
    walls = {cut.at.value: measure_of(cut.at, unit) for cut in twins if isinstance(cut, Cut)}
    listed = unfold(*_joined([walls[at] for at in sorted(walls)], ", ", " and "))
    both = " at both ends" if len(walls) * 2 == len(twins) else ""
    return unfold("lower walls ", listed, f" from the {plane_word(part, 'w0')},{both}")


def _places(part: Part, bores: Sequence[Bores], unit: Unit) -> Rich:
    """'middles 3 1/2, 20 and 36 from the bottom end; holes 16 to either side, 37 from ...'."""
    first = bores[0]
    alongs = {_along(twin)[0]: _along_measure(twin, unit) for twin in bores}
    acrosses = {
        (twin.datum_w, twin.places[0][1].value): (
            measure_of(twin.places[0][1], unit), f" from the {plane_word(part, twin.datum_w)}",
        )
        for twin in bores
    }  # fmt: skip
    end = f" from the {plane_word(part, first.datum_l)}"
    edges = unfold(*_joined(list(acrosses.values()), " and "))
    listed = unfold(*_joined(list(alongs.values()), ", ", " and "))
    if first.kind == "hinge plate":
        half = abs(first.places[-1][0].value - first.places[0][0].value) / 2
        aside = Measure(half, unit, "hardware.hinge.half_plate_pitch")
        return unfold("middles ", listed, end, "; holes ", aside, " to either side, ", edges)
    if first.pitch is not None and len(first.places) > 1:
        rows = ("; the others ", measure_of(first.pitch, unit), " apart")
        return unfold("first hole ", listed, end, rows, "; ", edges)
    return unfold(listed, end, ", ", edges)


def _joined(items: Sequence[Rich], comma: str, last: str = "") -> Iterator[Rich]:
    for number, item in enumerate(items):
        if number:
            yield last if last and number == len(items) - 1 else comma
        yield item


def _along_measure(bores: Bores, unit: Unit) -> Measure:
    if bores.kind == "hinge plate":
        return Measure(_along(bores)[0], unit, f"{bores.path}.from_end")
    return measure_of(bores.places[0][0], unit)


def _along(bores: Bores) -> list[Fraction]:
    """Where along the part it is: of a plate the middle of its holes."""
    places = [along.value for along, _ in bores.places]
    return [(places[0] + places[-1]) / 2] if bores.kind == "hinge plate" else places[:1]


def _alike(one: Feature, other: Feature) -> bool:
    """Whether two rows of holes are bored with one set-up."""
    if isinstance(one, Cut) and isinstance(other, Cut):
        return _cut_alike(one, other)
    if not isinstance(one, Bores) or not isinstance(other, Bores):
        return False
    if (one.kind, one.face, _boring(one)) != (other.kind, other.face, _boring(other)):
        return False
    if one.kind == "pocket":
        opposite = {one.toward, other.toward} in _ENDS
        return opposite and _values(one.places) == _values(other.places)
    return one.kind in _TIMES and _shape(one) == _shape(other)


def _cut_alike(one: Cut, other: Cut) -> bool:
    if one.kind == other.kind == "finger":
        return one.width.value == other.width.value
    if one.kind == other.kind == "slot":
        return _cutting(replace(one, face="m0")) == _cutting(replace(other, face="m0"))
    return {one.datum, other.datum} in _ENDS and _cutting(one) == _cutting(other)


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
