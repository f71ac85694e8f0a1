"""The desk plans are made on: the room, and every number that a plan takes from outside."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from casewright.cutting.stop import Stop
from casewright.dims import Chain, Dim, Given, Place, greatest
from casewright.room.model import Room
from casewright.shop import USUAL_KERF, saw_kerfs

__all__ = ["USUAL_STOP", "Desk"]

USUAL_STOP = Stop(nodes=500_000)
"""A second or two for a stock whose plan is not proved; up to two sheets of 27 saved against
a first plan (measured on kitchens)."""

_SHORT = 30_000
"""More seldom saves a minute, or a hand of a board, on the parts of a room (measured)."""


@dataclass(slots=True)
class Desk:
    """What every plan is made on.

    Parameters
    ----------
    room
        Whose parts are cut.
    stop
        When to be content with the number of sheets; `short` follows from it.
    eases
        Whether the work of plans is eased: not where their sheets are only counted.
    chain
        The room's numbers and, added to them, those of the plans; the room's own chain stays as
        it is.
    """

    room: Room
    stop: Stop = field(default_factory=Stop)
    eases: bool = True
    chain: Chain = field(init=False)

    def __post_init__(self) -> None:
        own = self.room.chain
        self.chain = replace(
            own, nodes=dict(own.nodes), branches=list(own.branches), used_facts=set(own.used_facts)
        )

    @property
    def short(self) -> Stop:
        """When to be content with the work of a plan, and with a plan of lengths alone."""
        return Stop(min(self.stop.nodes, _SHORT))

    def given(self, path: str, given: Given) -> Dim:
        """A number from outside, entered the first time it is asked for."""
        known = self.chain.nodes.get(path)
        if known is not None:
            return known
        place, _, name = path.rpartition(".")
        return self.chain.place(place).given(name, given)

    def style(self, key: str) -> Dim:
        """A style value, `style.<key>`."""
        return self.given(f"style.{key}", self.room.spec.style[key])

    def kerf(self) -> Dim:
        """The widest kerf of the saws the shop owns: a plan made for it can be cut by any."""
        known = self.chain.nodes.get("plan.kerf")
        if known is not None:
            return known
        kerfs = [
            self.given(f"shop.{kind.replace(' ', '_')}.kerf", kerf)
            for kind, kerf in saw_kerfs(self.room.spec.shop).items()
        ]
        plan = Place(self.chain, "plan")
        return plan.let("kerf", greatest(*kerfs)) if kerfs else plan.given("kerf", USUAL_KERF)
