"""What the record says of the shop's own tools: pieces that were cut to a number, then read."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType

from casewright.record import Standing
from casewright.room.specs import JobSpec
from casewright.shop import Learned, learned

__all__ = ["learned_of", "with_learned"]

_Pair = tuple[Fraction, Fraction]


def learned_of(found: Iterable[Standing]) -> Mapping[str, Learned]:
    """By kind of tool, what pieces say of it that were cut with it and read afterwards.

    A piece whose size was told as it came out was not cut to a number; with no tool to its name it
    says nothing.

    Parameters
    ----------
    found
        What stands.
    """
    cuts: dict[str, Standing] = {}
    pairs: dict[str, list[_Pair]] = {}
    for each in sorted(found, key=lambda each: (each.place, each.entry.order)):
        entry = each.entry
        for name, size in entry.sizes:
            path = entry.number_path(name)
            if entry.kind == "cut":
                cuts[path] = each
            elif entry.kind == "reading" and path in cuts:
                cut = cuts.pop(path).entry  # of several readings of a cut the first tells of it
                planned = dict(cut.sizes)[path.removeprefix(f"{cut.path}.")]
                if cut.tool:
                    pairs.setdefault(cut.tool, []).append((size - planned, entry.u or Fraction(0)))
    known = {tool: learned(own) for tool, own in pairs.items()}
    return MappingProxyType({tool: each for tool, each in known.items() if each is not None})


def with_learned(spec: JobSpec, known: Mapping[str, Learned]) -> JobSpec:
    """The job in a shop of which that is known."""
    if not known:
        return spec
    tools = {
        kind: replace(tool, learned=known.get(kind)) for kind, tool in spec.shop.tools.items()
    }
    return replace(spec, shop=replace(spec.shop, tools=tools))
