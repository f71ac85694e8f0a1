"""Work in a process of its own, which gives all memory back at its end.

This module is also that process: `python -m casewright.outputs.apart`, what to do on its standard
input, what came of it on its standard output. It starts bare, without what its parent has loaded.
"""

from __future__ import annotations

import pickle
import subprocess
import sys
from collections.abc import Callable
from typing import TypeVar

from casewright.errors import CasewrightError

__all__ = ["StoppedError", "apart", "main"]

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
    done = subprocess.run(
        # -P: no file of the folder someone happens to work in takes the place of a module
        (sys.executable, "-P", "-m", "casewright.outputs.apart"),
        input=pickle.dumps((work, given, named)),
        capture_output=True,
        check=False,
    )
    if done.returncode:
        said = done.stderr.decode(errors="replace").strip().rpartition("\n")[2]
        msg = (
            f"a process that prints pages ended before its time ({done.returncode} {said}): "
            "something stopped it, or memory ran out; close other programs and print again"
        )
        raise StoppedError(msg)
    error, result = pickle.loads(done.stdout)  # noqa: S301 (written by our own process)
    if error is not None:
        raise error
    return result  # type: ignore[no-any-return]


def main() -> None:
    """Do what is asked for on standard input."""
    work, given, named = pickle.load(sys.stdin.buffer)  # noqa: S301 (written by our own process)
    error, result = None, None
    try:
        result = work(*given, **named)
    except Exception as raised:  # whatever it is, the parent raises it
        error = raised
    pickle.dump((error, result), sys.stdout.buffer)


if __name__ == "__main__":
    main()
