"""A fact: the size a thing was cut to, or the size read on it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from casewright.dims import Cause, Origin

__all__ = ["NO_FACTS", "Fact", "Facts", "merged"]


@dataclass(frozen=True, slots=True)
class Fact:
    """What is known of one dimension from the real world.

    Parameters
    ----------
    origin
        Tool and occasion: 'calliper, 12 May'.
    cut
        Size it was cut to [mm], or None.
    built
        Size read on the real thing [mm], or None. It wins over `cut`.
    causes
        Uncertainty of the reading.
    """

    origin: Origin
    cut: Fraction | None = None
    built: Fraction | None = None
    causes: tuple[Cause, ...] = ()


Facts = Mapping[str, Fact]
NO_FACTS: Facts = MappingProxyType({})


def merged(*many: Facts) -> Facts:
    """Several sets of facts as one; a later one adds to or replaces an earlier one's values."""
    result: dict[str, Fact] = {}
    for facts in many:
        for path, fact in facts.items():
            old = result.get(path)
            if old is None:
                result[path] = fact
                continue
            result[path] = Fact(
                fact.origin,
                fact.cut if fact.cut is not None else old.cut,
                fact.built if fact.built is not None else old.built,
                fact.causes or old.causes,
            )
    return MappingProxyType(result)
