"""Style values on a chain that grows after the room is built."""

from __future__ import annotations

from casewright.dims import Chain, Dim
from casewright.room.model import Room

__all__ = ["style_number", "told_style"]


def style_number(room: Room, chain: Chain, key: str) -> Dim:
    """A style value, `style.<key>`, entered the first time it is asked for."""
    known = chain.nodes.get(f"style.{key}")
    return known or chain.place("style").given(key, room.spec.style[key])


def told_style(room: Room, key: str) -> Dim:
    """A style value to be told, `style.<key>`: nothing is entered that nothing was built from."""
    known = room.chain.nodes.get(f"style.{key}")
    if known is not None:
        return known
    given = room.spec.style[key]
    dim = Dim("", (), given.value)
    dim.origin, dim.path = given.origin, f"style.{key}"
    return dim
