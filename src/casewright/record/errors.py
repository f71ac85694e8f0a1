"""What stops when a record cannot be read, written or believed."""

from __future__ import annotations

from dataclasses import replace

from casewright.errors import CasewrightError, Location, Problem

__all__ = ["DamageError", "RecordError"]


class RecordError(CasewrightError, ValueError):
    """Entries that have no meaning, or a record that cannot be used; nothing was written.

    Parameters
    ----------
    problems
        At least one.
    """

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__(problems)
        self._problems = tuple(_printable(problem) for problem in problems)

    @classmethod
    def of(cls, what: str, want: str, *, file: str = "", word: str = "") -> RecordError:
        """One problem, with the file and the word it is about."""
        return cls((Problem(Location(file, word=word), what, want),))

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Each with its place where it has one."""
        return self._problems

    def __str__(self) -> str:
        return "\n".join(str(problem) for problem in self.problems)


def _printable(problem: Problem) -> Problem:
    """With a box for each sign that would break or bend the line."""

    def shown(text: str) -> str:
        return "".join(c if c.isprintable() else "\N{WHITE SQUARE}" for c in text)

    place = problem.location
    where = replace(place, file=shown(place.file), word=shown(place.word))
    return Problem(where, shown(problem.what), shown(problem.want))


class DamageError(CasewrightError):
    """A record is not as it was written; `rescue` keeps what is whole in it.

    Parameters
    ----------
    file
        Name of the record.
    what
        Where it shows, in words.
    """

    def __init__(self, file: str, what: str) -> None:
        super().__init__(file, what)
        self.file = file
        self.what = what

    @property
    def problems(self) -> tuple[Problem, ...]:
        """The one there is."""
        return (Problem(Location(self.file), f"it is damaged: {self.what}", "put back a copy"),)

    def __str__(self) -> str:
        return f"{self.file} is damaged: {self.what}"
