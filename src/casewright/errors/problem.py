"""One thing that is wrong, and where."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Location", "Problem"]


@dataclass(frozen=True, slots=True, order=True)
class Location:
    """A place in a file, as an editor counts it.

    Parameters
    ----------
    file
        Name of the file as the person gave it.
    line
        From 1; 0 when the problem is the file as a whole [lines].
    column
        From 1; 0 when the problem is the line as a whole [characters].
    word
        What stands there, as typed; empty when nothing does.
    """

    file: str
    line: int = 0
    column: int = 0
    word: str = ""

    def __str__(self) -> str:
        line = f"line {self.line}" if self.line else ""
        column = f"column {self.column}" if self.line and self.column else ""
        return ", ".join(each for each in (self.file, line, column, self.word) if each)


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One thing that has no meaning as it stands.

    Parameters
    ----------
    location
        Where it stands.
    what
        What is wrong there.
    want
        What would be right.
    """

    location: Location
    what: str
    want: str

    def __str__(self) -> str:
        where = f"{self.location}: " if str(self.location) else ""
        return f"{where}{self.what}; {self.want}"
