"""Sheets of drawers that are too thin for what is cut into them."""

from __future__ import annotations

from fractions import Fraction

from casewright.job.case_sizes import CaseSizes
from casewright.job.positions import KeyPath
from casewright.stock import Sheet

__all__ = ["check_drawer_boards"]

_THINNEST = Fraction(9)
"""Thinnest sheet that a drawer's box is joined from: 3/8 in under its label [mm]."""

_WEB = Fraction(2)
"""Least wood left behind a cut [mm]."""

_THICKEST_BOTTOM = Fraction(14)
"""Thickest bottom that lies in grooves of a drawer [mm]."""


def check_drawer_boards(sizes: CaseSizes) -> None:
    """Tell a sheet too thin for a box, a bottom too thick, a cut that goes through."""
    spec = sizes.case.drawer
    if spec is None:
        return
    box, bottom = sizes.stock.get(spec.box_stock), sizes.stock.get(spec.bottom_stock)
    if not isinstance(box, Sheet) or not isinstance(bottom, Sheet):
        return
    board = _thickness(box)
    if board < _THINNEST:
        about = "1/2 in (12 mm)" if sizes.unit == "in" else "12 mm (1/2 in)"
        what = f"{spec.box_stock} is too thin for the boxes of drawers"
        _tell(sizes, "sheet", spec.box_stock, what, f"name a sheet of about {about}")
        return
    if _thickness(bottom) > _THICKEST_BOTTOM:
        what = f"{spec.bottom_stock} is too thick for the bottom of a drawer"
        _tell(sizes, "bottom", spec.bottom_stock, what, "name a thinner sheet")
    for key, used in (
        ("drawer_groove_depth", True),
        ("drawer_joint_depth", spec.joint in ("rabbet", "dado")),
    ):
        if used and sizes.value(key) > board - _WEB:
            what = f"{key} of {sizes.text(sizes.value(key))} cuts through the side of a drawer"
            sizes.tell_style(key, what, sizes.at_most(board - _WEB))


def _thickness(goods: Sheet) -> Fraction:
    """As read, else by the label [mm]."""
    return (goods.measured or goods.thickness).value


def _tell(sizes: CaseSizes, name: str, stock: str, what: str, want: str) -> None:
    """At the case's own choice, at that of all drawers, else at the goods."""
    has = sizes.reporter.positions.has
    places: tuple[KeyPath, ...] = (
        ("case", sizes.case.key, "drawer", name), ("drawers", name), ("stock", stock, "measured"),
        ("stock", stock, "thickness"),
    )  # fmt: skip
    path = next((place for place in places if has(place)), ("case", sizes.case.key))
    sizes.reporter.tell(path, what, want)
