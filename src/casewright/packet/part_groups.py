"""Which parts are the same piece of work, and which are mirror images of each other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.casework.features import Cut, Feature, Setup
from casewright.casework.parts import Part
from casewright.dims import Dim

__all__ = ["PartGroup", "group_parts"]

_PLAIN_NAMES = ("datum end", "far end", "datum edge", "far edge")


@dataclass(frozen=True, slots=True)
class PartGroup:
    """Parts that share a card.

    Parameters
    ----------
    parts
        Alike in everything: size, features, hand, stock. At least one.
    mirrored
        Those of the other hand, their mirror images; none where there are none.
    """

    parts: tuple[Part, ...]
    mirrored: tuple[Part, ...] = ()

    @property
    def first(self) -> Part:
        """The one that is drawn and described.

        Where the same piece stands the other way round elsewhere, its ends and edges go by what
        they are to the tape: datum end, far end.
        """
        first = self.parts[0]
        names = zip(*(part.ends for part in self.parts), strict=True)
        same = [len(set(each)) == 1 for each in names]
        told = zip(first.ends, _PLAIN_NAMES, same, strict=True)
        l0, l1, w0, w1 = (own if alike else plain for own, plain, alike in told)
        return first if all(same) else replace(first, ends=(l0, l1, w0, w1))

    @property
    def pieces(self) -> tuple[Part, ...]:
        """All of them."""
        return (*self.parts, *self.mirrored)

    @property
    def waits_for(self) -> tuple[str, ...]:
        """Paths of the open questions that any of the pieces waits for."""
        return tuple(dict.fromkeys(path for part in self.pieces for path in part.waits_for))

    @property
    def held_up(self) -> str:
        """Marks of the pieces that wait for an answer; empty where all of them do, or none."""
        marks = [part.mark for part in self.pieces if part.waits_for]
        return ", ".join(marks) if len(marks) < len(self.pieces) else ""


def group_parts(parts: Iterable[Part]) -> tuple[PartGroup, ...]:
    """Every part once, in the order the groups first come."""
    alike: dict[tuple[object, ...], list[Part]] = {}
    for part in parts:
        alike.setdefault(_work(part), []).append(part)
    return tuple(_paired([tuple(group) for group in alike.values()]))


def _paired(groups: Sequence[tuple[Part, ...]]) -> Iterator[PartGroup]:
    left = {_work(group[0]): group for group in groups}
    for group in groups:
        if left.pop(_work(group[0]), None) is None:
            continue
        mirrored = left.pop(_work(_mirror(group[0])), ()) if group[0].hand else ()
        yield PartGroup(group, mirrored)


def _mirror(part: Part) -> Part:
    """The same piece for the other hand: measured alike from its datums."""
    return replace(part, hand="left" if part.hand == "right" else "right")


def _work(part: Part) -> tuple[object, ...]:
    """All that the person at the bench would see of a part, as plain values.

    Not what it waits for: one that is made already is still the same piece of work as the rest.
    """
    size, blank = part.finished, part.blank
    return (
        part.stock, part.milled_from, part.grain, part.hand,
        part.ends if part.hand else _told_ends(part),
        tuple(each.value for each in (size.length, size.width, size.thickness)),
        tuple(each.value for each in (blank.length, blank.width)),
        tuple((e.edge, e.kind, e.thickness.value, e.stock) for e in part.edges),
        _value(part.corner_radius),
        (part.film.length.value, part.film.width.value) if part.film else None,
        tuple(sorted(repr((_feature(f), _setup(f.setup))) for f in part.features)),
    )  # fmt: skip


def _told_ends(part: Part) -> tuple[str, ...]:
    """Names of its ends and edges that its set-ups speak of; the others are left empty."""
    told = " ".join(feature.setup.check_words for feature in part.features)
    return tuple(name if name in told else "" for name in part.ends)


def _feature(feature: Feature) -> tuple[object, ...]:
    if isinstance(feature, Cut):
        return (
            feature.kind, feature.face, feature.datum, feature.runs,
            *(_value(d) for d in (feature.at, feature.width, feature.depth, feature.start,
                                  feature.end, feature.radius)),
        )  # fmt: skip
    return (
        feature.kind, feature.face, feature.datum_l, feature.datum_w, feature.toward,
        _value(feature.diameter), _value(feature.depth),
        tuple((along.value, across.value) for along, across in feature.places),
    )  # fmt: skip


def _setup(setup: Setup) -> tuple[object, ...]:
    return (
        setup.tool, setup.bit, setup.passes, setup.check_words, setup.cautions,
        *(_value(d) for d in (setup.fence, setup.depth, setup.bit_size, setup.stop,
                              setup.collar, setup.check)),
    )  # fmt: skip


def _value(dim: Dim | None) -> Fraction | None:
    return None if dim is None else dim.value
