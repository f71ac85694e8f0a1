"""Loading a job: the file read, understood, and every default filled in."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path, PurePath

from casewright.casework.house import House
from casewright.casework.specs import CaseSpec
from casewright.dims import Chain
from casewright.errors import JobFileError, Location, Problem
from casewright.job.as_built import as_built
from casewright.job.bend_checks import check_bends
from casewright.job.blind_corners import check_blind_corner
from casewright.job.content import Content, read_content, unit_in
from casewright.job.corner_ends import check_corner_ends
from casewright.job.crown_cases import reach_up
from casewright.job.diagonals import check_diagonal
from casewright.job.face_choices import check_face
from casewright.job.floor_places import floor_places
from casewright.job.height_choices import check_heights, with_solved_heights
from casewright.job.islands import island_of, with_island_widths
from casewright.job.moisture import moisture_of
from casewright.job.origins import Origins
from casewright.job.overlay_choices import check_overlay
from casewright.job.positions import Positions, scan
from casewright.job.problems import Reporter
from casewright.job.proportions import check_proportions, check_supplies
from casewright.job.references import check_references
from casewright.job.registers import check_registers
from casewright.job.requests import appliance_of, case_of, run_of, style_of
from casewright.job.room_survey import survey_of
from casewright.job.run_layouts import check_run_layouts, with_solved_widths
from casewright.job.seats import check_seat, check_shared_lids, with_shared_lids
from casewright.job.supplies import hardware_list, readings, shop_of, stock_list, title_of
from casewright.job.survey_checks import check_survey
from casewright.job.survey_corners import check_wall_ends
from casewright.job.syntax import Plain, parse
from casewright.job.tables import Heading
from casewright.job.text import FileText, read_file
from casewright.job.trim_checks import check_crowns, check_trims
from casewright.job.trims import moulded, trims_of
from casewright.room.specs import JobSpec, MatchSpec, RunSpec
from casewright.stock import Board, Sheet, Stock, StockList
from casewright.style import Style

__all__ = ["LoadedJob", "load_job", "read_job", "spec_of"]

_Parts = tuple[Style, dict[str, Stock], dict[str, CaseSpec], dict[str, RunSpec]]


@dataclass(frozen=True, slots=True)
class LoadedJob:
    """A job file that was understood.

    Parameters
    ----------
    path
        Where it lies.
    file
        Its text as read.
    spec
        What it asks for, with every default filled in.
    """

    path: Path
    file: FileText
    spec: JobSpec


def load_job(path: Path) -> LoadedJob:
    """Read a job file.

    Raises
    ------
    JobFileError
        With the first thing that is no TOML, or else with all problems of the file.
    """
    file = read_file(path)
    return LoadedJob(path, file, read_job(file.text, file.name))


def read_job(text: str, name: str) -> JobSpec:
    r"""The job that a text asks for.

    Parameters
    ----------
    name
        What messages and origins call the file.

    Raises
    ------
    JobFileError
        With the first thing that is no TOML, or else with all problems of the text.

    Examples
    --------
    >>> job = read_job(
    ...     'format = 1\nunit = "in"\n[case.upper]\nkind = "wall"\nwidth = "33"', "job.toml"
    ... )
    >>> job.cases[0].width.origin.where
    'job.toml line 5'
    """
    positions = scan(text)
    return spec_of(parse(name, positions), name, positions)


def spec_of(data: dict[str, Plain], name: str, positions: Positions) -> JobSpec:
    """The job that the data of a file asks for.

    Parameters
    ----------
    data
        As the text holds it, or with values changed.
    name
        What messages and origins call the file.
    positions
        Where the values stand in its text.

    Raises
    ------
    JobFileError
        With all problems of the data.
    """
    if not data:
        want = "write format, unit and a case, or let `casewright new` write them"
        raise JobFileError((Problem(Location(name), "nothing is written in this file", want),))
    reporter = Reporter(name, positions, judges_sizes=unit_in(data) is not None)
    content = read_content(data, reporter)
    check_references(content, reporter)
    check_survey(content, reporter)
    check_wall_ends(content, reporter)
    check_run_layouts(content, reporter)
    check_trims(content, reporter)
    check_shared_lids(content, reporter)
    check_registers(content, reporter)
    check_supplies(content, reporter)
    check_heights(content, reporter)
    for key, case in content.cases.items():
        check_face(key, case, content, reporter)
        check_overlay(key, case, content, reporter)
        check_blind_corner(key, case, content, reporter)
        check_diagonal(key, case, content, reporter)
        check_seat(key, case, content, reporter)
    spec = _spec(content, Origins(name, positions, content.unit), reporter)
    if spec is not None:
        check_corner_ends(spec, reporter)
        check_crowns(spec, reporter)
        check_bends(spec, reporter)
    if reporter.problems or spec is None:
        raise JobFileError(tuple(dict.fromkeys(reporter.problems)))
    return spec


def _spec(content: Content, origins: Origins, reporter: Reporter) -> JobSpec | None:
    stock = stock_list(content, origins)
    style = with_solved_heights(style_of(content.style, origins), content, origins)
    cases = {
        key: case_of(key, table, content, origins, style) for key, table in content.cases.items()
    }
    runs = {
        key: replace(
            run_of(key, table, origins, content.appliances),
            trims=trims_of(key, table, content, origins),
        )
        for key, table in content.runs.items()
    }
    cases = with_shared_lids(with_solved_widths(cases, content, origins), runs)
    cases = with_island_widths(cases, content, origins, stock)
    stock |= moulded(runs.values(), stock)
    fitted = (run.trims.crown is not None and run.trims.crown.fitted for run in runs.values())
    if any(fitted) and not reporter.problems:  # a survey that was refused is not worked out
        shop = shop_of(content.shop, origins)
        house = House(Chain(), style, stock, hardware_list(content.hardware, origins), shop,
                      origins.unit)  # fmt: skip
        cases = reach_up(cases, runs, house, survey_of(content, origins, shop), reporter)
    if reporter.judges_sizes:
        sound = {key: case for key, case in cases.items() if _has_stock(case, stock)}
        check_proportions(content, sound, runs, stock, style, reporter)
    if reporter.problems or content.heading is None:
        return None
    return _job(content.heading, content, origins, (style, stock, cases, runs))


def _job(heading: Heading, content: Content, origins: Origins, parts: _Parts) -> JobSpec:
    style, stock, cases, runs = parts
    shop = shop_of(content.shop, origins)
    return JobSpec(
        name=heading.name or title_of(PurePath(origins.name).stem, None),
        unit=heading.unit,
        paper=heading.paper or ("letter" if heading.unit == "in" else "a4"),
        style=style,
        stock=stock,
        hardware=hardware_list(content.hardware, origins),
        shop=shop,
        cases=tuple(cases.values()),
        runs=tuple(runs.values()),
        appliances=tuple(
            appliance_of(key, table, content, origins, style)
            for key, table in content.appliances.items()
        ),
        matches=tuple(
            MatchSpec(key, tuple(table.cases)) for key, table in content.matches.items()
        ),
        islands=tuple(
            island_of(key, table, content, origins) for key, table in content.islands.items()
        ),
        floor_places=floor_places(content, origins),
        moisture=moisture_of(content.wood, origins),
        file_facts=readings(content, origins) | as_built(content, origins),
        survey=survey_of(content, origins, shop),
        address=heading.address or "",
        wishes=tuple(heading.wishes),
        source=origins.name,
        accessible=bool(heading.accessible),
        two_cooks=bool(heading.two_cooks),
    )


def _has_stock(case: CaseSpec, stock: StockList) -> bool:
    """Whether the goods of a case's boards are known, so that its sizes can be judged."""
    sheets = all(isinstance(stock.get(key), Sheet) for key in (case.box_stock, case.back_stock))
    return sheets and (not case.covered or isinstance(stock.get(case.face_stock), Board))
