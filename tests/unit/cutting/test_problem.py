"""Problems without meaning are refused, all faults at once, each with its place."""

from __future__ import annotations

import pytest

from casewright.cutting import (
    Defect,
    Fault,
    Keep,
    PartDemand,
    Problem,
    ProblemError,
    StockItem,
    Trim,
)

PLY = StockItem("ply", 960, 480)


def _problem(*parts: PartDemand, stock: tuple[StockItem, ...] = (PLY,), kerf: int = 4) -> Problem:
    return Problem("mm", kerf, 3, stock, parts)


def test_every_fault_is_told_at_once() -> None:
    """A person mends the file once, not fault by fault."""
    with pytest.raises(ProblemError) as caught:
        _problem(PartDemand("side", -3, 20), PartDemand("shelf", 20, 20, 0), kerf=-1)
    fields = [(fault.where, fault.field, fault.found) for fault in caught.value.faults]
    assert fields == [
        ("problem", "kerf", "-1"),
        ('part "side"', "length", "-3"),
        ('part "shelf"', "count", "0"),
    ]


def test_a_fault_reads_as_a_sentence() -> None:
    """What, where, and what would be right."""
    fault = Fault('part "side"', "length", "-3", "a whole number from 1 to 9")
    assert str(fault) == 'part "side": length is -3; it must be a whole number from 1 to 9'


@pytest.mark.parametrize(
    ("item", "field"),
    [
        (StockItem("a", 0, 10), "length"),
        (StockItem("a", 10, -1), "width"),
        (StockItem("a", 10**10, 10), "length"),
        (StockItem("a", 10, 10, count=-1), "count"),
        (StockItem("a", 10, 10, price=-5), "price"),
        (StockItem("a", 10, 10, trim=Trim(left=-1)), "trim left"),
        (StockItem("a", 10, 10, trim=Trim(5, 5, 0, 0)), "trim"),
        (StockItem("a", 10, 10, defects=(Defect(8, 8, 3, 3),)), "defect"),
        (StockItem("a", 10, 10, defects=(Defect(8, 8, 0, 1),)), "defect"),
    ],
)
def test_stock_without_meaning_is_refused(item: StockItem, field: str) -> None:
    """Sizes, counts, prices, trims and defects are checked, each by its own name."""
    with pytest.raises(ProblemError) as caught:
        _problem(stock=(item,))
    assert ('stock "a"', field) in {(fault.where, fault.field) for fault in caught.value.faults}


def test_a_kerf_wider_than_a_part_hints_at_mixed_units() -> None:
    """Nobody cuts a part that is narrower than the blade."""
    with pytest.raises(ProblemError, match="at least the kerf, 4: same unit"):
        _problem(PartDemand("strip", 100, 3))


def test_names_are_used_once() -> None:
    """A part's name finds one part."""
    with pytest.raises(ProblemError, match='part "side": id is used twice'):
        _problem(PartDemand("side", 10, 10), PartDemand("side", 20, 20))


@pytest.mark.parametrize(
    ("problem", "field"),
    [
        ({"stages": 1}, "stages"),
        ({"stock": ()}, "stock"),
        ({"keep": (Keep(0, 5),)}, "long side"),
        ({"parts": (PartDemand("a", 9, 9, 60_000), PartDemand("b", 9, 9, 60_000))}, "number"),
    ],
)
def test_the_frame_of_a_problem_is_checked(problem: dict[str, object], field: str) -> None:
    """Stages, stock, sizes to keep and the number of pieces."""
    values: dict[str, object] = {"unit": "mm", "kerf": 4, "stages": 3, "stock": (PLY,)}
    values |= {"parts": ()} | problem
    with pytest.raises(ProblemError, match=field):
        Problem(**values)  # type: ignore[arg-type]
