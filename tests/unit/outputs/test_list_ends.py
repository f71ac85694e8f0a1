"""No page has the last step of a list alone on it; nothing else changes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pytest

from casewright.outputs.blocks import Block, CheckList, Heading, Keep, Step
from casewright.outputs.list_ends import ends_kept


def _list(count: int, start: int = 1, notes: int = 0) -> CheckList:
    lines = tuple(f"note {n}" for n in range(notes))
    return CheckList(tuple(Step(f"step {start + n}", lines) for n in range(count)), start, 2)


def _told(blocks: Sequence[Block]) -> Iterator[tuple[int | None, object, int]]:
    """Every step with its number and its boxes, wherever it stands."""
    for block in blocks:
        if isinstance(block, Keep):
            yield from _told(block.blocks)
        elif isinstance(block, CheckList):
            for n, step in enumerate(block.steps):
                number = None if block.start is None else block.start + n
                yield number, step.text, block.boxes


LISTS: tuple[tuple[Block, ...], ...] = (
    (Heading("The box", 3), _list(5)),
    (_list(5), Heading("Hanging", 3), _list(1, 6)),
    (_list(1), Heading("Hanging", 3), _list(1, 2)),
    (_list(2),),
    (_list(4, notes=18),),
    (_list(3), Heading("Readings", 3)),
    (_list(4, notes=40),),
    (_list(1),),
    (),
)


@pytest.mark.parametrize("blocks", LISTS, ids=str)
def test_every_step_is_told_once_in_its_order_with_its_number(blocks: tuple[Block, ...]) -> None:
    """Headings stay where they were."""
    kept = ends_kept(blocks)
    assert list(_told(kept)) == list(_told(blocks))
    flat = [
        each for block in kept for each in (block.blocks if isinstance(block, Keep) else [block])
    ]
    heads = [each for each in flat if isinstance(each, Heading)]
    assert heads == [each for each in blocks if isinstance(each, Heading)]


@pytest.mark.parametrize("blocks", LISTS[:4], ids=str)
def test_the_last_two_steps_are_kept_together(blocks: tuple[Block, ...]) -> None:
    """A heading between them too."""
    end = ends_kept(blocks)[-1]
    assert isinstance(end, Keep)
    assert len(list(_told(end.blocks))) == 2


def test_what_would_fill_much_of_a_page_is_not_kept_whole() -> None:
    """Of two long steps the last alone; one that is longer still breaks."""
    end = ends_kept((_list(4, notes=18),))[-1]
    assert isinstance(end, Keep)
    assert len(list(_told(end.blocks))) == 1
    assert not any(isinstance(each, Keep) for each in ends_kept((_list(4, notes=40),)))
