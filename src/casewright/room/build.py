"""`build(spec, facts)`: everything derived from a job and what is known of the real things."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import partial

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.dims import Chain
from casewright.facts import NO_FACTS, Facts, merged
from casewright.findings import Finding, Severity
from casewright.room.floor import free_stands
from casewright.room.islands import build_islands
from casewright.room.made_cases import MadeCase, MadeCases
from casewright.room.model import AsDesigned, Room, Run
from casewright.room.panels import run_panels
from casewright.room.plinths import run_plinths, shared_plinths
from casewright.room.questions import ask
from casewright.room.run_ends import waits_for
from casewright.room.runs import place_run
from casewright.room.seam_strips import seams_at
from casewright.room.specs import JobSpec, RunSpec
from casewright.room.standing import Standing
from casewright.room.trims.build import build_trims
from casewright.room.trims.crown_heights import height_under_crown
from casewright.room.wall_fixing import name_wall_screws
from casewright.survey.survey import survey

__all__ = ["build"]


def build(
    spec: JobSpec,
    facts: Facts = NO_FACTS,
    *,
    designed: Chain | None = None,
    before: Room | None = None,
) -> Room:
    """The whole job as a model. A pure function: the same input gives the same output.

    Parameters
    ----------
    spec
        The job, defaults filled in.
    facts
        Frozen sizes by path, on top of the readings typed in the job itself.
    designed
        That of another room of the same job, so that it is not built again; None: not at hand.
    before
        An earlier room of the job: cases that would come out the same are taken from it.
    """
    known = merged(spec.file_facts, facts)
    room = _built(spec, known, before)
    if not known:
        return room
    # Few who ask for the room ask what it was without its readings, and that takes as long.
    return replace(room, as_designed=AsDesigned(designed, partial(_without_facts, spec)))


def _without_facts(spec: JobSpec) -> Chain:
    return _built(spec, NO_FACTS).chain


def _built(spec: JobSpec, facts: Facts, before: Room | None = None) -> Room:
    chain = Chain(facts)
    house, measured = _house(chain, spec), survey(chain, spec.survey, spec.unit)
    made = MadeCases(house, _made_before(before, house))
    stands, shared = _cases(Standing(house, spec, measured, {}, {}), made)
    cases = {each.key: stands.cases[each.key] for each in spec.cases}
    runs: list[Run] = []
    panels: list[Case] = []
    findings = [f for case in cases.values() for f in case.findings]
    for run_spec in spec.runs:
        placed = place_run(stands, run_spec)
        placed = run_plinths(house, placed, shared[run_spec.key])
        placed, own = run_panels(house, placed, spec.appliances)
        runs.append(placed)
        panels.extend(own)
        findings.extend(f for panel in own for f in panel.findings)
        findings.extend(stands.of(run_spec).findings)
    trimmed, found = build_trims(house, spec, runs, measured)
    islands = build_islands(house, spec.islands, trimmed)
    more = [f for _, case in islands for f in case.findings]
    findings.extend((*more, *found, *_lost_facts(chain, spec)))
    standing = cases | {case.key: case for _, case in islands}
    room = Room(
        spec=spec,
        chain=chain,
        as_designed=AsDesigned(chain),
        cases=(
            *cases.values(), *(p.case for run in runs for p in run.plinths), *panels,
            *(case for _, case in islands),
        ),
        runs=trimmed,
        findings=tuple(findings),
        questions=tuple(q for case in cases.values() for q in case.questions),
        wall_bottom=house.style_dim("wall_bottom"),
        survey=measured,
        islands=tuple(island for island, _ in islands),
        free=free_stands(house, spec, standing, trimmed, measured),
        made=made.made,
    )  # fmt: skip
    name_wall_screws(room)
    return ask(room)


def _house(chain: Chain, spec: JobSpec) -> House:
    return House(chain, spec.style, spec.stock, spec.hardware, spec.shop, spec.unit, spec.moisture)


def _made_before(room: Room | None, house: House) -> Mapping[str, MadeCase]:
    """Cases of a room that may be taken over: none where what all of them go by has changed."""
    if room is None or room.chain.facts != house.chain.facts:
        return {}
    then = room.spec
    shared = (then.style, then.stock, then.hardware, then.shop, then.unit, then.moisture)
    now = (house.style, house.stock, house.hardware, house.shop, house.unit, house.moisture)
    return room.made if shared == now else {}


_Groups = dict[str, tuple[tuple[str, ...], ...]]


def _cases(standing: Standing, made: MadeCases) -> tuple[Standing, _Groups]:
    """Build all cases, placing runs as others need them; which of each stand on one plinth.

    Runs that keep out of a corner come after those that go into it, and runs that end at a case
    after the one that it stands in.
    """
    house, spec, cases = standing.house, standing.spec, standing.cases
    runs_of = {key: run for run in spec.runs for key in run.cases}
    shared: _Groups = {}
    waiting = {run.key: waits_for(spec, run) for run in spec.runs}
    left = list(spec.cases)
    while left:
        ready = [key for key, others in waiting.items() if all(o in shared for o in others)]
        for run in spec.runs:
            if run.key in ready:
                shared[run.key] = _shared(standing, run)
                del waiting[run.key]
        known = [c for c in left if c.key not in runs_of or runs_of[c.key].key in shared]
        if not known:
            msg = "each of some runs waits for another"
            raise ValueError(msg)  # the job file's checks refuse that first
        for each in known:
            own = runs_of.get(each.key)
            width = None
            if each.width is None and own is not None:
                width = standing.share(own)
            carried = own is not None and any(each.key in group for group in shared[own.key])
            height = None
            crown = own.trims.crown if own is not None else None
            if own is not None and crown is not None and each.key in crown.fitted:
                height = height_under_crown(house, own, crown, standing.measured)
            seams = seams_at(spec, own).get(each.key, ()) if own is not None else ()
            sizes = (width, height)
            cases[each.key] = made.case(each, sizes, seams, own_plinth=not carried)
        left = [each for each in left if each.key not in cases]
    return standing, shared


def _shared(standing: Standing, run: RunSpec) -> tuple[tuple[str, ...], ...]:
    """Which cases of a run stand on one plinth."""
    own = {case.key: case for case in standing.spec.cases if case.key in run.cases}
    widths = {
        key: case.width.value if case.width else standing.share(run).value
        for key, case in own.items()
    }
    return shared_plinths(standing.house, run, own, widths)


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
