"""Data sheets of drawer slides."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from casewright.dims import Given

__all__ = ["LAST_HOLE", "SlideSheet", "UndermountSheet"]

LAST_HOLE = Fraction(10)
"""A slide has no hole nearer to its rear end [mm] (common practice)."""


@dataclass(frozen=True, slots=True)
class SlideSheet:
    """A pair of slides: how much air they take, where their holes are, how long they come.

    Parameters
    ----------
    air
        Side-mounted: between the drawer's box and the case at each side. Undermount: width of
        the opening less the inside width of the box [mm].
    play
        How much more than that, in all, the slides still take [mm].
    lengths
        To be had, shortest first [mm]; the drawer's box is as long.
    front
        Front ends of the slides behind the front of the case [mm].
    behind
        Least room behind the box [mm].
    below
        Least room under the box's sides [mm].
    line
        Screw holes in the case's side above the lower edge of the box's sides [mm].
    holes
        Those holes behind the slide's front end [mm]; short slides go without the last ones.
    box_holes
        Holes in the box's own sides, on the same line, behind its front end [mm]; none where
        nothing is screwed to the box's sides.
    hole, depth
        Diameter and depth of the pilot holes [mm].
    placeholder
        True when nobody has typed the sheet of the slides in hand: asked for before boring.
    load
        What a pair carries, drawer included [kg]; None: nobody has said.
    """

    key: str
    title: str
    air: Given
    play: Given
    lengths: tuple[Given, ...]
    front: Given
    behind: Given
    below: Given
    line: Given
    holes: tuple[Given, ...]
    box_holes: tuple[Given, ...]
    hole: Given
    depth: Given
    placeholder: bool
    load: Fraction | None = field(default=None, kw_only=True)


@dataclass(frozen=True, slots=True)
class UndermountSheet(SlideSheet):
    """Concealed slides: the box stands on them, hooked at its back.

    Parameters
    ----------
    thickest
        Thickest side of a box that they take [mm].
    recess
        Underside of the box's bottom above the lower edge of its sides [mm].
    notch_width, notch_height
        Rear notches: cut out of the lower corners of the box's back, from the inside of its
        sides and from its lower edge [mm].
    hook, hook_depth
        Diameter and depth of the holes in the back that the hooks go into [mm].
    hook_in, hook_up
        Those holes from the inside of the box's sides, and above their lower edge [mm].
    """

    thickest: Given
    recess: Given
    notch_width: Given
    notch_height: Given
    hook: Given
    hook_depth: Given
    hook_in: Given
    hook_up: Given
