"""What to read next, and how well a length is known before and after: each number says why."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from casewright.dims import TAPE_MARK, Dim, Measure, Origin, Place, Told, Unit, as_said, root, tell
from casewright.sources import INCH
from casewright.survey.advice import Advice
from casewright.survey.corner_advice import CornerAdvice
from casewright.survey.corners import SurveyedCorner
from casewright.survey.readings import Accuracy
from casewright.survey.usual import cited
from casewright.survey.walls import SurveyedWall
from casewright.survey.words import about, reading_words, size_of

__all__ = ["FRONTS", "advice_words", "corner_words"]

FRONTS: dict[Unit, Fraction] = {"in": 24 * INCH, "mm": Fraction(600)}
"""How far out of a corner it is told what its angle does: a base case deep [mm]."""

_LEGS: dict[Unit, tuple[int, int]] = {"in": (48, 36), "mm": (1200, 900)}
_SQUARES = Origin("solved", "standard deviation, by least squares of what was read of it", "gum")
_BY_EYE = Origin("solved", "standard deviation of what nobody read yet, seen by eye")
_TURNS = Origin("solved", "standard deviation of the angle, over that depth", "gum")
_TAPE = Origin("chosen", "standard deviation of a reading with the tape of the shop")
_MARK = Origin("chosen", "the nearest mark of the tape")
_WANDERS = Origin("cited", "how far a wall wanders from end to end", "common practice")


def advice_words(
    advice: Advice, wall: SurveyedWall, tape: Accuracy, unit: Unit, place: Place
) -> Told:
    """The reading in words, and what it would do: two standard deviations before and after.

    Parameters
    ----------
    tape
        How far the reading would stray.
    place
        Where the numbers of the wall's form are named.
    """
    own = place.at("next")
    words = reading_words(advice.next_reading, wall, unit, own)
    origin = _SQUARES if advice.by else _BY_EYE
    before = _worked(own, "spread", advice.spread, origin, (wall.read[n] for n in advice.by))
    strays = own.let("strays", root(_variance(own, advice, tape, unit)))
    joint = root((before * before) * (strays * strays) / (before * before + strays * strays))
    after = about(own, "known_then", own.let("spread_then", joint) * 2, unit)
    known = tell("known only by eye")
    if not advice.is_by_eye:
        known = tell("known to {} either way", about(own, "known_now", before * 2, unit))
    return tell("{}: {} now, to {} after it", words, known, after)


def _variance(place: Place, advice: Advice, tape: Accuracy, unit: Unit) -> Dim:
    """Of a further reading: of its tool, of its mark, and of the wall from end to end [mm2]."""
    own, mark = (_given(place, *each) for each in (
        ("tape", tape.sigma, _TAPE), ("mark", TAPE_MARK[unit], _MARK)
    ))  # fmt: skip
    found = own * own + mark * mark / 12
    more = advice.next_reading.more
    if not more:
        return found
    wanders = _given(place, "wanders", more, _WANDERS)
    return found + wanders * wanders


def corner_words(corner: SurveyedCorner, advice: CornerAdvice, unit: Unit, place: Place) -> Told:
    """The further reading of a corner in words, and what it would tell.

    Parameters
    ----------
    place
        Where the numbers of the survey's forms are named.
    """
    own, title = place.at("corner").at(corner.spec.key), corner.spec.title
    title = title if "corner" in title else f"corner {title}"
    what = tell("the diagonal of both walls of the {}, from far end to far end", title)
    if advice.read == "triangle":
        legs = (_leg(own, name, size, unit)
                for name, size in zip(("left", "right"), _LEGS[unit], strict=True))  # fmt: skip
        words = "a triangle in the {}, {} and {} along the walls, and what lies across"
        what = tell(words, title, *legs)
    depth = cited(place, "fronts", FRONTS[unit], "as deep as a base case, to its fronts")
    cosines = [way.cosine for way in corner.ways]
    known = tell("known only by eye")
    rests = [depth, *cosines]
    if advice.spread is not None:
        before = _worked(own, "spread", advice.spread, _TURNS, rests)
        known = tell("known to {} either way", about(own, "known_now", before * 2, unit))
        rests.append(before)
    then = _worked(own, "spread_then", advice.spread_then, _TURNS, rests)
    after = about(own, "known_then", then * 2, unit)
    out = tell("where the wall lies {} out of it is {} now", size_of(depth, unit), known)
    return tell("{}: {}, to {} after it", what, out, after)


def _leg(place: Place, name: str, size: int, unit: Unit) -> Measure:
    value = size * (INCH if unit == "in" else Fraction(1))
    dim = cited(place, f"mark_{name}", value, "four parts and three: five across are square")
    return as_said(dim, unit, str(size))


def _given(place: Place, name: str, value: Fraction, origin: Origin) -> Dim:
    dim = Dim("", (), value)
    dim.origin = origin
    return place.let(name, dim)


def _worked(place: Place, name: str, value: Fraction, origin: Origin, rests: Iterable[Dim]) -> Dim:
    """A standard deviation that least squares gave, with what it rests on."""
    on = tuple(rests)
    node = place.let(name, Dim("by" if on else "", on, value))
    node.origin = origin
    return node
