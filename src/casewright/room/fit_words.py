"""Fits in the words of the shop: 'the gap beside upper.door_right is 1/32", 1/32" too little'."""

from __future__ import annotations

import re
from fractions import Fraction

from casewright.dims import Dim, Fit, Measure, Origin, Told, Unit, size_text, tell
from casewright.findings import Reckoning

__all__ = [
    "FitNumbers", "fit_name", "fit_problem", "gap_text", "is_planned_to_meet", "planned_text",
]  # fmt: skip

_LOW = Origin("cited", "least that works here, as the fit was declared", "common practice")
_HIGH = Origin("cited", "most that works here, as the fit was declared", "common practice")

_NAMES = tuple(
    (re.compile(pattern), words)
    for pattern, words in (
        (r"slide_fit", "the air for the slides beside {}"),
        (r"bottom_side_fit", "the play of {} between the sides"),
        (r"bottom_end_fit", "the play of {} from front to back"),
        (r"back_(side_play|play_fit)", "the side play of {}"),
        (r"end_play_fit", "the play of {} end to end"),
        (r"side_play_fit", "the play of {} from side to side"),
        (r"board_play_fit", "the play of the board in {}"),
        (r"(upper_)?shelf_\d+_(far_|own_)?air", "the air at the ends of {}"),
        (r"gap_\d+_fit|left_fit|right_fit", "the gap beside {}"),
        (r"top_fit", "the gap over {}"),
        (r"stack_gap_fit", "the gap between {} and the next front"),
        (r"reveal_as_bored", "the reveal of {}, as its cups are bored,"),
        (r"lid_air", "the air round {}"),
        (r"finger_gap_fit", "the gap for fingers before {}"),
        (r"scribe_(left|right)", "what {} has for scribing"),
        (r"mitre_(left|right)_fit", "the mitre of {}"),
        (r"under_.+", "the step between {} and the box on it"),
        (r"end_(left|right)_flush", "the step between {} and the fronts"),
        (r"rail_over_bottom_fit", "the step from the bottom up to the rail at {}"),
        (r"panel_behind_stile_fit", "the edge of {} behind its stile"),
        (r"left_to_trim", "what is left to trim of {}"),
        (r"step_beside", "the step between the face of {} and the frame beside it"),
        (r"(left|right)_joint", "the joint at {}"),
    )
)
"""What a fit is called by the last part of its path; any other by that part."""

_MEETS = (
    ("the step ", "flush"), ("the edge ", "flush"), ("the mitre ", "to meet"),
    ("the joint ", "to meet"),
)  # fmt: skip
"""How a fit is planned that leaves nothing, by how its name begins; any other: 'as none'."""

_ABOUT_NOTHING = re.compile(r"~-?0(?:\"| mm)?$")
_NOT_ZERO = re.compile(r"[1-9]")


def fit_name(fit: Fit, *, owner: str | None = None) -> str:
    """A fit in words: 'the gap beside upper.door_right', 'the width of upper, over or under,'.

    Parameters
    ----------
    owner
        Said instead of its own.
    """
    name, whose = fit.path.rpartition(".")[2], fit.owner if owner is None else owner
    if name.endswith("_error"):
        return f"the {name.removesuffix('_error')} of {whose}, over or under,"
    for pattern, words in _NAMES:
        if pattern.fullmatch(name):
            return words.format(whose)
    return f"{name.removesuffix('_fit').replace('_', ' ')} of {whose}"


class FitNumbers:
    """Gap and band of a fit as numbers that can be asked about.

    Parameters
    ----------
    own
        Where they are worked out.
    """

    def __init__(self, fit: Fit, own: Reckoning) -> None:
        self._fit, self._own = fit, own
        self.gap = own.let("gap", fit.gap)
        self.low = own.worked("low", fit.low, _LOW)
        self.high = own.worked("high", fit.high, _HIGH)

    def said(self, dim: Dim, name: str = "") -> Measure:
        """One of them, or what follows from them, as what it is checked with shows it."""
        own = self._own
        return own.said(dim, gap_text(self._fit, dim.value, own.unit), name)


def fit_problem(fit: Fit, unit: Unit, numbers: FitNumbers | None = None) -> Told:
    """What is wrong with a gap outside its band, and what it must be.

    Of the size of a box, by how much it is over or under; of any other gap, what it is and by how
    much that is too little or too much.

    Parameters
    ----------
    numbers
        None: nobody asks about its numbers.
    """
    of = numbers or FitNumbers(fit, Reckoning("fit", fit.path, unit, {}))
    name, wide = fit.path.rpartition(".")[2], fit.gap.value > fit.high
    low, high = of.said(of.low), of.said(of.high)
    if name.endswith("_error"):
        off = of.said(of.gap if of.gap.value > 0 else -of.gap, "off")
        even = tell("{} either way", high)
        return tell(
            "{} is {} {} in {}; {} is allowed",
            fit.owner, off, "over" if wide else "under", name.removesuffix("_error"),
            even if fit.low == -fit.high else tell("{} to {}", low, high),
        )  # fmt: skip
    by = of.said(of.gap - of.high if wide else of.low - of.gap, "by")
    return tell(
        "{} is {}, {} too {}; it must be {} to {}",
        fit_name(fit).rstrip(","), of.said(of.gap), by, "much" if wide else "little", low, high,
    )  # fmt: skip


def gap_text(fit: Fit, value: Fraction, unit: Unit) -> str:
    """A gap of a fit, or a bound of it, as what it is checked with shows it.

    What a tape shows as nothing is told as a calliper reads it; what that cannot tell is 0.
    """
    text = size_text(value, unit, calliper=fit.high - fit.low < 1)
    if not _is_about_nothing(text):
        return text
    return size_text(value, unit, calliper=True).removeprefix("~")


def _is_about_nothing(text: str) -> bool:
    return _ABOUT_NOTHING.match(text) is not None


def is_planned_to_meet(fit: Fit, unit: Unit) -> bool:
    """Whether a tape can tell no gap at all where a fit is planned."""
    return not fit.gap.value or _is_about_nothing(size_text(fit.gap.value, unit))


def planned_text(fit: Fit, unit: Unit, numbers: FitNumbers | None = None) -> Told:
    """How a gap is planned: 'as 1/8"', 'flush', 'to meet', 'as none', 'flush within 0.004"'.

    Parameters
    ----------
    numbers
        None: nobody asks about its numbers.
    """
    of = numbers or FitNumbers(fit, Reckoning("fit", fit.path, unit, {}))
    if not is_planned_to_meet(fit, unit):
        return tell("as {}", of.said(of.gap))
    size = of.said(of.gap if of.gap.value > 0 else -of.gap, "off")
    name = fit_name(fit)
    word = next((word for begin, word in _MEETS if name.startswith(begin)), "as none")
    return tell("{} within {}", word, size) if _NOT_ZERO.search(size.text) else Told(word)
