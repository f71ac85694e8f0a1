"""The end of a list of steps: its last two stay on one page, none is left alone on another."""

from __future__ import annotations

from dataclasses import replace

from casewright.outputs.blocks import Block, CheckList, Heading, Keep, Step

__all__ = ["ends_kept"]

_MOST = 20
"""Lines of notes and cautions in what is kept on one page: more would push too much on [-]."""


def ends_kept(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """Blocks of a section that ends with a list of steps, its last two steps as one.

    A list of one step under a heading takes the step before the heading along. Where two would be
    long, the last is kept whole.
    """
    match blocks:
        case (*before, CheckList(steps=(_, _, *_)) as last) if _is_short(last.steps[-2:]):
            return (*before, *_cut(last, 2))
        case (*before, CheckList(steps=(_, _, *_)) as last) if _is_short(last.steps[-1:]):
            return (*before, *_cut(last, 1))
        case (*before, CheckList() as one, Heading() as head, CheckList(steps=(_,)) as last) if (
            _is_short((one.steps[-1], *last.steps))
        ):
            *rest, end = _pieces(one, 1)
            return (*before, *rest, Keep((end, head, last)))
    return blocks


def _cut(last: CheckList, count: int) -> tuple[Block, ...]:
    *rest, end = _pieces(last, count)
    return (*rest, Keep((end,)))


def _pieces(steps: CheckList, count: int) -> tuple[CheckList, ...]:
    """A list without so many last steps, if any are left, and these."""
    first = len(steps.steps) - count
    start = None if steps.start is None else steps.start + first
    end = replace(steps, steps=steps.steps[first:], start=start)
    return (replace(steps, steps=steps.steps[:first]), end) if first > 0 else (end,)


def _is_short(steps: tuple[Step, ...]) -> bool:
    return sum(len(step.notes) + len(step.cautions) for step in steps) <= _MOST
