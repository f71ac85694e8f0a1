"""The root of all errors of Casewright."""

from __future__ import annotations

from casewright.errors.problem import Location, Problem

__all__ = ["CasewrightError"]


class CasewrightError(Exception):
    """Something that stops, told to the person who can put it right.

    The tree::

        CasewrightError
        |-- LengthError    a written length that cannot be read (also a ValueError)
        `-- JobFileError   all that is wrong in a job file (also a ValueError)

    A package adds its own branch where it raises it. What is wrong in the program itself, and no
    person at a job file can put right, stays outside the tree and says so in its docstring.
    """

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All that is wrong, one by one, for other programs."""
        return (Problem(Location(""), str(self), ""),)
