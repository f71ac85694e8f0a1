"""What is insisted on beside a task, so that answers differ in kind."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = ["FillersAsked", "LayoutDemand"]

FillersAsked = Literal["equal", "left", "right"]
"""Alike to the step, or what can go there at the left, or at the right."""


@dataclass(frozen=True, slots=True)
class LayoutDemand:
    """What is insisted on beside the task.

    Parameters
    ----------
    on_centre
        True: every middle stands on what it is to stand on, to the half step. False: it may stand
        off at little cost, for what else that gives. None: as the preferences have it.
    fillers
        Where the filler goes; None: wherever it is best.
    one_width
        Every case whose width is free is as wide as the others.
    on_seams
        Every seam between cases stands on one of those it is best to stand on.
    unlike
        Orders that are not wanted again, nor their mirror images: numbers of the places as the
        task lists them, left to right.
    """

    on_centre: bool | None = None
    fillers: FillersAsked | None = None
    one_width: bool = False
    on_seams: bool = False
    unlike: tuple[tuple[int, ...], ...] = ()
