"""What the record says of the shop's own tools: what they cut, what they read twice."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType

from casewright.job.defaults import TOOL_ACCURACY
from casewright.record import Entry, Standing
from casewright.room.specs import JobSpec
from casewright.shop import Learned, learned, learned_twice
from casewright.shop.gauges import RULE

__all__ = ["learned_of", "with_learned"]

_Pair = tuple[Fraction, Fraction]

_SLIP = 4
"""Off by more than so many times what such a tool strays by at most is a slip, and says nothing of
the tool: this house's own judgement."""


def learned_of(found: Iterable[Standing]) -> Mapping[str, Learned]:
    """By kind of tool, what is known of it: of a saw by what it cut, of a tape by what it read.

    A piece that was cut by its numbers counts once it is read, one that was told as it came out at
    once; a reading counts when the same tool read the same thing before.

    Parameters
    ----------
    found
        What stands.
    """
    cuts: dict[str, Entry] = {}
    told: dict[str, tuple[str, _Pair]] = {}
    twice: dict[str, list[Fraction]] = {}
    for each in sorted(found, key=lambda each: (each.place, each.entry.order)):
        entry = each.entry
        if entry.kind == "cut":
            for path, _, _ in _sizes(entry):
                cuts[path] = entry
                told.pop(path, None)
            told |= {
                path: (entry.tool, (size - aimed, entry.u or Fraction(0)))
                for path, size, aimed in _sizes(entry)
                if aimed is not None
            }
        elif entry.kind == "reading":
            for path, size, before in _sizes(entry):
                if path in cuts:  # of several readings of a cut the first tells of it
                    cut = cuts.pop(path)
                    aimed = next(a if a is not None else s for p, s, a in _sizes(cut) if p == path)
                    told[path] = (cut.tool, (size - aimed, entry.u or Fraction(0)))
                if before is not None:
                    twice.setdefault(entry.tool, []).append(size - before)
    pairs: dict[str, list[_Pair]] = {}
    for tool, pair in told.values():
        pairs.setdefault(tool, []).append(pair)
    known = {
        tool: learned([p for p in own if _is_stray(tool, p[0])]) for tool, own in pairs.items()
    }
    known |= {
        tool: learned_twice([off for off in own if _is_stray(tool, off)])
        for tool, own in twice.items()
    }
    return MappingProxyType({tool: each for tool, each in known.items() if each is not None})


def _sizes(entry: Entry) -> Iterator[tuple[str, Fraction, Fraction | None]]:
    """Paths of the sizes of an entry, each with what it is held against."""
    against = dict(entry.against)
    for name, size in entry.sizes:
        yield entry.number_path(name), size, against.get(name)


def _is_stray(tool: str, off: Fraction) -> bool:
    usual = {str(kind): accuracy.limit for kind, accuracy in TOOL_ACCURACY.items()}
    return tool in usual and abs(off) <= _SLIP * usual[tool]


def with_learned(spec: JobSpec, known: Mapping[str, Learned]) -> JobSpec:
    """The job in a shop of which that is known."""
    if not known:
        return spec
    owned = dict(spec.shop.tools)
    if RULE.kind in known:
        owned.setdefault(RULE.kind, RULE)
    tools = {kind: replace(tool, learned=known.get(kind)) for kind, tool in owned.items()}
    return replace(spec, shop=replace(spec.shop, tools=tools))
