"""Openings for registers in the job file: air comes through the toe board of a case."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from casewright.casework.specs import TOE_KINDS, CaseSpec
from casewright.casework.toes import BESIDE_REGISTER
from casewright.job.case_sizes import CaseSizes
from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.tables import CaseTable

__all__ = ["as_before_register", "check_register_sizes", "check_registers"]

_LEFT = Fraction(10)
"""Wood left over and under an opening, at the least [mm]."""


def as_before_register(spec: CaseSpec, table: CaseTable, origins: Origins) -> CaseSpec:
    """A case with the opening through its toe board, where it stands before a register."""
    if table.register_opening is None:
        return spec
    wide, high = (origins.given(size, ("case", spec.key, "register_opening", number))
                  for number, size in enumerate(table.register_opening))  # fmt: skip
    return replace(spec, register=(wide, high))


def check_registers(content: Content, reporter: Reporter) -> None:
    """Tell an opening on a case that has no toe board of its own."""
    for key, case in content.cases.items():
        path: KeyPath = ("case", key, "register_opening")
        if case.register_opening is None:
            continue
        if case.kind not in TOE_KINDS or (case.toe or "notch") != "notch":
            what = "only the toe board of a base or tall case is opened for a register"
            reporter.tell(path, what, 'take it out, or write toe = "notch"')
        elif case.diagonal is not None:
            what = "the toe board across a corner stands off the walls: no register blows at it"
            reporter.tell(path, what, "take it out")


def check_register_sizes(sizes: CaseSizes) -> None:
    """Tell an opening that leaves too little of its toe board."""
    case = sizes.case
    if case.register is None:
        return
    wide, high = (given.value for given in case.register)
    most = sizes.deck - 2 * _LEFT
    if high > most:
        what = f"a toe board {sizes.text(sizes.deck)} high leaves no wood round this opening"
        sizes.tell(
            "register_opening",
            what,
            f"{sizes.at_most(most)} for its height",
        )
    if case.width is None:
        return  # its share of the run is told of when it is built
    room = case.width.value - 2 * sizes.board - 2 * BESIDE_REGISTER
    if wide > room:
        what = "so wide an opening leaves nothing of the toe board at its ends"
        sizes.tell("register_opening", what, f"{sizes.at_most(room)} for its width")
