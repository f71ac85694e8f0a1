"""What is wrong in a job file: all of it at once."""

from __future__ import annotations

from casewright.errors.base import CasewrightError
from casewright.errors.problem import Problem

__all__ = ["JobFileError"]


class JobFileError(CasewrightError, ValueError):
    """A job file that has no meaning, with every problem in it, in the order of the file.

    Parameters
    ----------
    problems
        At least one, in any order.

    Raises
    ------
    ValueError
        When there is no problem to tell.
    """

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        if not problems:
            msg = "a job file without problems is no error"
            raise ValueError(msg)
        super().__init__(problems)
        self._problems = tuple(sorted(problems))

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Each once, in the order of the file."""
        return self._problems

    def __str__(self) -> str:
        return "\n".join(str(problem) for problem in self.problems)
