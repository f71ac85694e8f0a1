"""A style: every default by its key, with who decided it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from casewright.dims import Given, Origin
from casewright.style.defaults import STYLE_KEYS

__all__ = ["Style", "default_style"]


@dataclass(frozen=True, slots=True)
class Style:
    """Lengths by style key.

    Parameters
    ----------
    name
        What `why` calls it.
    values
        Every key of `STYLE_KEYS`.
    """

    name: str
    values: Mapping[str, Given]

    def __getitem__(self, key: str) -> Given:
        return self.values[key]

    def changed(self, values: Mapping[str, Given]) -> Style:
        """The same style with some values replaced."""
        return Style(self.name, {**self.values, **values})


def default_style(unit: Literal["in", "mm"], name: str = "painted") -> Style:
    """The house style in inches or in millimetres: two sets of round numbers."""
    values = {
        key.name: Given(
            key.value(unit),
            Origin("cited" if key.source else "chosen", f'style "{name}"', key.source),
        )
        for key in STYLE_KEYS
    }
    return Style(name, values)
