"""Test pieces: one scrap for each set-up that is tried out before the first real part."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casewright.breakdown.pieces import Piece
from casewright.casework.features import Cut, Feature
from casewright.casework.parts import Part
from casewright.dims import Dim, Measure, Told, Unit, as_said, reading_text, tell

__all__ = ["test_pieces"]

_CUTS = ("rabbet", "dado", "groove", "lap", "rebate", "tongue", "slot", "mortise")
_BORES = ("pocket", "hinge cup")


def test_pieces(
    stock: str,
    parts: Iterable[Part],
    *,
    length: Dim,
    width: Dim,
    turns: bool,
    unit: Unit,
) -> tuple[Piece, ...]:
    """One scrap of a stock for each different set-up of its parts.

    Two cuts share a set-up when kind, width and depth are the same: the fence is moved without
    a new trial. Pockets and hinge cups need one scrap for the depth.

    Parameters
    ----------
    length, width
        Size of a scrap.
    turns
        Whether it may lie across the grain.
    """
    serves: dict[Told, list[str]] = {}
    for part in parts:
        for name in dict.fromkeys(_set_ups(part.features, unit)):
            serves.setdefault(name, []).append(part.path)
    return tuple(
        Piece(
            id=f"test.{stock}.{number}",
            kind="test piece",
            title=tell("test piece for the {}", name),
            mark="",
            long=length,
            wide=width,
            turns=turns,
            serves=tuple(paths),
        )
        for number, (name, paths) in enumerate(serves.items(), start=1)
    )


def _set_ups(features: Iterable[Feature], unit: Unit) -> Iterator[Told]:
    for feature in features:
        if isinstance(feature, Cut):
            if feature.kind in _CUTS:
                wide, deep = (_read(size, unit) for size in (feature.width, feature.depth))
                yield tell("{} {} wide, {} deep", feature.kind, wide, deep)
        elif feature.kind in _BORES:
            yield Told("pockets" if feature.kind == "pocket" else "hinge cups")


def _read(size: Dim, unit: Unit) -> Measure:
    return as_said(size, unit, reading_text(size.value, unit, calliper=True))
