"""Commands that plan a job: from a starter file to its packet."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

from casewright.cli import help_texts
from casewright.cli.app import AsJson, AsOf, Job, WithoutRecord, app, leave, use_of

__all__: list[str] = []

Stages = Annotated[
    Literal["2", "3", "free"] | None,
    typer.Option(help="Most cutting directions, instead of the problem's own."),
]


@app.command(short_help="Make the demo kitchen's packet.", help=help_texts.DEMO)
def demo(
    out: Annotated[
        Path, typer.Option(help="Folder to put the demo job and its packet into.")
    ] = Path("out/demo"),
) -> None:
    """Work out the demo kitchen and make its packet."""
    from casewright.cli.making import run_demo

    leave(lambda: run_demo(out))


@app.command(short_help="Write a short job file to start from.", help=help_texts.NEW)
def new(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="The job file to write.")],
    metric: Annotated[bool, typer.Option("--metric", help="In millimetres, on A4.")] = False,
    schema: Annotated[
        Path | None,
        typer.Option(help="Also write the JSON Schema that editors use to help you type."),
    ] = None,
) -> None:
    """Write a short job file to change to your own. An existing file is never overwritten."""
    from casewright.cli.making import run_new

    leave(lambda: run_new(file, metric=metric, schema=schema))


@app.command(short_help="What is open, risky or wrong.", help=help_texts.CHECK)
def check(
    job: Job, without_record: WithoutRecord = False, as_of: AsOf = None, as_json: AsJson = False
) -> None:
    """Say what is wrong, open or risky in a job, and whether its parts go together."""
    from casewright.cli.commands import run_check

    use = use_of(without_record, as_of)
    leave(lambda: run_check(job, use, as_json=as_json), "check" if as_json else "")


@app.command(short_help="Every piece and the size to cut it to.", help=help_texts.PARTS)
def parts(
    job: Job, without_record: WithoutRecord = False, as_of: AsOf = None, as_json: AsJson = False
) -> None:
    """List every piece with the size to cut it to; with --json its holes and cuts as well."""
    from casewright.cli.commands import run_parts

    use = use_of(without_record, as_of)
    leave(lambda: run_parts(job, use, as_json=as_json), "parts" if as_json else "")


@app.command(short_help="Plan sheets and boards, cut by cut.", help=help_texts.CUT)
def cut(
    job: Annotated[
        Path | None,
        typer.Argument(metavar="JOB", readable=False, help="The job file, such as kitchen.toml."),
    ] = None,
    problem: Annotated[
        Path | None,
        typer.Option(
            readable=False,
            help="A cutting problem in JSON, in whole numbers, instead of a job; - reads it from "
            "standard input.",
        ),
    ] = None,
    *,
    seconds: Annotated[
        float | None, typer.Option(help="Look about for so long at the most.")
    ] = None,
    work: Annotated[
        int | None,
        typer.Option(min=1, help="Try so many places, however fast the machine is."),
    ] = None,
    stages: Stages = None,
    last: Annotated[
        Path | None,
        typer.Option(readable=False, help="The plan before a change; as little moves as may be."),
    ] = None,
    done: Annotated[
        str | None,
        typer.Option("--cut", metavar="1,2", help="Sheets of the last plan that are cut."),
    ] = None,
    without_record: WithoutRecord = False,
    as_of: AsOf = None,
    as_json: AsJson = False,
) -> None:
    """Plan the sheets and boards: what to buy, and each cut in order with its setting."""
    from casewright.cli.cutting import CutOptions, run_cut

    options = CutOptions(seconds, work, stages, last, done)
    use, document = use_of(without_record, as_of), "cut" if as_json else ""
    leave(lambda: run_cut(job, problem, options, use, as_json=as_json), document)


@app.command(short_help="Check a plan for a cutting problem.", help=help_texts.VERIFY)
def verify(
    problem: Annotated[
        Path, typer.Argument(metavar="PROBLEM", readable=False, help="The problem in JSON.")
    ],
    plan: Annotated[
        Path, typer.Argument(metavar="PLAN", readable=False, help="The plan in JSON.")
    ],
    stages: Stages = None,
    as_json: AsJson = False,
) -> None:
    """Check a plan for a cutting problem, whoever made it."""
    from casewright.cli.cutting import run_verify

    leave(lambda: run_verify(problem, plan, stages, as_json=as_json), "verify" if as_json else "")


@app.command(short_help="Make the shop packet (PDF and CSV).", help=help_texts.PACKET)
def packet(
    job: Job,
    out: Annotated[
        Path | None,
        typer.Option(help="Folder for the packet; otherwise out/ and the job file's name."),
    ] = None,
    left: Annotated[
        bool, typer.Option("--left", help="Pages only for what is left to do.")
    ] = False,
    without_record: WithoutRecord = False,
    as_of: AsOf = None,
    *,
    pages: Annotated[
        str,
        typer.Option(metavar="ADDRESS", help="Labels get a code that opens the part there."),
    ] = "",
) -> None:
    """Make the shop packet: packet.pdf, and the parts, buy list and hardware as CSV."""
    from casewright.cli.making import run_packet

    use = use_of(without_record, as_of)
    leave(lambda: run_packet(job, out, use, left_only=left, pages=pages))


@app.command(short_help="What the free widths of a run could be.", help=help_texts.LAYOUT)
def layout(
    job: Job,
    run: Annotated[
        str | None, typer.Option(metavar="NAME", help="Only this run, as under [run.NAME].")
    ] = None,
    accept: Annotated[
        int | None, typer.Option(metavar="N", help="Write answer N into the file.")
    ] = None,
    without_record: WithoutRecord = False,
    as_of: AsOf = None,
    as_json: AsJson = False,
    *,
    heights: Annotated[
        bool, typer.Option("--heights", help="Only the heights of the room.")
    ] = False,
    island: Annotated[
        str | None, typer.Option(metavar="NAME", help="Only this island, as under [island.NAME].")
    ] = None,
) -> None:
    """Fill the walls: up to five layouts that differ in kind, each with its trade."""
    from casewright.cli.layout import LayoutAsked, run_layout

    use, document = use_of(without_record, as_of), "layout" if as_json else ""
    asked = LayoutAsked(run, island, heights)
    leave(lambda: run_layout(job, asked, accept, use, as_json=as_json), document)


@app.command(short_help="What was measured, and what to measure next.", help=help_texts.SURVEY)
def survey(
    job: Job,
    out: Annotated[
        Path | None,
        typer.Option(help="Folder for the form; otherwise out/ and the job file's name."),
    ] = None,
    without_record: WithoutRecord = False,
    as_of: AsOf = None,
    as_json: AsJson = False,
) -> None:
    """Say what the readings of the room come to, and print the form to write them on."""
    from casewright.cli.surveying import run_survey

    use, document = use_of(without_record, as_of), "survey" if as_json else ""
    leave(lambda: run_survey(job, out, use, as_json=as_json), document)


@app.command(short_help="Why a number is what it is.", help=help_texts.WHY)
def why(
    job: Job,
    path: Annotated[
        str, typer.Argument(metavar="PATH", help="A number, such as sink.door_left.width.")
    ] = "",
    without_record: WithoutRecord = False,
    as_of: AsOf = None,
    as_json: AsJson = False,
) -> None:
    """Say why a number is what it is: its formula, and where each part of it comes from."""
    from casewright.cli.commands import run_why

    use = use_of(without_record, as_of)
    leave(lambda: run_why(job, path, use, as_json=as_json), "why" if as_json else "")
