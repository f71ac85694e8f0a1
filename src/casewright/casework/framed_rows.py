"""Boards about an appliance in a framed face, each hidden by the rail of the frame before it.

A deck lies no lower than its rail, so that what is pushed in slides over; any other board no
higher, as the bottom does (common practice).
"""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.box import Box, cut_horizontal
from casewright.casework.maker import Maker
from casewright.casework.rows import boards_behind_rails, cut_row_boards, row_heights
from casewright.dims import Dim, Place, Way

__all__ = ["cut_boards_between", "rail_before"]


def cut_boards_between(maker: Maker, box: Box) -> None:
    """Boards between the rows of a face: behind the rails of its frame, where it has one."""
    if not maker.spec.framed:
        cut_row_boards(maker, box)
    elif boards_behind_rails(maker.spec):
        _cut_behind_rails(maker, box)


def _cut_behind_rails(maker: Maker, box: Box) -> None:
    """Boards about an appliance, marked on the sides before a frame is cut to them.

    From the top rail down each opening takes its height, and no board lies higher than that.
    """
    numbers = boards_behind_rails(maker.spec)
    thick, rail = box.bottom.outline.thickness, maker.style("face_rail")
    upper = box.head - rail
    for number, height in enumerate(_framed_rows(maker, box)[:-1], start=1):
        top = upper - height
        upper = top - rail
        if number not in numbers:
            continue
        name = f"row_{number}"
        lies = _on_grid(maker, maker.place, f"{name}_wished", top - thick, Way.DOWN)
        mark = maker.place.made(f"{name}_mark", lies, how="marked on both sides")
        cut_horizontal(
            maker, box, f"row_board.{number}", "fixed shelf", f"board under row {number}",
            underside=mark, edges=(),
        )  # fmt: skip
        upper = rail_before(maker, maker.place, f"{name}_rail", box, number, rail)


def _framed_rows(maker: Maker, box: Box) -> list[Dim]:
    """Heights of the openings [mm], from the top down; those without one share what is left."""
    given = row_heights(maker)
    left = box.head - (len(given) + 1) * maker.style("face_rail")
    left = left if box.low is maker.zero else left - box.low
    for dim in given:
        left = left if dim is None else left - dim
    sharing = given.count(None)
    share = maker.place.let(
        "row_share_planned", left if sharing == 1 else left / Fraction(sharing)
    )
    return [share if dim is None else dim for dim in given]


def rail_before(maker: Maker, place: Place, name: str, box: Box, number: int, width: Dim) -> Dim:
    """Case height of the lower edge of the rail before the board under a row [mm].

    Parameters
    ----------
    number
        Of the row, from the top.
    width
        Of the rail [mm].
    """
    board = next(each for each in box.boards if each.name == f"row_board.{number}")
    carries = maker.spec.rows[number - 1].appliance is not None
    exact = board.underside + board.outline.thickness - width
    return _on_grid(maker, place, name, exact, Way.DOWN if carries else Way.UP)


def _on_grid(maker: Maker, place: Place, name: str, exact: Dim, way: Way) -> Dim:
    step = maker.style("cut_step").value
    if step and exact.value % step:
        return place.rounded(name, exact, step, way)[0]
    return place.let(name, exact)
