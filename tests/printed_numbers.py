"""Whether a printed number is that of the chain which its path names."""

from __future__ import annotations

from collections.abc import Mapping

from casewright.dims import Dim, Measure, Unit
from casewright.outputs.document import PrintedNumber

__all__ = ["is_told"]


def is_told(number: PrintedNumber, nodes: Mapping[str, Dim], unit: Unit) -> bool:
    """By its value; in a drawing by its text. What lies below a datum is told without its sign."""
    dim = nodes.get(number.path)
    if dim is None:
        return False
    if number.value is not None:
        return abs(number.value) == abs(dim.value)
    told = (Measure(sign * dim.value, unit, dim.path).text for sign in (1, -1))
    return number.text in told
