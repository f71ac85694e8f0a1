"""Corners: how far from square two walls meet, by the law of cosines on the chain."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.dims import Chain, Dim
from casewright.survey.readings import enter_reading
from casewright.survey.specs import CornerSpec
from casewright.survey.walls import SurveyedWall

__all__ = ["CornerWay", "SurveyedCorner", "cosine", "survey_corner"]


@dataclass(frozen=True, slots=True)
class CornerWay:
    """One way in which a corner was read: two sides and what lies across [mm]."""

    name: str
    left: Dim
    right: Dim
    across: Dim
    cosine: Dim


@dataclass(frozen=True, slots=True)
class SurveyedCorner:
    """A corner as read.

    Parameters
    ----------
    ways
        By its triangle, by the diagonal of the two walls; the first one counts.
    """

    spec: CornerSpec
    ways: tuple[CornerWay, ...]

    @property
    def cosine(self) -> Dim | None:
        """Of the angle between the walls [-]; 0 in a square corner; None: not read."""
        return self.ways[0].cosine if self.ways else None


def cosine(left: Dim, right: Dim, across: Dim) -> Dim:
    """Cosine of the angle between two sides: (l^2 + r^2 - a^2) / 2 l r [-] (law of cosines)."""
    return (left * left + right * right - across * across) / (left * right * 2)


def survey_corner(
    chain: Chain, spec: CornerSpec, walls: Mapping[str, SurveyedWall]
) -> SurveyedCorner:
    """Enter the readings of a corner. A diagonal counts where both of its walls have a width."""
    place = chain.place(f"survey.corner.{spec.key}")
    ways: list[CornerWay] = []
    if spec.triangle is not None:
        left = enter_reading(place, "along_left", spec.triangle.left)
        right = enter_reading(place, "along_right", spec.triangle.right)
        across = enter_reading(place, "across", spec.triangle.across)
        found = place.let("cosine", cosine(left, right, across))
        ways.append(CornerWay("triangle", left, right, across, found))
    if spec.diagonal is not None:
        diagonal = enter_reading(place, "diagonal", spec.diagonal)
        sides = [walls[key].width for key in (spec.left, spec.right) if key in walls]
        if len(sides) == 2 and sides[0] is not None and sides[1] is not None:
            name = "cosine_by_diagonal" if ways else "cosine"
            found = place.let(name, cosine(sides[0], sides[1], diagonal))
            ways.append(CornerWay("diagonal", sides[0], sides[1], diagonal, found))
    return SurveyedCorner(spec, tuple(ways))
