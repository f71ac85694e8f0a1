"""Style values: one key for every default of the house."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Annotated, Any

from pydantic import Field, create_model

from casewright.dims import format_length
from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Line, Table
from casewright.sources import INCH
from casewright.style import STYLE_KEYS, StyleKey

__all__ = ["StyleTable", "style_range"]

_WHOLE_SIZES = {
    "height": Between("4", "108", "100", "2750"),
    "depth": Between("3", "48", "75", "1200"),
}
# These divide: at 0 there would be endless screws, brads or steps.
_NEVER_NOTHING = ("_spacing", "_step")
_SMALL = 25


def style_range(key: StyleKey) -> Between:
    """What a style value may be.

    Outside sizes as in a case; small ones from 0 to 4 in; larger ones within a factor of eight.
    """
    word = key.name.rpartition("_")[2]
    if key.name in ("wall_height", "wall_depth", "base_height", "base_depth", "bookcase_height",
                    "bookcase_depth"):  # fmt: skip
        return _WHOLE_SIZES[word]
    inches, metric = key.inches, key.millimetres
    if key.name.endswith(_NEVER_NOTHING) and key.name != "cut_step":
        return _span(inches / 8, inches * 8, metric / 8, metric * 8)
    if metric <= _SMALL:
        return Between("0", "4", "0", "100")
    return _span(inches / 8, inches * 8, metric / 8, metric * 8)


def _span(low: Fraction, high: Fraction, low_mm: Fraction, high_mm: Fraction) -> Between:
    def inches(value: Fraction) -> str:
        return format_length(value * INCH, "in", precision=64, rounded_mark="")

    def metric(value: Fraction) -> str:
        return format_length(value, "mm", rounded_mark="")

    return Between(inches(low), inches(high), metric(low_mm), metric(high_mm))


def _default_text(key: StyleKey) -> str:
    inches = format_length(key.inches * INCH, "in", precision=64, rounded_mark="about ")
    return f"{inches} in, or {format_length(key.millimetres, 'mm', precision=100)} mm"


def _field(key: StyleKey) -> Any:
    about = f"{key.meaning[:1].upper()}{key.meaning[1:]}. Default: {_default_text(key)}."
    length = Annotated[Length, style_range(key)]
    return (length | None, Field(default=None, description=about))


if TYPE_CHECKING:

    class StyleTable(Table):
        """House style; its further fields are the names of `STYLE_KEYS`."""

        name: str | None = None

else:
    StyleTable = create_model(
        "StyleTable",
        __base__=Table,
        __doc__="House style: what holds for every case, unless one says otherwise.",
        name=(
            Line | None,
            Field(default=None, description="What `why` calls it. Default: painted."),
        ),
        **{key.name: _field(key) for key in STYLE_KEYS},
    )
