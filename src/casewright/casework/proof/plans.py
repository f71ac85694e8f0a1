"""Parts of a diagonal corner seen from above: those along the walls, and those in its mouth.

From the corner of the walls, u runs along the run's wall and v along the other one. Edges of all
that is seen lie along the walls or at 45 degrees to them; so two convex pieces are apart when they
are along one of u, v, u + v and u - v. To keep half sums whole, everything is counted twice.
"""

from __future__ import annotations

from typing import NamedTuple

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.features import Cut
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.surds import Surd
from casewright.casework.proof.units import Units
from casewright.geometry import Box, Direction

__all__ = ["Plan", "Plans", "apart_in_plan", "is_clipped", "plans_of"]

_TO_THE_ROOM = Direction.of("+z")


class _Span(NamedTuple):
    """From where to where along one of the four."""

    low: Surd
    high: Surd


class Plan(NamedTuple):
    """A convex piece from above: what it spans along u, v, u + v and u - v [half units]."""

    u: _Span
    v: _Span
    both: _Span
    aside: _Span


def apart_in_plan(one: Plan, other: Plan) -> bool:
    """Whether two pieces share no area seen from above; they may touch."""
    return any(
        a.high.minus(b.low).sign <= 0 or b.high.minus(a.low).sign <= 0
        for a, b in zip(one, other, strict=True)
    )


class Plans:
    """How what lies in a mouth, and what lies along the walls, is seen from above.

    Parameters
    ----------
    mouth
        Of the case.
    width
        Of the case along its run's wall [unit].
    units
        Of the case.
    """

    __slots__ = ("_corner", "_front", "_left", "_middle", "_reach", "_width")

    def __init__(self, mouth: CaseMouth, width: int, units: Units) -> None:
        self._corner = mouth.corner
        self._left, self._width = mouth.corner == "left", width
        self._reach, self._front = units.of(mouth.reach), units.of(mouth.front)
        self._middle = units.of(mouth.width)  # twice the middle

    def turned(self, box: Box) -> Plan:
        """A box in the mouth's axes."""
        sides = [2 * int(x) - self._middle for x in (box.x0, box.x1)]
        out = [2 * (int(z) - self._front) for z in (box.z0, box.z1)]
        s0, s1 = sides if self._left else (-sides[1], -sides[0])
        both = _Span(*(Surd(2 * self._reach, n) for n in out))
        aside = _Span(Surd(0, s0), Surd(0, s1))
        # u = (reach + (n + s) sqrt(2)) / 2, and half of an even number of half units is whole.
        u = _Span(*(Surd(self._reach, (n + s) // 2)
                    for n, s in zip(out, (s0, s1), strict=True)))  # fmt: skip
        v = _Span(*(Surd(self._reach, (n - s) // 2)
                    for n, s in zip(out, (s1, s0), strict=True)))  # fmt: skip
        return Plan(u, v, both, aside)

    def _bevelled(self, plan: Plan, solid: Solid) -> Plan:
        """A piece of a stile whose outer edge is bevelled along a wall, its long point behind."""
        behind = solid.outer._replace(z1=solid.outer.z0)
        if solid.part.hand == self._corner:
            return plan._replace(v=_ended(plan.v, self.turned(behind).v.high))
        return plan._replace(u=_ended(plan.u, self.turned(behind).u.high))

    def plain(self, box: Box, most: int | None = None) -> Plan:
        """A box along the walls.

        Parameters
        ----------
        most
            Where a clip ends it along u + v [unit]; None: no clip does.
        """
        x0, x1 = (int(x) if self._left else self._width - int(x) for x in (box.x0, box.x1))
        u0, u1 = 2 * min(x0, x1), 2 * max(x0, x1)
        v0, v1 = 2 * int(box.z0), 2 * int(box.z1)
        far = u1 + v1 if most is None else min(2 * most, u1 + v1)
        return Plan(_span(u0, u1), _span(v0, v1), _span(u0 + v0, far), _span(u0 - v1, u1 - v0))

    def clip_line(self, solid: Solid, units: Units) -> int | None:
        """Where the clip of a part ends it along u + v [unit]; None: it has none."""
        clips = [f for f in solid.part.features if isinstance(f, Cut) and f.kind == "clip"]
        if not clips:
            return None
        whole = self.plain(solid.outer).both.high.whole // 2
        return whole - max(units.of(clip.width) for clip in clips)

    def of(self, solid: Solid, units: Units) -> list[Plan]:
        """A part's pieces."""
        if solid.part.turned:
            bevels = any(f.kind == "bevel" for f in solid.part.features)
            plans = [self.turned(piece) for piece in solid.pieces]
            return [self._bevelled(plan, solid) for plan in plans] if bevels else plans
        most = self.clip_line(solid, units)
        return [self.plain(piece, most) for piece in solid.pieces]


def plans_of(case: Assembled) -> Plans | None:
    """How the parts of a case are seen from above; None where none lies at 45 degrees."""
    mouth = case.model.mouth
    if mouth is None:
        return None
    return Plans(mouth, case.units.of(case.model.width), case.units)


def is_clipped(solid: Solid, mouth: CaseMouth) -> bool:
    """Whether its one clip is at 45 degrees, right through, at its corner away from both walls."""
    clips = [f for f in solid.part.features if isinstance(f, Cut) and f.kind == "clip"]
    if len(clips) != 1:
        return False
    [cut] = clips
    outward = Direction(0, 1 if mouth.corner == "left" else -1)
    if {solid.way(cut.datum), solid.way("w0")} != {outward, _TO_THE_ROOM}:
        return False
    through = cut.depth.value == solid.part.finished.thickness.value
    from_corner = not cut.at.value and (cut.start is None or not cut.start.value)
    return through and from_corner and cut.end is not None and cut.end.value == cut.width.value


def _ended(span: _Span, most: Surd) -> _Span:
    return span if span.high.minus(most).sign <= 0 else span._replace(high=most)


def _span(low: int, high: int) -> _Span:
    return _Span(Surd(low), Surd(high))
