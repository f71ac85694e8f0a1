"""Tenons on the rails of a face frame, mortises for them in its stiles."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.casework.features import Cut, Plane
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import mortise_setup, tongue_setup
from casewright.casework.specs import Hand
from casewright.dims import Dim, Way, least

__all__ = ["Tenon", "TenonSeat", "cut_tenon", "plan_tenon"]

_FACES: tuple[Literal["A", "B"], ...] = ("A", "B")


@dataclass(frozen=True, slots=True)
class Tenon:
    """The tenons of a frame and their mortises, one set-up for each cut.

    Parameters
    ----------
    long
        From the shoulder to the rail's end [mm].
    front, rear, thick
        What is taken off face A and face B, and what is left [mm].
    at, width, depth
        Of the mortise: from face A to its near wall, its width, its depth [mm].
    """

    long: Dim
    front: Dim
    rear: Dim
    thick: Dim
    at: Dim
    width: Dim
    depth: Dim


@dataclass(frozen=True, slots=True)
class TenonSeat:
    """Where one end of a rail goes.

    Parameters
    ----------
    stile, hand
        The stile, and its side.
    low, high
        Where the rail's edges lie along the stile, from its lower end [mm]; None: at its end.
    """

    stile: Outline
    hand: Hand
    low: Dim | None
    high: Dim | None


def plan_tenon(maker: Maker, stile: Dim) -> Tenon | None:
    """A third of the frame's thickness, as wide as a bit that is owned; None without tenons.

    Parameters
    ----------
    stile
        Width of the narrower stile [mm].
    """
    if maker.spec.face_joint != "tenons":
        return None
    place = maker.place.at("frame").at("tenon")
    house, thick = maker.house, maker.house.thickness(maker.spec.face_stock)
    third = place.let("third", thick / 3)
    wide = maker.machined(place, "mortise", house.bit(third) or third, tool="router")
    step = maker.style("cut_step").value
    middle = (thick - wide) / 2
    if step and middle.value % step:
        middle, _ = place.rounded("at_to_set", middle, step, Way.DOWN)
    at = maker.machined(place, "at", middle, tool="router")
    relief = maker.style("tongue_relief")
    # A fifth of the stile is left behind the mortise (common practice).
    most = place.let("most", (stile - relief) * Fraction(4, 5))
    long = maker.machined(place, "length", least(maker.style("face_tenon"), most))
    left = place.let("thickness", wide - maker.style("dado_clearance"))
    return Tenon(
        long=long,
        front=maker.machined(place, "front", at),
        rear=maker.machined(place, "rear", thick - at - left),
        thick=left,
        at=at,
        width=wide,
        depth=maker.machined(place, "depth", long + relief, tool="router"),
    )


def cut_tenon(
    maker: Maker, rail: Outline, word: str, tenon: Tenon, seats: tuple[TenonSeat, TenonSeat]
) -> None:
    """Cut both ends of a rail and their mortises; join them, glued against the front wall."""
    ends: tuple[Plane, Plane] = ("l0", "l1")
    for end, seat in zip(ends, seats, strict=True):
        name = f"frame.joint_{word}_{seat.hand}"
        for face in _FACES:
            place = rail.place.at(_cheek(face, end))
            deep = tenon.front if face == "A" else tenon.rear
            maker.machine(
                rail.path,
                Cut(
                    path=place.path, kind="tongue", face=face, runs="w", datum=end,
                    at=maker.zero, width=tenon.long, depth=deep, start=None, end=None,
                    asked_by=maker.path(name),
                    setup=tongue_setup(maker.house, place, long=tenon.long, depth=deep),
                ),
            )  # fmt: skip
        slot = _mortise(maker, seat, word, tenon, maker.path(name))
        _join(maker, rail, (name, end), tenon, (seat.stile, slot))


def _mortise(maker: Maker, seat: TenonSeat, word: str, tenon: Tenon, joint: str) -> str:
    place = seat.stile.place.at(f"mortise_{word}")
    maker.machine(
        seat.stile.path,
        Cut(
            path=place.path, kind="mortise", face="w1", runs="l", datum="t1", at=tenon.at,
            width=tenon.width, depth=tenon.depth, start=seat.low, end=seat.high, asked_by=joint,
            setup=mortise_setup(maker.house, place, at=tenon.at, width=tenon.width,
                                depth=tenon.depth),
        ),
    )  # fmt: skip
    return place.path


def _join(
    maker: Maker,
    rail: Outline,
    named: tuple[str, Plane],
    tenon: Tenon,
    met: tuple[Outline, str],
) -> None:
    """Cheek, both shoulders, and what is left free behind it and at its end."""
    (name, end), (stile, slot) = named, met
    shoulder: Plane = "l1" if end == "l0" else "l0"
    front, rear = (f"{rail.path}.{_cheek(face, end)}" for face in _FACES)
    place = maker.place.at(name)
    play = place.let("play", tenon.at + tenon.width - (rail.thickness - tenon.rear))
    free = place.let("relief", tenon.depth - tenon.long)
    glue = Fastening("glue", 1, None, (rail.path,), stile.path)
    join = maker.join
    join(name, "groove", (rail.path, "t0", front), (stile.path, "t1", slot), fastenings=(glue,))
    join(f"{name}_shoulder", "groove", (rail.path, shoulder, front), (stile.path, "w1"))
    join(f"{name}_rear_shoulder", "groove", (rail.path, shoulder, rear), (stile.path, "w1"))
    join(f"{name}_play", "loose", (rail.path, "t1", rear), (stile.path, "t0", slot), gap=play)
    join(f"{name}_relief", "loose", (rail.path, end), (stile.path, "w0", slot), gap=free)


def _cheek(face: Literal["A", "B"], end: Plane) -> str:
    return f"tenon_{'front' if face == 'A' else 'rear'}_{end[1]}"
