"""A job worked out; where the parts do not go together, the size in the file that is at fault.

A failed proof is a defect of the program, unless somebody asked for a reveal as wide as a board,
for a height between the marks of the tape, or for a pull with its screws in one hole. So the style
values and hardware that the file sets are tried at their usual sizes, and the sizes of cases on
the nearest mark: the ones that the proof does not hold with are what is wrong in the file, and a
size near them that holds would be right.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from casewright.casework.specs import CaseSpec
from casewright.dims import TAPE_MARK, Given, Way, parse_length, round_to, shop_text
from casewright.errors import JobFileError, Problem
from casewright.facts import NO_FACTS, Facts
from casewright.job.defaults import usual_tables
from casewright.job.load import LoadedJob, spec_of
from casewright.job.positions import KeyPath, Positions, scan
from casewright.job.problems import Reporter
from casewright.job.syntax import Plain, parse
from casewright.job.worked import WorkedJob, work_out
from casewright.sources import INCH
from casewright.style import STYLE_KEYS, default_style

__all__ = ["work_out_job"]

_Changes: TypeAlias = dict[KeyPath, str]
"""Sizes by their path, as they would be typed."""

_CASE_SIZES = ("width", "height", "depth", "divider", "skirt", "crown", "nosing")
_HALVINGS = 8
_FINE = {"in": INCH / 64, "mm": Fraction(1, 10)}
_SMALL = Fraction(25)
"""Values under this are searched for in fine steps [mm]."""


def work_out_job(job: LoadedJob, facts: Facts = NO_FACTS) -> WorkedJob:
    """Work a job out as `work_out` does, and tell the sizes that break its proof.

    Parameters
    ----------
    facts
        Sizes of real things; where something does not go together with them, it is seen whether
        it does by the file alone.

    Returns
    -------
    With failures only where no size is to blame.

    Raises
    ------
    JobFileError
        With each size that the proof does not hold with, though it would with another.
    """
    worked = work_out(job.spec, facts)
    if facts and not worked.holds:
        plain = work_out_job(job)
        return plain if plain.failures else worked
    if worked.failures:
        problems = tuple(_Trial(job).problems())
        if problems:
            raise JobFileError(problems)
    return worked


@dataclass(frozen=True, slots=True)
class _Asked:
    """A size that the file sets, and one that is less likely to be at fault.

    Parameters
    ----------
    path
        Where it stands.
    value
        As the file has it [mm].
    other
        The usual one of style and hardware; of a case's own, the nearest mark of the tape [mm].
    """

    path: KeyPath
    value: Fraction
    other: Fraction

    @property
    def origin(self) -> Literal["style", "hardware", "case"]:
        """Whose size it is."""
        if "style" in self.path:
            return "style"
        return "hardware" if self.path[0] == "hardware" else "case"


class _Trial:
    def __init__(self, job: LoadedJob) -> None:
        self.job = job
        self.spec = job.spec
        self.positions: Positions = scan(job.file.text)
        self.data = parse(job.file.name, self.positions)
        self.reporter = Reporter(job.file.name, self.positions)

    def problems(self) -> Iterator[Problem]:
        """Values that break the proof when they are put back one by one, in the file's order."""
        asked = sorted(self._asked(), key=lambda each: self.reporter.where(each.path))
        changed: _Changes = {each.path: self._text(each.other) for each in asked}
        if not asked or self._failure(changed) is not None:
            return
        for each in asked:
            tried = {path: text for path, text in changed.items() if path != each.path}
            failure = self._failure(tried)
            if failure is None:
                changed = tried
            else:
                yield self._problem(each, failure, tried)

    def _asked(self) -> Iterator[_Asked]:
        usual = default_style(self.spec.unit)
        for key in (key.name for key in STYLE_KEYS):
            path: KeyPath = ("style", key)
            if self.positions.has(path):
                yield _Asked(path, self.spec.style[key].value, usual[key].value)
        for case in self.spec.cases:
            for key, given in case.overrides.items():
                path = ("case", case.key, "style", key)
                yield _Asked(path, given.value, self.spec.style[key].value)
            yield from self._between_marks(case)
        yield from self._hardware()

    def _hardware(self) -> Iterator[_Asked]:
        usual = usual_tables(self.spec.unit)["hardware"]
        given = self.data.get("hardware")
        for piece, table in given.items() if isinstance(given, dict) else ():
            for key, typed in table.items():
                other = usual.get(piece, {}).get(key)
                if key != "title" and isinstance(other, str) and not isinstance(typed, list):
                    value, known = (parse_length(str(t), self.spec.unit) for t in (typed, other))
                    yield _Asked(("hardware", piece, key), value, known)

    def _between_marks(self, case: CaseSpec) -> Iterator[_Asked]:
        for name in _CASE_SIZES:
            path: KeyPath = ("case", case.key, name)
            given: Given | None = getattr(case, name)
            if given is not None and self.positions.has(path):
                mark = round_to(given.value, TAPE_MARK[self.spec.unit], Way.NEAREST)[0]
                if mark != given.value:
                    yield _Asked(path, given.value, mark)

    def _text(self, value: Fraction) -> str:
        return shop_text(value, self.spec.unit)

    def _failure(self, changed: _Changes) -> str | None:
        """What fails first with values changed; None when the proof holds."""
        data = self.data
        for path, text in changed.items():
            data = _with(data, path, text)
        try:
            spec = spec_of(data, self.job.file.name, self.positions)
        except JobFileError as error:
            return error.problems[0].what
        failures = work_out(spec).failures
        return f"{failures[0][0]}: {failures[0][1].says}" if failures else None

    def _problem(self, asked: _Asked, failure: str, others: _Changes) -> Problem:
        near = asked.other if asked.origin == "case" else self._nearest(asked, others)
        size = "" if near is None else f'"{self._text(near)}"'
        usual = f"take the line out: {self._text(asked.other)} is usual"
        want = {
            "style": f"write {size}, or {usual}" if size else usual,
            "hardware": f"read it again; {size or self._text(asked.other)} would go",
            "case": f"write {size}",
        }[asked.origin]
        what = f"the parts do not go together with this {asked.path[-1]} ({failure})"
        return Problem(self.reporter.where(asked.path), what, want)

    def _nearest(self, asked: _Asked, others: _Changes) -> Fraction | None:
        """A size near the one asked for that the proof holds with, if it is not the usual one."""
        step = (_FINE if max(asked.other, asked.value) < _SMALL else TAPE_MARK)[self.spec.unit]

        def holds(value: Fraction) -> bool:
            return self._failure({**others, asked.path: self._text(value)}) is None

        on_marks = [round_to(asked.value, step, way)[0] for way in (Way.NEAREST, Way.DOWN, Way.UP)]
        for value in on_marks:
            if value != asked.value and holds(value):
                return value
        good, bad = asked.other, asked.value
        for _ in range(_HALVINGS):
            middle = round_to((good + bad) / 2, step, Way.NEAREST)[0]
            if middle in (good, bad):
                break
            good, bad = (middle, bad) if holds(middle) else (good, middle)
        return None if good == asked.other else good


def _with(data: dict[str, Plain], path: KeyPath, text: str) -> dict[str, Plain]:
    """Data with the value at a path replaced."""
    key, rest = str(path[0]), path[1:]
    held = data.get(key)
    return {**data, key: _with(held, rest, text) if rest and isinstance(held, dict) else text}
