"""Where a number that is asked about stands: with the model, or with what comes after it."""

from __future__ import annotations

from casewright.dims import Chain
from casewright.room.model import Room

__all__ = ["chain_with", "hangs_on_plans"]

_PLANNED = ("plan", "stock", "shop")


def hangs_on_plans(room: Room, path: str) -> bool:
    """Whether the cutting plans must be made before the number is known."""
    return path not in room.chain.nodes and path.partition(".")[0] in _PLANNED


def chain_with(room: Room, path: str) -> Chain:
    """The chain that a number stands on, if there is one of that path.

    The model knows what its parts are made from; the rest is worked out when it is asked for, and
    what works it out, which takes long, is loaded then. Sheets, boards and settings of the saw
    come from the cutting plans.
    """
    if path in room.chain.nodes:
        return room.chain
    if hangs_on_plans(room, path):
        from casewright.job.later_numbers import planned_chain

        return planned_chain(room, path)
    from casewright.job.later_numbers import chain_after

    return chain_after(room, path)
