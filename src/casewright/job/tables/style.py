"""Style values: one key for every default of the house."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Annotated, Any

from pydantic import Field, create_model

from casewright.dims import Way, format_length, is_on_grid, round_to, shop_text
from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Line, Table
from casewright.sources import INCH
from casewright.style import STYLE_KEYS, StyleKey

__all__ = ["StyleTable", "style_range"]

_WHOLE_SIZES = {
    "height": Between("4", "108", "100", "2750"),
    "depth": Between("3", "48", "75", "1200"),
}
# These divide: at 0 there would be endless screws, brads or passes.
_NEVER_NOTHING = "_spacing"
_CUT = Between("1/16", "1", "1.5", "25")
_OWN_RANGES = {
    "cut_step": Between("1/64", "1/8", "0.1", "3"),
    "dado_depth": _CUT, "rabbet_depth": _CUT, "end_rabbet_depth": _CUT, "groove_depth": _CUT,
    "rebate_width": _CUT, "plate_depth": _CUT, "pocket_diameter": _CUT, "router_bite": _CUT,
    "lip": _CUT, "drawer_joint_depth": _CUT, "drawer_groove_depth": _CUT,
    "finger": Between("1/4", "2", "6", "50"), "tongue": _CUT,
}  # fmt: skip
_TINY, _SMALL = 12, 25
_FACTOR = 4


def style_range(key: StyleKey) -> Between:
    """What a style value may be.

    Outside sizes as in a case; what a bit takes away is at least 1/16 in; other small ones go from
    nothing to 1 in or 4 in; larger ones within a factor of four, in round numbers.
    """
    if key.name in _OWN_RANGES:
        return _OWN_RANGES[key.name]
    if key.name.partition("_")[0] in ("wall", "base", "tall", "bookcase", "surround", "hood"):
        size = _WHOLE_SIZES.get(key.name.partition("_")[2])
        if size is not None:
            return size
    if key.millimetres <= _SMALL and not key.name.endswith(_NEVER_NOTHING):
        return Between("0", "1", "0", "25") if key.millimetres < _TINY else _UP_TO_FOUR
    quarter, inch = INCH / 4, INCH
    low = round_to(key.inches * INCH / _FACTOR, quarter, Way.DOWN)[0]
    high = round_to(key.inches * INCH * _FACTOR, inch, Way.UP)[0]
    low_mm = round_to(key.millimetres / _FACTOR, Fraction(5), Way.DOWN)[0]
    high_mm = round_to(key.millimetres * _FACTOR, Fraction(10), Way.UP)[0]
    return Between(
        format_length(low, "in"), format_length(high, "in"),
        format_length(low_mm, "mm"), format_length(high_mm, "mm"),
    )  # fmt: skip


_UP_TO_FOUR = Between("0", "4", "0", "100")


def _default_text(key: StyleKey) -> str:
    length = key.inches * INCH
    inches = format_length(length, "in", precision=64, rounded_mark="about ")
    if is_on_grid(length, "in", 1000):
        inches = shop_text(length, "in")
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
