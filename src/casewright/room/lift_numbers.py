"""Weights on a chain: of parts, of cases as they stand and as they are lifted, of lids.

Nothing is built from them; they are told where something is lifted, and each says what it is the
weight of.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.lifted import LIFT, lift_path
from casewright.casework.parts import Part
from casewright.dims import Chain, Dim, Origin, total
from casewright.room.lift_origins import CLIPPED, HANDS, LIMIT, density_of
from casewright.room.lifting import carried_parts, case_effort
from casewright.room.model import Island, Room

__all__ = ["lift_numbers"]

_NOTHING = Origin("solved", "all of it hangs on its doors")


def lift_numbers(room: Room, chain: Chain) -> None:
    """Enter them all on a chain that holds the room's own."""
    own = _Weights(room, chain)
    for case in room.cases:
        own.case(case)
    for run in room.runs:
        for trim in run.trims:
            own.let(lift_path(trim.path), own.of(trim.parts))
    for island in room.islands:
        own.island(island)


class _Weights:
    def __init__(self, room: Room, chain: Chain) -> None:
        self._room = room
        self._chain = chain

    def let(self, path: str, dim: Dim) -> Dim:
        """Name a formula, the first time it is told."""
        place, _, name = path.rpartition(".")
        return self._chain.nodes.get(path) or self._chain.place(place).let(name, dim)

    def of(self, parts: Iterable[Part]) -> Dim:
        """What parts weigh together [kg]."""
        found = [self._part(part) for part in parts]
        return total(*found) if found else self._plain(f"{LIFT}.none", Fraction(0), 0, _NOTHING)

    def island(self, island: Island) -> None:
        """Its boxes with its panels and cleats, as they are carried."""
        boxes = [case for run in self._room.runs_of(island) for case in run.cases]
        carried = (*boxes, self._room.case_of(island))
        bare = [self._chain.nodes[lift_path(case.key, "bare_weight")] for case in carried]
        self.let(lift_path(island.key, "empty_weight"), total(*bare))

    def case(self, case: Case) -> None:
        """As it stands, as it is carried, and what the lifting equation allows of it."""
        self.let(lift_path(case.key), self.of(case.lifted))
        self.let(lift_path(case.key, "bare_weight"), self.of(carried_parts(case)))
        self._panel(case)
        effort = case_effort(self._room, case)
        if effort.limit is None or not effort.limit:
            return
        outside, hands = (case.width, case.depth), []
        worst = effort.worst
        for word, value in (("up", worst.height), ("out", worst.out), ("moved", worst.rise)):
            path, sizes = f"{LIFT}.{case.key}.hands_{word}", outside if word == "out" else ()
            hands.append(self._by(path, value, HANDS[word], *sizes))
        self._by(lift_path(case.key, "limit_weight"), effort.limit, LIMIT, *hands, power=0)

    def _panel(self, case: Case) -> None:
        """A panel without its pull, and what the sheet of its appliance lets it weigh."""
        sheet = case.spec.panel
        if sheet is None:
            return
        self.let(lift_path(case.key, "panel_weight"), self.of(case.parts))
        if sheet.most_weight is not None:
            most = sheet.most_weight
            self._by(lift_path(case.key, "most_weight"), most.value, most.origin, power=0)

    def _part(self, part: Part) -> Dim:
        """Of a finished piece, as `Part.weight` has it."""
        known = self._chain.nodes.get(lift_path(part.path))
        if known is not None:
            return known
        size = part.finished
        area = size.length * size.width
        if part.clipped:
            path = f"{LIFT}.{part.path}.clipped"
            area -= self._by(path, part.clipped, CLIPPED, power=2)
        return self.let(lift_path(part.path), area * size.thickness * self._density(part.stock))

    def _density(self, key: str) -> Dim:
        given = density_of(self._room.spec.stock, key)
        return self._plain(f"stock.{key}.density", given.value, -3, given.origin)

    def _plain(self, path: str, value: Fraction, power: int, origin: Origin) -> Dim:
        known = self._chain.nodes.get(path)
        return known or self._by(path, value, origin, power=power)

    def _by(
        self, path: str, value: Fraction, origin: Origin, *rests_on: Dim, power: int = 1
    ) -> Dim:
        """A number worked out in another way than by a formula of the chain."""
        dim = Dim("by" if rests_on else "", rests_on, value, power)
        dim.origin = origin
        return self._chain.register(path, dim)
