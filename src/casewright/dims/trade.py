"""Round figures of the trade: said in both units, and each can be asked for its reason."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from casewright.dims.chain import Chain
from casewright.dims.dim import Dim, Given, Origin
from casewright.dims.measure import Measure
from casewright.dims.units import Unit
from casewright.sources import FOOT, INCH, POUND

__all__ = ["TRADE", "TRADE_FIGURES", "TradeFigure", "enter_trade", "trade"]

TRADE = "trade"
"""Under which they stand on the chain: `trade.NAME`."""

_PRACTICE = "common practice"
_WORTH: Mapping[str, Fraction] = MappingProxyType(
    {
        "in": INCH, "ft": FOOT, "lb": POUND,
        "mm": Fraction(1), "m": Fraction(1000), "kg": Fraction(1),
    }
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class TradeFigure:
    """A round figure of the trade, as either half of it says it.

    Parameters
    ----------
    imperial, metric
        The figure without its unit: '1/16' and '1.5'.
    note
        What it is, in words.
    source
        Key in `casewright.sources`.
    units
        Units of both: of a weight, pounds and kilograms.
    """

    imperial: str
    metric: str
    note: str
    source: str = _PRACTICE
    units: tuple[Literal["in", "ft", "lb"], Literal["mm", "m", "kg"]] = ("in", "mm")

    @property
    def power(self) -> int:
        """Power of a length in it: 0 for a weight [-]."""
        return 0 if "kg" in self.units else 1

    def given(self, unit: Unit) -> Given:
        """The figure of the half that works in a unit [mm], [kg], with where it comes from."""
        own = 0 if unit == "in" else 1
        value = Fraction((self.imperial, self.metric)[own]) * _WORTH[self.units[own]]
        return Given(value, Origin("cited", self.note, self.source))

    def said(self, unit: Unit) -> str:
        """It in both units, the job's first: '1/16 in (1.5 mm)'."""
        both = f"{self.imperial} {self.units[0]}", f"{self.metric} {self.units[1]}"
        first, other = both if unit == "in" else both[::-1]
        return f"{first} ({other})"


TRADE_FIGURES: Mapping[str, TradeFigure] = MappingProxyType(
    {
        "box_diagonals": TradeFigure("1/16", "1.5", "most that the diagonals of a box differ by"),
        "drawer_diagonals": TradeFigure(
            "1/32", "1", "most that the diagonals of a drawer's box differ by"
        ),
        "frame_diagonals": TradeFigure(
            "1/32", "1", "most that the diagonals of a frame or a framed door differ by"
        ),
        "resaw_height": TradeFigure(
            "3", "75", "a 10 in blade stands so high over its table: what it resaws at once"
        ),
        "appliance_weight": TradeFigure(
            "150", "70", "what a built-in oven weighs, about", units=("lb", "kg")
        ),
        "template_sheet": TradeFigure(
            "1/4", "6", "sheet of which templates are cut: stiff, and its edge guides a bush"
        ),
        "cleat_thickness": TradeFigure("1/2", "12", "thinnest cleat that holds screws"),
        "level_tops": TradeFigure("1/16", "1.5", "most that tops are out over four feet"),
        "level_over": TradeFigure(
            "4", "1.2", "length of the level that tops are tried with", units=("ft", "m")
        ),
        "level_metre": TradeFigure("1/32", "1", "most that tops are out of level in a metre"),
        "even_gaps": TradeFigure("1/32", "1", "most that neighbouring gaps of doors differ by"),
        "thin_fibreboard": TradeFigure(
            "0.315", "8", "fibreboard up to it counts as thin", "tsca-vi"
        ),
    }
)
"""All of them by name; that of a weight ends in 'weight'."""


def trade(name: str, unit: Unit) -> Measure:
    """A figure of the trade as a sentence says it, in both units: '1/16 in (1.5 mm)'.

    Parameters
    ----------
    name
        In `TRADE_FIGURES`.
    unit
        Unit of the job.
    """
    figure = TRADE_FIGURES[name]
    return Measure(figure.given(unit).value, unit, f"{TRADE}.{name}", said=figure.said(unit))


def enter_trade(chain: Chain, unit: Unit) -> None:
    """Enter all of them on a chain, of which one is asked for.

    Parameters
    ----------
    unit
        Unit of the job.
    """
    for name, figure in TRADE_FIGURES.items():
        path = f"{TRADE}.{name}"
        if path not in chain.nodes:
            given = figure.given(unit)
            dim = Dim("", (), given.value, figure.power)
            dim.origin = given.origin
            chain.register(path, dim)
