"""Style values on a chain that grows after the room is built."""

from __future__ import annotations

from casewright.dims import Chain, Dim
from casewright.room.model import Room

__all__ = ["style_number"]


def style_number(room: Room, chain: Chain, key: str) -> Dim:
    """A style value, `style.<key>`, entered the first time it is asked for."""
    known = chain.nodes.get(f"style.{key}")
    return known or chain.place("style").given(key, room.spec.style[key])
