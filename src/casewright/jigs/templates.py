"""Templates: the same holes in many pieces, measured once.

Pieces whose holes lie alike from a corner make a family, whichever corner it is: turned over, a
template serves both hands. Two pieces are enough to make one worth while.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.features import Bores
from casewright.casework.parts import Part
from casewright.dims import Dim, greatest
from casewright.jigs.model import Hole, Template
from casewright.jigs.numbers import JigNumbers

__all__ = ["templates"]

_ENOUGH = 2
_PAIR = 2


@dataclass(frozen=True, slots=True)
class _Sort:
    """What one sort of template is for."""

    kind: str
    roles: frozenset[str]
    name: str
    title: str
    how: str


_PLATES = (
    "Stand it on the end that the plates are measured from, the stop along the front edge, and "
    "drill with a collar on the bit; turn it over for the other side."
)
_PULLS = (
    "Lay it on the corner that the pull is nearest to, the stops tight against end and edge, and "
    "bore through onto a block clamped behind; turn it over for the other hand."
)
_SORTS = (
    _Sort("pull", frozenset(("door", "slab", "stile")), "pulls", "Pull template", _PULLS),
    _Sort("hinge plate", frozenset(("side", "partition", "hinge strip")), "plates",
          "Plate template", _PLATES),
)  # fmt: skip


def templates(numbers: JigNumbers) -> Iterator[Template]:
    """A template for each family of pulls and of hinge plates."""
    for sort in _SORTS:
        families: dict[tuple[tuple[Fraction, Fraction], ...], list[_Bored]] = {}
        for part in numbers.room.parts:
            bored = _bored(part, sort)
            if bored is not None:
                families.setdefault(bored.key, []).append(bored)
        worth = [found for found in families.values() if len(found) >= _ENOUGH]
        for number, found in enumerate(worth, start=1):
            name = sort.name if len(worth) == 1 else f"{sort.name}_{number}"
            yield _template(numbers, sort, name, found)


@dataclass(frozen=True, slots=True)
class _Bored:
    part: Part
    holes: tuple[Hole, ...]
    features: tuple[Bores, ...]

    @property
    def key(self) -> tuple[tuple[Fraction, Fraction], ...]:
        return tuple((hole.along.value, hole.across.value) for hole in self.holes)


def _bored(part: Part, sort: _Sort) -> _Bored | None:
    """The holes of a piece that come from one corner; None where it has none of that sort."""
    features = [f for f in part.features if isinstance(f, Bores) and f.kind == sort.kind]
    corners = {(f.datum_l, f.datum_w) for f in features}
    if part.role not in sort.roles or len(corners) != 1:
        return None
    holes = [Hole(along, across, f.diameter) for f in features for along, across in f.places]
    ordered = sorted(holes, key=lambda hole: (hole.along.value, hole.across.value))
    return _Bored(part, tuple(ordered), tuple(features))


def _template(numbers: JigNumbers, sort: _Sort, name: str, found: list[_Bored]) -> Template:
    holes = found[0].holes
    margin = numbers.style("jig_margin")
    length = numbers.named(name, "length", _farthest([h.along for h in holes]) + margin)
    width = numbers.named(name, "width", _farthest([h.across for h in holes]) + margin)
    uses = tuple(each.part.path for each in found)
    pairs, pitch = _pairs(numbers, name, found[0]) if sort.kind == "hinge plate" else ((), None)
    return Template(f"jig.{name}", sort.title, sort.how, length, width, holes, uses, pairs, pitch)


def _pairs(numbers: JigNumbers, name: str, bored: _Bored) -> tuple[tuple[Dim, ...], Dim | None]:
    """Middles of the plates, whose two holes lie a pitch apart."""
    middles = []
    pitch = next((f.pitch for f in bored.features if f.pitch is not None), None)
    for number, feature in enumerate(bored.features, start=1):
        if len(feature.places) != _PAIR:
            return (), None
        (low, _), (high, _) = feature.places
        middles.append(numbers.named(name, f"plate_{number}", (low + high) / _PAIR))
    return tuple(middles), pitch


def _farthest(dims: list[Dim]) -> Dim:
    return dims[0] if len(dims) == 1 else greatest(*dims)
