"""A case as its parts, cuts and holes in place, in whole units: what all checks work on."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.cases import Case, Drawer
from casewright.casework.features import Bores
from casewright.casework.joints import Joint
from casewright.casework.proof.holes import Row, row_of
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import Units, units_of
from casewright.geometry import Box

__all__ = ["Assembled"]


@dataclass(frozen=True, slots=True)
class Assembled:
    """A case in whole units.

    Parameters
    ----------
    model
        The case.
    units
        What its lengths are counted in.
    solids
        By the part's path, in the case's order.
    rows
        Bores of each part, by the part's path; parts without any are left out.
    works
        Paths of what is put together apart from the box: fronts, boxes of drawers, a face frame.
    """

    model: Case
    units: Units
    solids: dict[str, Solid]
    rows: dict[str, tuple[Row, ...]]
    works: frozenset[str]

    @classmethod
    def of(cls, case: Case, like: Assembled | None = None) -> Assembled:
        """Every part of a case as a solid, every hole in its place.

        Parameters
        ----------
        like
            A case with mostly the same parts: theirs are taken over.
        """
        units = units_of(case)
        is_alike = like is not None and like.units.per_mm == units.per_mm
        known = like.solids if like is not None and is_alike else {}
        solids: dict[str, Solid] = {}
        rows: dict[str, tuple[Row, ...]] = {}
        for part in case.parts:
            same = known.get(part.path)
            if like is not None and same is not None and same.part is part:
                solids[part.path] = same
                if part.path in like.rows:
                    rows[part.path] = like.rows[part.path]
                continue
            solids[part.path] = solid = Solid(part, units)
            bores = [f for f in part.features if isinstance(f, Bores)]
            if bores:
                rows[part.path] = tuple(row_of(solid, each, units) for each in bores)
        works = {front.path for front in case.fronts} | {drawer.path for drawer in case.drawers}
        if case.frame is not None and case.spec.framed:
            works.add(case.frame.path)
        return cls(case, units, solids, rows, frozenset(works))

    @property
    def joints(self) -> tuple[Joint, ...]:
        """All joints of the case."""
        return self.model.joints

    def is_mixed(self, joint: Joint) -> bool:
        """Whether a joint is between a part in a mouth and one that is not: `check_mouth`'s."""
        ends = (self.solids.get(surface.part) for surface in (joint.one, joint.other))
        return len({end.part.turned for end in ends if end is not None}) > 1

    @property
    def box_solids(self) -> list[Solid]:
        """Parts of the box: no fronts, no drawers, no frames on its ends."""
        return [s for s in self.solids.values() if not s.part.front]

    @property
    def case_solids(self) -> list[Solid]:
        """Parts of the box, of the frames on its ends and before it: no fronts, no drawers."""
        frame = None if self.model.frame is None else self.model.frame.path
        return [
            s for s in self.solids.values()
            if s.part.front not in self.works or s.part.front == frame
        ]  # fmt: skip

    def plane_before(self, opening: str) -> int:
        """Plane z that slides and plates lie back from: of the case, or behind an inset front."""
        front = next((f for f in self.model.fronts if f.opening == opening), None)
        if front is not None and front.z.value < self.model.leaf_plane.value:
            return self.units.of(front.z)
        return self.units.of(self.model.leaf_plane)

    def plane_of_slides(self, drawer: Drawer) -> int:
        """Plane z that the slides of a drawer lie back from: a roll-out's, behind its face."""
        plane = self.plane_before(drawer.opening)
        return plane if drawer.front else min(plane, self.units.of(self.model.depth))

    def extent(self, solids: list[Solid]) -> Box:
        """The box that encloses some solids; an empty one for none."""
        if not solids:
            return Box(0, 0, 0, 0, 0, 0)
        outers = [solid.outer for solid in solids]
        lows, highs = zip(*((o[::2], o[1::2]) for o in outers), strict=True)
        x0, y0, z0 = (min(values) for values in zip(*lows, strict=True))
        x1, y1, z1 = (max(values) for values in zip(*highs, strict=True))
        return Box(x0, x1, y0, y1, z0, z1)
