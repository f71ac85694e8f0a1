"""One case built by itself, to try sizes of its pieces without building the whole room."""

from __future__ import annotations

from dataclasses import replace

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.dims import Chain, Dim, Origin
from casewright.facts import Facts
from casewright.room.model import Room
from casewright.room.seam_strips import seams_at

__all__ = ["case_with"]


def case_with(room: Room, case: Case, facts: Facts) -> tuple[Room, Case] | None:
    """A case as it would be with these facts, and a room of its chain alone.

    What its run decides for it stays as it is: its width, its height, its plinth.

    Returns
    -------
    None for a case that does not stand by itself: a plinth, a panel, an island.
    """
    spec = room.spec
    own = next((each for each in spec.cases if each.key == case.key), None)
    if own is None:
        return None
    house = House(
        Chain(facts), spec.style, spec.stock, spec.hardware, spec.shop, spec.unit, spec.moisture
    )
    run = next((each for each in spec.runs if case.key in each.cases), None)
    width, height = (
        _bare(room.chain.nodes[f"{case.key}.wanted_{name}"]) for name in ("width", "height")
    )
    crown = run.trims.crown if run is not None else None
    under = crown is not None and case.key in crown.fitted
    alone = build_case(
        house,
        own,
        width if own.width is None else None,
        height=height if under else None,
        own_plinth=any(part.path.startswith(f"{case.key}.plinth.") for part in case.parts),
        seams=seams_at(spec, run).get(case.key, ()) if run is not None else (),
    )
    return replace(room, chain=house.chain), alone


def _bare(wanted: Dim) -> Dim:
    """A size that somebody else decides, as a number."""
    bare = Dim("", (), wanted.value)
    bare.origin = Origin("solved", "as its run has it")
    return bare
