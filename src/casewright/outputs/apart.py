"""Work in a process of its own, which gives all memory back at its end."""

from __future__ import annotations

import pickle
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import IO, Any, TypeVar, cast

from casewright.errors import CasewrightError
from casewright.outputs.process import pickled

__all__ = ["StoppedError", "apart", "apart_by_steps", "in_two", "meanwhile", "pickled"]

Result = TypeVar("Result")
Thing = TypeVar("Thing")


class StoppedError(CasewrightError):
    """A process ended without an answer."""


def apart(work: Callable[..., Result], *given: object, **named: object) -> Result:
    """What a function of a module gives, worked out by another process.

    Raises
    ------
    Exception
        What the function raises there.
    StoppedError
        When the process ends without an answer.
    """
    with _answers(work, given, named) as answers:
        return cast("Result", next(answers))


@contextmanager
def meanwhile(
    work: Callable[..., Result], *given: object, **named: object
) -> Iterator[Callable[[], Result]]:
    """Let another process work while this one goes on; it ends with the block, answered or not.

    Where there are fewer processors than work, this one goes first: it is waited for at the end.

    Yields
    ------
    Waits for what the function of a module gives; to be called once. It raises what the function
    raises there, and `StoppedError` when the process ends without an answer.
    """
    with _answers(work, given, named, gives_way=True) as answers:
        yield lambda: cast("Result", next(answers))


def in_two(work: Callable[[Thing], Result], things: Sequence[Thing]) -> list[Result]:
    """What a function of a module gives for several things, as many as it can in another process.

    Each takes the next thing that nobody has begun, the heaviest first.

    Raises
    ------
    Exception
        What the function raises, here or there.
    StoppedError
        When the other process ends without an answer.
    """
    weights = [len(pickled(thing)) for thing in things]
    heavy_first = sorted(range(len(things)), key=lambda number: -weights[number])
    if len(things) < 2:
        return list(map(work, things))
    with tempfile.TemporaryDirectory() as folder:
        shared = work, things, heavy_first, folder
        with _answers(_share, shared, {}) as others:
            found = dict(_share(*shared))
            if len(found) < len(things):
                found |= dict(others)
    return [found[number] for number in range(len(things))]


def _share(
    work: Callable[[Thing], Result], things: Sequence[Thing], order: Sequence[int], folder: str
) -> Iterator[tuple[int, Result]]:
    """What a function gives for those things that no other process takes; a file says who does."""
    for number in order:
        try:
            Path(folder, str(number)).touch(exist_ok=False)
        except FileExistsError:
            continue
        yield number, work(things[number])


def apart_by_steps(
    work: Callable[..., Iterator[Result]], *given: object, **named: object
) -> Iterator[Result]:
    """What a generator of a module yields, each as soon as another process has worked it out.

    The process ends with the iterator, which must be followed to its end or closed.

    Raises
    ------
    Exception
        What the generator raises there.
    StoppedError
        When the process ends without an answer.
    """
    with _answers(work, given, named) as answers:
        yield from answers


@contextmanager
def _answers(
    work: Callable[..., object], given: object, named: object, *, gives_way: bool = False
) -> Iterator[Iterator[Any]]:
    """A process that works from now on, and all it will say."""
    with tempfile.TemporaryFile() as asked, tempfile.TemporaryFile() as said:
        pickle.dump(gives_way, asked)
        pickle.dump((work, given, named), asked, pickle.HIGHEST_PROTOCOL)
        asked.seek(0)
        with subprocess.Popen(
            # -P: no file of the folder someone works in takes the place of a module
            (sys.executable, "-P", "-m", "casewright.outputs.process"),
            stdin=asked,
            stdout=subprocess.PIPE,
            stderr=said,
        ) as process:
            try:
                yield _heard(process, said)
            finally:
                process.kill()


def _heard(process: subprocess.Popen[bytes], said: IO[bytes]) -> Iterator[Any]:
    """What a process says, one after the other, until it ends."""
    for error, result in _pickles(process.stdout):
        if error is not None:
            raise error
        yield result
    if process.wait():
        said.seek(0)
        raise StoppedError(_stopped(process.returncode, said.read()))


def _pickles(channel: IO[bytes] | None) -> Iterator[Any]:
    """What a process says until it ends; a last word that was cut off does not count."""
    with suppress(EOFError, pickle.UnpicklingError):
        while channel is not None:
            yield pickle.load(channel)  # noqa: S301 (written by our own process)


def _stopped(code: int, said: bytes) -> str:
    last = said.decode(errors="replace").strip().rpartition("\n")[2]
    return (
        f"a process that helps with the work ended before its time ({code} {last}): "
        "something stopped it, or memory ran out; close other programs and try again"
    )
