"""Fits in the words of the shop: 'the gap beside upper.door_right is 1/32", 1/32" too little'."""

from __future__ import annotations

import re
from fractions import Fraction

from casewright.dims import Fit, Unit, size_text

__all__ = ["fit_name", "fit_problem", "gap_text", "is_planned_to_meet", "planned_text"]

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


def fit_problem(fit: Fit, unit: Unit) -> str:
    """What is wrong with a gap outside its band, and what it must be.

    Of the size of a box, by how much it is over or under; of any other gap, what it is and by how
    much that is too little or too much.
    """
    gap, name = fit.gap.value, fit.path.rpartition(".")[2]
    wide = gap > fit.high
    low, high = gap_text(fit, fit.low, unit), gap_text(fit, fit.high, unit)
    if name.endswith("_error"):
        off = gap_text(fit, abs(gap), unit)
        even = f"{high} either way" if fit.low == -fit.high else f"{low} to {high}"
        return (
            f"{fit.owner} is {off} {'over' if wide else 'under'} in "
            f"{name.removesuffix('_error')}; {even} is allowed"
        )
    by = gap_text(fit, gap - fit.high if wide else fit.low - gap, unit)
    return (
        f"{fit_name(fit).rstrip(',')} is {gap_text(fit, gap, unit)}, {by} too "
        f"{'much' if wide else 'little'}; it must be {low} to {high}"
    )


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


def planned_text(fit: Fit, unit: Unit) -> str:
    """How a gap is planned: 'as 1/8"', 'flush', 'to meet', 'as none', 'flush within 0.004"'."""
    size = gap_text(fit, abs(fit.gap.value), unit)
    if not is_planned_to_meet(fit, unit):
        return f"as {gap_text(fit, fit.gap.value, unit)}"
    name = fit_name(fit)
    word = next((word for begin, word in _MEETS if name.startswith(begin)), "as none")
    return f"{word} within {size}" if _NOT_ZERO.search(size) else word
