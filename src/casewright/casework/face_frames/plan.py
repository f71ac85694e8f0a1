"""A face frame as it is planned before its box is cut: how far it stands out beside it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.casework.carcase import Opening
from casewright.casework.fronts.ends import end_stock
from casewright.casework.fronts.face_edges import inset_by
from casewright.casework.maker import Maker
from casewright.casework.specs import Hand
from casewright.dims import Dim, Way, tell
from casewright.findings import Finding, Severity

__all__ = ["FramePlan", "bottom_rise", "check_inset", "plan_frame"]

_HANDS: tuple[Hand, Hand] = ("left", "right")


@dataclass(frozen=True, slots=True)
class FramePlan:
    """Sizes of a frame as wished.

    Parameters
    ----------
    width
        Outside [mm].
    thickness
        Of its boards [mm].
    beside
        How far it stands out at the left and at the right of the box [mm].
    stiles
        Widths of the left and of the right stile [mm].
    """

    width: Dim
    thickness: Dim
    beside: tuple[Dim, Dim]
    stiles: tuple[Dim, Dim]


def plan_frame(maker: Maker, width: Dim) -> FramePlan:
    """The frame before a box; its width is the one asked for of the case.

    Beside a finished end it stands out as far as that is thick, so that the two are flush; at a
    wall it stands out farther, to be scribed. Such a stile is wider on its outside only: its inner
    edge stays where it is. Before the panels of a surround the width asked for is that between
    the stiles, which what is pushed in has to pass.
    """
    left, right = (_beside(maker, hand) for hand in _HANDS)
    stiles = tuple(_stile(maker, beside) for beside in (left, right))
    thickness = maker.house.thickness(maker.spec.face_stock)
    if maker.spec.between_panels:
        # Box and stiles may each end half a step of the grid off: the mouth is never less.
        spare = 2 * maker.style("cut_step")
        width = maker.place.at("frame").let("wished_width", width + stiles[0] + stiles[1] + spare)
    plan = FramePlan(width, thickness, (left, right), (stiles[0], stiles[1]))
    for hand in _HANDS:
        _check_stile(maker, plan, hand)
    return plan


def _beside(maker: Maker, hand: Hand) -> Dim:
    if hand in maker.spec.dressed:
        return maker.house.thickness(end_stock(maker.spec))
    usual = maker.style("face_overhang")
    return usual + maker.style("face_scribe") if hand in maker.spec.scribes else usual


def _stile(maker: Maker, beside: Dim) -> Dim:
    usual, width = maker.style("face_overhang"), maker.style("face_stile")
    return width if beside is usual else width + (beside - usual)


def bottom_rise(maker: Maker) -> Dim:
    """How far the underside of a framed box's bottom lies above the frame's lower end [mm].

    Its top is flush with the bottom rail's, or lower by `face_rise` and by less than one step of
    the grid that it is marked in.
    """
    thick = maker.house.thickness(maker.spec.box_stock)
    rail, rise = maker.style("face_rail"), maker.style("face_rise")
    least = thick if rise is maker.zero or not rise.value else thick + rise
    if maker.place.over(least, rail, "the bottom at the frame's lower end, its rail is too low"):
        maker.findings.append(_narrow(maker, "rail", rail, least))
        return maker.zero
    exact, step = rail - least, maker.style("cut_step").value
    if step and exact.value % step:
        return maker.place.rounded("bottom_rise", exact, step, Way.DOWN)[0]
    return maker.place.let("bottom_rise", exact)


def _check_stile(maker: Maker, plan: FramePlan, hand: Hand) -> None:
    """A stile reaches from outside the box to the inside of its side, or farther."""
    side = maker.house.thickness(maker.spec.box_stock)
    number = _HANDS.index(hand)
    stile = plan.stiles[number]
    least = plan.beside[number] + side
    if maker.place.over(least, stile, f"the {hand} stile leaves the edge of its side bare"):
        maker.findings.append(_narrow(maker, "stile", stile, least))


def check_inset(maker: Maker, openings: tuple[Opening, ...], thickness: Dim) -> None:
    """An inset front no thicker than the frame it lies in, or its back stands in the box.

    Parameters
    ----------
    thickness
        Of the frame [mm].
    """
    for opening in openings:
        deep = inset_by(maker, opening)
        if deep is None or deep.value <= thickness.value:
            continue
        path = maker.path(opening.name if opening.row != "doors" else "frame")
        own = maker.reckoning("inset front", path)
        front, frame = own.text(deep, "front"), own.text(thickness)
        into = own.text(deep - thickness, "into")
        maker.findings.append(
            Finding(
                rule="inset front",
                severity=Severity.STOP,
                path=path,
                says=tell(
                    "an inset front of {} is thicker than its face frame of {}: it would stand {} "
                    "into the box",
                    front, frame, into,
                ),
                measured=front.text,
                limit=frame.text,
                source="common practice",
                remedies=(
                    tell("fronts at least {} thinner", into),
                    tell("face_boards of {} or more", front),
                    'overlay = "partial"',
                ),
                numbers=own.numbers,
            )
        )  # fmt: skip
        return


def _narrow(maker: Maker, word: Literal["stile", "rail"], size: Dim, least: Dim) -> Finding:
    own = maker.reckoning("narrow face frame", maker.path(f"frame.{word}"))
    wide, asked = own.text(size), own.text(least, "least")
    behind = "side" if word == "stile" else "bottom"
    return Finding(
        rule="narrow face frame",
        severity=Severity.STOP,
        path=maker.path("frame"),
        says=tell("a {} of {} does not cover the edge of the {} behind it", word, wide, behind),
        measured=wide.text,
        limit=asked.text,
        source="common practice",
        remedies=(tell("set face_{} to {} or more", word, asked),),
        numbers=own.numbers,
    )
