"""Data sheets of drawer slides from their tables."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from casewright.dims import Given
from casewright.hardware import SlideSheet, UndermountSheet
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.tables import SlideTable, UndermountTable

__all__ = ["slide_sheet", "undermount_sheet"]

_PROOF = ("air", "lengths", "line", "holes")
_PROOF_UNDER = (*_PROOF, "recess", "notch_width", "notch_height", "hook", "hook_in", "hook_up")
_NUMBERS = ("air", "play", "front", "behind", "below", "line", "hole", "depth")
_ROWS = ("lengths", "holes", "box_holes")
_UNDER = (
    "thickest", "recess", "notch_width", "notch_height", "hook", "hook_depth", "hook_in",
    "hook_up",
)  # fmt: skip


def slide_sheet(table: SlideTable, origins: Origins) -> SlideSheet:
    """Side-mounted slides."""
    return SlideSheet(**_common(table, "slide", origins, _PROOF))


def undermount_sheet(table: UndermountTable, origins: Origins) -> UndermountSheet:
    """Concealed slides."""
    own: dict[str, Any] = {
        name: _number(table, ("hardware", "undermount"), name, origins) for name in _UNDER
    }
    return UndermountSheet(**_common(table, "undermount", origins, _PROOF_UNDER), **own)


def _common(
    table: SlideTable, key: str, origins: Origins, proof: tuple[str, ...]
) -> dict[str, Any]:
    base: KeyPath = ("hardware", key)
    return {
        "key": key,
        "title": table.title or key,
        **{name: _number(table, base, name, origins) for name in _NUMBERS},
        **{name: _row(table, base, name, origins) for name in _ROWS},
        "load": table.load,
        "placeholder": not all(origins.in_file((*base, name)) for name in proof),
    }


def _number(table: SlideTable, base: KeyPath, name: str, origins: Origins) -> Given:
    value: Fraction | None = getattr(table, name)
    if value is None:
        msg = f"{'.'.join(map(str, base))}.{name} has no usual value"
        raise ValueError(msg)
    return origins.given(value, (*base, name))


def _row(table: SlideTable, base: KeyPath, name: str, origins: Origins) -> tuple[Given, ...]:
    """A list of lengths, shortest first, each with the place it stands at."""
    values: list[Fraction] = getattr(table, name) or []
    order = sorted(enumerate(values), key=lambda pair: pair[1])
    return tuple(origins.given(value, (*base, name, number)) for number, value in order)
