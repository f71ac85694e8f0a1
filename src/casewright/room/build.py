"""`build(spec, facts)`: everything derived from a job and what is known of the real things."""

from __future__ import annotations

from dataclasses import replace

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.dims import Chain
from casewright.facts import NO_FACTS, Facts, merged
from casewright.findings import Finding, Severity
from casewright.room.model import Room, Run
from casewright.room.plinths import run_plinths, shared_plinths
from casewright.room.questions import ask
from casewright.room.runs import place_run, run_width
from casewright.room.specs import JobSpec, RunSpec
from casewright.room.wall_fixing import name_wall_screws
from casewright.survey.survey import Survey, survey

__all__ = ["build"]


def build(spec: JobSpec, facts: Facts = NO_FACTS, *, designed: Chain | None = None) -> Room:
    """The whole job as a model. A pure function: the same input gives the same output.

    Parameters
    ----------
    spec
        The job, defaults filled in.
    facts
        Frozen sizes by path, on top of the readings typed in the job itself.
    designed
        That of another room of the same job, so that it is not built again; None: not at hand.
    """
    known = merged(spec.file_facts, facts)
    room = _built(spec, known)
    if not known:
        return room
    return replace(room, designed=designed or _built(spec, NO_FACTS).chain)


def _built(spec: JobSpec, facts: Facts) -> Room:
    chain = Chain(facts)
    house = House(chain, spec.style, spec.stock, spec.hardware, spec.shop, spec.unit,
                  spec.moisture)  # fmt: skip
    measured = survey(chain, spec.survey, spec.unit)
    runs_of = {key: run for run in spec.runs for key in run.cases}
    shared = {run.key: _shared(house, spec, run, measured) for run in spec.runs}
    carried = {key for groups in shared.values() for group in groups for key in group}
    cases: dict[str, Case] = {}
    for case_spec in spec.cases:
        run = runs_of.get(case_spec.key)
        width = run_width(house, spec, run, measured) if case_spec.width is None and run else None
        own = case_spec.key not in carried
        cases[case_spec.key] = build_case(house, case_spec, width, own_plinth=own)
    runs: list[Run] = []
    findings = [f for case in cases.values() for f in case.findings]
    for run_spec in spec.runs:
        placed, found = place_run(house, spec, run_spec, cases, measured)
        runs.append(run_plinths(house, placed, shared[run_spec.key]))
        findings.extend(found)
    findings.extend(_lost_facts(chain, spec))
    room = Room(
        spec=spec,
        chain=chain,
        designed=chain,
        cases=(*cases.values(), *(p.case for run in runs for p in run.plinths)),
        runs=tuple(runs),
        findings=tuple(findings),
        questions=tuple(q for case in cases.values() for q in case.questions),
        wall_bottom=house.style_dim("wall_bottom"),
        survey=measured,
    )
    name_wall_screws(room)
    return ask(room)


def _shared(
    house: House, spec: JobSpec, run: RunSpec, measured: Survey
) -> tuple[tuple[str, ...], ...]:
    """Which cases of a run stand on one plinth."""
    own = {case.key: case for case in spec.cases if case.key in run.cases}
    widths = {
        key: case.width.value if case.width else run_width(house, spec, run, measured).value
        for key, case in own.items()
    }
    return shared_plinths(house, run, own, widths)


def _lost_facts(chain: Chain, spec: JobSpec) -> list[Finding]:
    """Facts that no number took up; a reading of stock that no case uses yet is none of them."""
    idle = {f"stock.{key}.thickness" for key in spec.stock}
    return [
        Finding(
            rule="lost reading",
            severity=Severity.CARE,
            path=path,
            says=f"a size was recorded for {path}, but nothing of that name is in the job now",
            remedies=("rename the case back", "move the reading to the right name"),
        )
        for path in chain.unused_facts
        if path not in idle
    ]
