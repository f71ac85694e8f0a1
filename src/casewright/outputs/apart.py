"""Work in a process of its own, which gives all memory back at its end.

This module is also that process: `python -m casewright.outputs.apart`, what to do on its standard
input, what came of it on its standard output. It starts bare, without what its parent has loaded.
"""

from __future__ import annotations

import pickle
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import suppress
from typing import IO, Any, TypeVar, cast

from casewright.errors import CasewrightError

__all__ = ["StoppedError", "apart", "apart_by_steps", "main"]

Result = TypeVar("Result")


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
    (result,) = _answers(work, given, named)
    return cast("Result", result)


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
    return _answers(work, given, named)


def _answers(work: Callable[..., object], given: object, named: object) -> Iterator[Any]:
    with (
        tempfile.TemporaryFile() as said,
        subprocess.Popen(
            # -P: no file of the folder someone works in takes the place of a module
            (sys.executable, "-P", "-m", "casewright.outputs.apart"),
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=said,
        ) as process,
    ):
        try:
            _ask(process.stdin, (work, given, named))
            for error, result in _pickles(process.stdout):
                if error is not None:
                    raise error
                yield result
            if process.wait():
                said.seek(0)
                raise StoppedError(_stopped(process.returncode, said.read()))
        finally:
            process.kill()


def _ask(channel: IO[bytes] | None, task: object) -> None:
    """Say what to do; a process that has ended already is found out when it does not answer."""
    if channel is not None:
        with suppress(BrokenPipeError), channel:
            pickle.dump(task, channel)


def _pickles(channel: IO[bytes] | None) -> Iterator[Any]:
    """What a process says until it ends; a last word that was cut off does not count."""
    with suppress(EOFError, pickle.UnpicklingError):
        while channel is not None:
            yield pickle.load(channel)  # noqa: S301 (written by our own process)


def _stopped(code: int, said: bytes) -> str:
    last = said.decode(errors="replace").strip().rpartition("\n")[2]
    return (
        f"a process that prints pages ended before its time ({code} {last}): "
        "something stopped it, or memory ran out; close other programs and print again"
    )


def main() -> None:
    """Do what is asked for on standard input."""
    work, given, named = pickle.load(sys.stdin.buffer)  # noqa: S301 (written by our own process)
    try:
        made = work(*given, **named)
        for result in made if isinstance(made, Iterator) else (made,):
            _tell(None, result)
    except Exception as raised:  # whatever it is, the parent raises it
        _tell(raised, None)


def _tell(error: Exception | None, result: object) -> None:
    pickle.dump((error, result), sys.stdout.buffer)
    sys.stdout.buffer.flush()


if __name__ == "__main__":
    main()
