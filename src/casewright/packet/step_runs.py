"""Steps of assembly that differ only in the part that comes in: told once, each named."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from casewright.casework.cases import AssemblyStep, Case, Drawer, Front

__all__ = ["content_of", "marks_apart", "other_words", "runs", "said_afterwards", "works"]


def works(case: Case) -> Iterator[Front | Drawer]:
    """Everything that is put together apart from the box."""
    yield from case.fronts
    yield from case.drawers


def content_of(step: AssemblyStep) -> tuple[object, ...]:
    """All that is read of a step, apart from what its strips are sawn to."""
    marks = tuple((words, dim.value) for words, dim in step.marks)
    check = None if step.check is None else step.check.value
    return (step.verb, step.words, marks, check, step.check_words, step.cautions)


def runs(case: Case, steps: Sequence[AssemblyStep]) -> Iterator[list[AssemblyStep]]:
    """Steps one after another that differ only in the part that comes in and where it goes."""
    run: list[AssemblyStep] = []
    for step in steps:
        if run and not _is_like(case, run, step):
            yield run
            run = []
        run.append(step)
    yield run


def _is_like(case: Case, run: Sequence[AssemblyStep], step: AssemblyStep) -> bool:
    """Whether a step is told with those before it.

    Of parts that are counted through, such as shelves, the first mark may lie elsewhere. The last
    of a run may say more at its end.
    """
    marks = run[0].marks
    if len(step.marks) != len(marks) or said_afterwards(run[0], run[-1]):
        return False
    moved = tuple((words, dim) for (words, _), (_, dim) in zip(step.marks, marks, strict=True))
    own = step.words.removesuffix(said_afterwards(run[0], step))
    if _any_part(case, replace(step, words=own, marks=moved)) != _any_part(case, run[0]):
        return False
    every = [*run, step]
    apart = marks_apart(every)
    if not apart:
        return True
    kinds = {_names(case, each)[0].rstrip("0123456789") for each in every}
    return apart == [0] and len(kinds) == 1 and all(each.marks[0][1].value for each in every)


def said_afterwards(first: AssemblyStep, last: AssemblyStep) -> str:
    """What the last of a run says after what all of it says: ' When it is dry, sand it flush.'."""
    sentences = last.words.split(". ")
    more = ". ".join(sentences[first.words.count(". ") + 1 :])
    return f" {more}" if more else ""


def marks_apart(run: Sequence[AssemblyStep]) -> list[int]:
    """Numbers of the marks that do not lie at one distance in all steps of a run."""
    count = len(run[0].marks)
    return [n for n in range(count) if len({step.marks[n][1].value for step in run}) > 1]


def _any_part(case: Case, step: AssemblyStep) -> tuple[object, ...]:
    """What is read of a step whatever part comes in."""
    names = [*_names(case, step), _side(case, step)]
    if not names[0]:
        return (step.part, *content_of(step))
    marks = tuple((_without(names, words), dim) for words, dim in step.marks)
    return content_of(replace(step, words=_without(names, step.words), marks=marks))


def _without(names: Sequence[str], words: str) -> str:
    for name in filter(None, names):
        words = words.replace(name, "…")
    return words


def _names(case: Case, step: AssemblyStep) -> tuple[str, str]:
    """Its part and what that belongs to: ('nosing', 'shelf 2'), ('shelf 2', '')."""
    titles = [part.title for part in case.parts if part.path == step.part]
    titles += [work.title for work in works(case) if work.path == step.part]
    piece, _, whole = titles[0].partition(" of ") if titles else ("", "", "")
    return (piece, whole.removeprefix("the "))


def other_words(case: Case, first: AssemblyStep, step: AssemblyStep) -> str:
    """What tells the part of a step from that of the first: 'right stile', 'shelf 2'."""
    (piece, whole), (before, _) = _names(case, step), _names(case, first)
    name = whole if piece == before else piece
    if name[-1:].isdigit():  # a number stays with its word
        name = "\u00a0".join(name.rsplit(" ", 1))
    return f"{name}{_side(case, step)}"


def _side(case: Case, step: AssemblyStep) -> str:
    """Where a door is hung: 'at the left side'; else empty."""
    sides = [front.hinge_side for front in case.doors if front.path == step.part]
    return f" at the {sides[0]} side" if sides else ""
