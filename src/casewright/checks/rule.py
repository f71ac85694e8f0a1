"""What a rule is: an explanation, an example of either side, and the examination itself."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from casewright.findings import Finding, Reckoning, Severity
from casewright.room.model import Room

__all__ = ["Breach", "Examine", "Rule"]

_HEADS = ("Passes", "Fails", "Sources")


@dataclass(frozen=True, slots=True)
class Breach:
    """One place where a rule is not kept; the rule adds its name and its source.

    Parameters
    ----------
    path
        The part, case or dimension it is about.
    says
        The sentence, with the measured value and the limit in the job's unit.
    measured, limit
        The two values as text, empty when there are none.
    remedies
        What would be right, best first.
    severity
        None: the rule's own.
    own
        The numbers that it works out.
    """

    path: str
    says: str
    measured: str = ""
    limit: str = ""
    remedies: tuple[str, ...] = ()
    severity: Severity | None = None
    own: Reckoning | None = None


Examine = Callable[[Room], Iterable[Breach]]


@dataclass(frozen=True, slots=True)
class Rule:
    """One thing that is looked at in every room.

    Parameters
    ----------
    name
        In the trade's words: 'shelf sag'.
    severity
        How much a breach matters, unless the breach says otherwise.
    about
        Docstring of the rule's module: a title, the explanation, then the sections Passes,
        Fails and Sources.
    source
        Key in `casewright.sources`.
    examine
        Finds the breaches.
    """

    name: str
    severity: Severity
    about: str
    source: str
    examine: Examine

    def findings(self, room: Room) -> Iterator[Finding]:
        """The breaches of this rule as findings."""
        for breach in self.examine(room):
            yield Finding(
                rule=self.name,
                severity=breach.severity or self.severity,
                path=breach.path,
                says=breach.says,
                measured=breach.measured,
                limit=breach.limit,
                source=self.source,
                remedies=breach.remedies,
                numbers=() if breach.own is None else breach.own.numbers,
            )

    @property
    def title(self) -> str:
        """First line of the explanation."""
        return self.about.strip().partition("\n")[0]

    @property
    def explanation(self) -> str:
        """Why the rule is there and what it looks at."""
        return self._section("")

    @property
    def passes(self) -> str:
        """An example that keeps the rule."""
        return self._section("Passes")

    @property
    def fails(self) -> str:
        """An example that breaks it."""
        return self._section("Fails")

    @property
    def sources(self) -> str:
        """Where each number comes from."""
        return self._section("Sources")

    def _section(self, head: str) -> str:
        lines = inspect.cleandoc(self.about).splitlines()[1:]
        found: list[str] = []
        current = ""
        for number, line in enumerate(lines):
            underlined = number + 1 < len(lines) and set(lines[number + 1]) == {"-"}
            if line in _HEADS and underlined:
                current = line
            elif current == head and set(line) != {"-"}:
                found.append(line)
        return "\n".join(found).strip()
