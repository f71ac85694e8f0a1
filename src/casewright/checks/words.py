"""How the rules write lengths and weights in the job's unit, and look up style values."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.dims import (
    Dim,
    Fit,
    Given,
    Origin,
    Told,
    size_text,
    tell,
    total,
    weight_text,
)
from casewright.findings import Reckoning, round_figure
from casewright.room.fit_words import gap_text
from casewright.room.lift_origins import CLIPPED, HANDS, LIMIT, density_of
from casewright.room.lifting import Effort
from casewright.room.model import Room
from casewright.sources import INCH

__all__ = [
    "HELPER",
    "Lifts",
    "by_unit",
    "flatter",
    "gap",
    "hinge_of",
    "kilograms",
    "length",
    "lift_of",
    "pull_of",
    "reckoning",
    "style_of",
    "style_value",
    "thickness",
    "weight_of",
]

HELPER = "a helper that day"


def reckoning(room: Room, rule: str, of: str) -> Reckoning:
    """Where the numbers of a finding are worked out.

    Parameters
    ----------
    rule, of
        Name of the rule; what the finding is about, and no other of the rule.
    """
    return Reckoning(rule, of, room.spec.unit, room.chain.nodes)


def style_of(room: Room, own: Reckoning, key: str, case: Case | None = None) -> Dim:
    """A style value: the case's own where it sets one, else the job's."""
    over = case.spec.overrides.get(key) if case is not None else None
    if case is None or over is None:
        return own.given(f"style.{key}", room.spec.style[key])
    return own.given(f"{case.key}.{key}", over)


def hinge_of(room: Room, own: Reckoning, name: str) -> Dim:
    """A number of the hinge's sheet."""
    given: Given = getattr(room.spec.hardware.hinge, name)
    return own.given(f"hardware.hinge.{name}", given)


def pull_of(room: Room, own: Reckoning, name: str) -> Dim:
    """A number of the pull's sheet."""
    given: Given = getattr(room.spec.hardware.pull, name)
    return own.given(f"hardware.pull.{name}", given)


def lift_of(room: Room, own: Reckoning) -> Dim:
    """What one person lifts alone [kg]."""
    origin = Origin("chosen", "what one person lifts alone: lift in [shop]")
    return own.given("shop.lift_weight", Given(room.spec.shop.lift, origin), 0)


def weight_of(room: Room, own: Reckoning, parts: Iterable[Part]) -> Dim:
    """What parts weigh together, as `Part.weight` has it, each under its name [kg]."""
    weights = [_weight(room, own, part) for part in parts]
    if not weights:
        return own.given("no_weight", Given(Fraction(0), Origin("cited", "nothing")), 0)
    return total(*weights)


def _weight(room: Room, own: Reckoning, part: Part) -> Dim:
    size, key = part.finished, part.stock
    density = own.given(f"stock.{key}.density", density_of(room.spec.stock, key), -3)
    area = size.length * size.width
    if part.clipped:
        clips = own.worked(f"{part.path}.clipped", part.clipped, CLIPPED, power=2)
        area -= clips
    return own.let(f"{part.path}.weight", area * size.thickness * density)


def length(room: Room, value: Fraction) -> str:
    """A length as a tape shows it, with its unit: '47 23/32"', '~1 7/16"', '452.5 mm'."""
    return size_text(value, room.spec.unit)


def gap(room: Room, fit: Fit, value: Fraction) -> str:
    """A gap of a fit, or a bound of it, as what it is checked with shows it."""
    return gap_text(fit, value, room.spec.unit)


def thickness(room: Room, value: Fraction) -> str:
    """A thickness or a fitted cut, as sold or as a calliper shows it: '18 mm', '0.719"'."""
    return size_text(value, room.spec.unit, calliper=True)


def kilograms(room: Room, weight: Fraction) -> str:
    """A weight to a tenth of a kilogram, with pounds before it in a job in inches."""
    return weight_text(weight, room.spec.unit, fine=True)


def by_unit(room: Room, inches: str, millimetres: str) -> Fraction:
    """A limit as either half of the trade rounds it [mm]: 2 in, 50 mm."""
    return round_figure(inches, millimetres, room.spec.unit)


def style_value(room: Room, case: Case, key: str) -> Fraction:
    """A style value [mm]: the case's own where it sets one, else the job's."""
    return (case.spec.overrides.get(key) or room.spec.style[key]).value


def flatter(room: Room, own: Reckoning, by: Dim) -> tuple[str, ...]:
    """A pull that stands out so much less [mm], where the one in hand stands out farther."""
    out = pull_of(room, own, "projection")
    if by.value >= out.value:
        return ()
    flat = own.length(out - by, "flatter_pull")
    return (tell("a knob or a pull that stands out {} at most", flat),)


class Lifts:
    """What the lifting equation says of lifts, the way of each kind told once.

    Parameters
    ----------
    room
        The lifts' room.
    """

    def __init__(self, room: Room) -> None:
        self._room = room
        self._told: dict[str, str] = {}

    def words(self, effort: Effort, name: str, own: Reckoning, *rests_on: Dim) -> Told:
        """Limit and index of a lift, with what it was reckoned from, or which lift was alike.

        Parameters
        ----------
        name
            What is lifted.
        own, rests_on
            Where its numbers are worked out; sizes and heights that decide its way.
        """
        task, hands = effort.worst, {}
        for word, value in (("up", task.height), ("out", task.out), ("moved", task.rise)):
            hands[word] = own.worked(f"hands_{word}", value, HANDS[word], *rests_on)
        up, out, moved = (
            own.said(dim, _rounded(self._room, dim.value), "") for dim in hands.values()
        )
        high = tell("{} above the floor", up) if task.height else "at the floor"
        way = tell("hands {} and {} from the ankles", high, out)
        if effort.limit is None or effort.index is None:
            return tell("with the {} the lifting equation gives no limit at all", way)
        way += tell(", moved {}, no handles, no twist, once in five minutes", moved)
        like = self._told.setdefault(way, name)
        limit = own.worked("limit_weight", effort.limit, LIMIT, *hands.values(), power=0)
        index = effort.index
        return tell(
            "the lifting equation recommends at most {}, which makes an index of {}, or {} for "
            "each of two ({})",
            own.weight(limit), f"{float(index):.1f}", f"{float(index / 2):.1f}",
            way if like is name else f"lifted as {like} is",
        )  # fmt: skip


def _rounded(room: Room, value: Fraction) -> str:
    """A rough length: to the inch, or to the centimetre."""
    unit = room.spec.unit
    whole = round(value / INCH) if unit == "in" else round(value / 10)
    return f"{whole} {'in' if unit == 'in' else 'cm'}"
