"""A finding says what is bad or risky; a question says what is missing and who waits for it."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from casewright.dims import Dim

__all__ = ["Finding", "Question", "Severity"]


class Severity(Enum):
    """How much a finding matters.

    STOP: do not cut the parts it names. CARE: look before going on. NOTE: good to know.
    """

    STOP = "stop"
    CARE = "care"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Finding:
    """A cabinet that has a meaning but is bad, risky or needs care.

    Parameters
    ----------
    rule
        Name of the rule in the trade's words: 'shelf sag'.
    severity
        How much it matters.
    path
        The part, case or dimension it is about.
    says
        The sentence, with the measured value and the limit in the job's unit.
    measured, limit
        The two values as text, empty when there are none.
    source
        Key in `casewright.sources`, or 'common practice'.
    remedies
        What would be right, best first.
    numbers
        What it works out, for its lengths and weights to be asked about.
    """

    rule: str
    severity: Severity
    path: str
    says: str
    measured: str = ""
    limit: str = ""
    source: str = ""
    remedies: tuple[str, ...] = ()
    numbers: tuple[Dim, ...] = field(default=(), compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Question:
    """Something missing that Casewright will not invent.

    Parameters
    ----------
    path
        The number asked for.
    needs
        What to find out, as an order to the person: 'measure six sheets'.
    because
        Why it matters.
    waiting
        Paths of the parts that wait for it.
    how
        How to answer it in the job file.
    """

    path: str
    needs: str
    because: str
    waiting: tuple[str, ...] = ()
    how: str = ""
