"""What goes into a box: boards thick enough, and bays that hold what must be in them."""

from __future__ import annotations

from fractions import Fraction

from casewright.job.case_sizes import CaseSizes

__all__ = ["check_bays", "check_boards"]

_CLEAR = Fraction(40)
"""Least clear height of a bay: a hand [mm]."""

_DRIVER = Fraction(90)
"""Least clear height beside a board with pockets: the driver leans over it [mm]."""

_PASS = Fraction(5)
"""Between a shelf and the nailer or the strip in the next bay [mm]."""

_HEAD = Fraction(26)
"""Below a board whose pockets look into the bay: half a driver's head [mm]."""

_THINNEST_BOX = Fraction(23, 2)
"""Thinnest sheet that a box is screwed together from, 1/2 in under its label [mm]."""

_THICKEST_BACK = Fraction(10)
"""Thickest back that short brads hold [mm]."""

_WEB = Fraction(2)
"""Least wood left behind a cut [mm]."""


def check_boards(sizes: CaseSizes) -> None:
    """Tell sheets that are too thin or too thick for what is made of them."""
    case = sizes.case
    if sizes.board < _THINNEST_BOX:
        what = f"{case.box_stock} is too thin for a box: its screws would split it"
        about = "1/2 in (12 mm)" if sizes.unit == "in" else "12 mm (1/2 in)"
        sizes.tell_choice("sheet", what, f"name a sheet of about {about} or more")
        return
    if case.back != "inset" and sizes.back > _THICKEST_BACK:
        what = f"{case.back_stock} is too thick for a {case.back} back"
        sizes.tell_choice("back_sheet", what, 'name a thinner sheet, or write back = "inset"')
    for key, used in (
        ("rabbet_depth", case.back == "rabbeted"),
        ("groove_depth", case.back == "grooved"),
        ("dado_depth", case.joint != "pocket screws" or case.kind == "bookcase"),
        ("end_rabbet_depth", case.joint == "rabbet"),
    ):
        if used and sizes.value(key) > sizes.board - _WEB:
            what = f"{key} of {sizes.text(sizes.value(key))} cuts through a side"
            sizes.tell_style(key, what, sizes.at_most(sizes.board - _WEB))


def check_bays(sizes: CaseSizes) -> None:
    """Tell shelves, dividers and fixed shelves that leave a bay too low."""
    if sizes.case.kind == "bookcase":
        _bookcase(sizes)
    elif sizes.case.divider or sizes.case.fixed_shelves:
        _heights_inside(sizes)
    else:
        _one_bay(sizes)


def _between(sizes: CaseSizes) -> Fraction:
    """Least clear height between two boards of a box."""
    return _DRIVER if sizes.case.joint == "pocket screws" else _CLEAR


def _has_two_nailers(sizes: CaseSizes) -> bool:
    return sizes.case.is_hung or sizes.case.between_panels


def _nailer(sizes: CaseSizes) -> Fraction:
    return Fraction(0) if sizes.case.back == "inset" else sizes.value("nailer")


def _top_bay(sizes: CaseSizes) -> Fraction:
    """What the bay under the top must hold."""
    crown = Fraction(0)
    if sizes.case.crown:
        drop = sizes.case.crown.value + sizes.value("gap")
        crown = max(sizes.value("crown_stretcher"), drop) + _HEAD
    # In front of a captured back a nailer's pockets look into the bay.
    past = _HEAD if sizes.case.back == "grooved" else _PASS
    return max(_between(sizes), _nailer(sizes) + past, crown)


def _bottom_bay(sizes: CaseSizes) -> Fraction:
    """What the bay over the bottom must hold."""
    if not _has_two_nailers(sizes) or sizes.case.back == "inset":
        return _between(sizes)
    return _between(sizes) + _nailer(sizes)


def _one_bay(sizes: CaseSizes) -> None:
    need = _top_bay(sizes)
    if _has_two_nailers(sizes):
        need = max(need, 2 * _nailer(sizes) + _PASS)
    need += sizes.deck + 2 * sizes.board
    if sizes.case.height.value < need:
        what = "bottom, top and nailers leave no room in this height"
        sizes.tell("height", what, sizes.at_least(need))


def _bookcase(sizes: CaseSizes) -> None:
    case, board = sizes.case, sizes.board
    nosing = case.nosing.value + _CLEAR if case.nosing else Fraction(0)
    need = max(_CLEAR, nosing, _top_bay(sizes))
    inside = case.height.value - sizes.deck - 2 * board
    if (inside - case.shelves * board) / (case.shelves + 1) >= need:
        return
    most = max(int((inside - need) / (board + need)), 0)
    least = sizes.deck + 2 * board + case.shelves * board + (case.shelves + 1) * need
    shelves = "1 shelf leaves" if case.shelves == 1 else f"{case.shelves} shelves leave"
    what = f"{shelves} too little between the boards in this height"
    want = f"{sizes.at_least(least)}, or shelves = {most}"
    name = "shelves" if sizes.reporter.positions.has(("case", case.key, "shelves")) else "height"
    sizes.tell(name, what, want.replace("write", "write height =", 1))


def _heights_inside(sizes: CaseSizes) -> None:
    """Divider and fixed shelves: each with the space it needs to its neighbours."""
    case, half = sizes.case, sizes.board / 2
    inside = [(given.value - half, "fixed_shelves") for given in case.fixed_shelves]
    if case.divider:
        inside.append((case.divider.value, "divider"))
    inside.sort()
    # Heights are measured from the box's own lower end: on a plinth, from its top.
    foot = sizes.deck if case.toe == "plinth" or case.reaches_down else Fraction(0)
    low, ceiling = sizes.deck - foot + sizes.board, case.height.value - foot - sizes.board
    need, need_above = _bottom_bay(sizes), _top_bay(sizes)
    for number, (middle, key) in enumerate(inside):
        to_named = Fraction(0) if key == "divider" else half
        if middle - half < low + need:
            want = sizes.at_least(low + need + half + to_named)
            sizes.tell(key, "too little room is left under this height", want)
        elif number == len(inside) - 1 and middle + half > ceiling - need_above:
            most = ceiling - need_above - half + to_named
            least = low + need + half + to_named
            want = sizes.at_most(most)
            if most < least:
                want = "leave it out, or write a greater height for the case"
            sizes.tell(key, "too little room is left over this height", want)
        low, need = middle + half, _between(sizes)
