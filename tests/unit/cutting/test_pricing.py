"""The most valuable sheet in three stages, against every way of cutting one."""

from __future__ import annotations

from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from casewright.cutting.pricing import Pricing
from casewright.cutting.shapes import Bin, Shape, Task

Item = tuple[int, int, int]
"""Length, width, value."""

GCUT1: list[Item] = [
    (167, 184, 30_728), (114, 118, 13_452), (167, 152, 25_384), (83, 140, 11_620),
    (70, 86, 6_020), (143, 166, 23_738), (120, 160, 19_200), (66, 148, 9_768),
    (87, 141, 12_267), (69, 165, 11_385),
]  # fmt: skip
"""A public instance of Beasley 1985: parts of a sheet of 250 x 250, worth their area."""


def _priced(sheet: tuple[int, int], items: list[Item]) -> int:
    """The better of both directions of the first cut, each part as often as one likes."""
    values = [value for *_, value in items]
    length, width = sheet
    often = [(length // h) * (width // w) for h, w, _ in items]
    best = 0
    for across in (False, True):
        sizes = [(w, h) if across else (h, w) for h, w, _ in items]
        shapes = [Shape(du, dv, n, False) for (du, dv), n in zip(sizes, often, strict=True)]
        du, dv = (width, length) if across else sheet
        task = Task((Bin(0, du, dv),), tuple(shapes), 0, True)
        best = max(best, Pricing(task).best(values)[0][0])
    return best


def _of_any_depth(sheet: tuple[int, int], items: list[Item]) -> int:
    """Gilmore and Gomory 1966: a piece is a part, or is cut into two somewhere."""

    @cache
    def best(length: int, width: int) -> int:
        pieces = [v for h, w, v in items if h <= length and w <= width]
        pieces += (best(at, width) + best(length - at, width) for at in range(1, length // 2 + 1))
        pieces += (best(length, at) + best(length, width - at) for at in range(1, width // 2 + 1))
        return max(pieces, default=0)

    return best(*sheet)


def test_a_public_instance_is_worth_its_published_optimum() -> None:
    """56,460 for guillotine cuts of any depth (Beasley 1985; from memory): three stages do."""
    assert _priced((250, 250), GCUT1) == 56_460


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.tuples(st.integers(4, 15), st.integers(3, 12), st.integers(1, 99)), max_size=5),
    st.integers(12, 20),
    st.integers(9, 14),
)
def test_no_sheet_is_priced_above_the_best_way_of_cutting_it(
    items: list[Item], length: int, width: int
) -> None:
    """Nor below the best single row of one part after the other, both ways."""
    fits = [item for item in items if item[0] <= length and item[1] <= width]
    if not fits:
        return
    least = max((length // h) * (width // w) * value for h, w, value in fits)
    assert least <= _priced((length, width), fits) <= _of_any_depth((length, width), fits)
