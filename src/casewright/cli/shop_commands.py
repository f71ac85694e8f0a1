"""Commands that go with the work in the shop: what is likely, what was done, what follows."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from casewright.cli import help_texts
from casewright.cli.app import AsJson, AsOf, Job, SizesCommand, WithoutRecord, app, leave, use_of

__all__: list[str] = []


@app.command(short_help="How likely each fit misses; what to measure.", help=help_texts.FORECAST)
def forecast(
    job: Job,
    path: Annotated[
        str, typer.Argument(metavar="PATH", help="Only what is made here, such as sink.drawer_1.")
    ] = "",
    everything: Annotated[
        bool, typer.Option("--all", help="Every fit with all its causes.")
    ] = False,
    without_record: WithoutRecord = False,
    as_of: AsOf = None,
    as_json: AsJson = False,
) -> None:
    """Say how likely each fit misses its band, and where measuring first is worth it."""
    from casewright.cli.forecast import run_forecast

    use, document = use_of(without_record, as_of), "forecast" if as_json else ""
    leave(lambda: run_forecast(job, path, use, everything=everything, as_json=as_json), document)


@app.command(
    short_help="Write down what was read, cut or done.", help=help_texts.RECORD, cls=SizesCommand
)
def record(
    job: Job,
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="KIND WHAT", help="What happened; without it, the list."),
    ] = None,
    *,
    size: Annotated[
        str | None, typer.Option(help='Size as cut, "34 1/2 x 23 1/4"; otherwise as planned.')
    ] = None,
    tool: Annotated[str | None, typer.Option(help="What it was read or made with.")] = None,
    within: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="How far the reading may be off.")
    ] = None,
    note: Annotated[str | None, typer.Option(help="In words.")] = None,
    corrects: Annotated[
        str | None, typer.Option(metavar="ID", help="Put this in the place of that entry.")
    ] = None,
    sure: Annotated[bool, typer.Option("--sure", help="It is so, however odd it looks.")] = False,
    as_of: AsOf = None,
    take_in: Annotated[
        Path | None,
        typer.Option("--import", metavar="FILE", readable=False, help="CSV or lines of JSON."),
    ] = None,
    put_out: Annotated[
        Path | None,
        typer.Option("--export", metavar="FILE", help="All of it, as CSV or lines of JSON."),
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Write down what was read, cut, spoiled or spent, or list it."""
    from casewright.cli.record import RecordOptions, run_record

    options = RecordOptions(size, tool, within, note, corrects, sure, as_of, take_in, put_out)
    document = "record" if as_json else ""
    leave(lambda: run_record(job, words or [], options, as_json=as_json), document)


@app.command(
    short_help="A test piece measured: what to move.", help=help_texts.SETUP, cls=SizesCommand
)
def setup(
    job: Job,
    cut: Annotated[
        str, typer.Argument(metavar="CUT", help="A cut or holes, such as 12.rabbet_back.")
    ],
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="WHAT SIZE", help="As measured: depth 13/32; lap 1/32 proud."),
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Say how a tool is set for a cut, and what to move when a test piece is off."""
    from casewright.cli.setup import run_setup

    document = "setup" if as_json else ""
    leave(lambda: run_setup(job, cut, words or [], as_json=as_json), document)


@app.command(short_help="Which sheets go to which cases.", help=help_texts.SHEETS)
def sheets(
    job: Job,
    accept: Annotated[
        bool, typer.Option("--accept", help="Write the groups into the job file.")
    ] = False,
    as_json: AsJson = False,
) -> None:
    """Sort sheets of several thicknesses by case."""
    from casewright.cli.sheets import run_sheets

    leave(lambda: run_sheets(job, accepts=accept, as_json=as_json), "sheets" if as_json else "")


@app.command(short_help="What follows from what was read and cut.", help=help_texts.RESOLVE)
def resolve(
    job: Job,
    accept: Annotated[
        bool, typer.Option("--accept", help="Say yes: from now on only what comes after is told.")
    ] = False,
    fewest: Annotated[
        bool, typer.Option("--fewest", help="Change as few pieces as can be, every fit kept.")
    ] = False,
    as_of: AsOf = None,
    as_json: AsJson = False,
) -> None:
    """Show what stays, what changes and why, and what is impossible now with its remedies."""
    from casewright.cli.resolve import run_resolve

    document = "resolve" if as_json else ""
    words = {"accepts": accept, "fewest": fewest, "as_json": as_json}
    leave(lambda: run_resolve(job, **words, moment=as_of), document)


@app.command(short_help="What differs since a packet or a date.", help=help_texts.CHANGED)
def changed(
    job: Job,
    since: Annotated[
        str | None,
        typer.Argument(metavar="[SINCE]", help="A packet's fingerprint, a date, or an entry."),
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Say whether pages in the shop are stale, and what differs since they were printed."""
    from casewright.cli.changed import run_changed

    leave(lambda: run_changed(job, since, as_json=as_json), "changed" if as_json else "")


@app.command(short_help="Pages for the desk and the phone.", help=help_texts.SERVE)
def serve(
    job: Job,
    port: Annotated[
        int, typer.Option(min=0, max=65535, help="Where it is found; 0 takes any that is free.")
    ] = 8417,
    network: Annotated[
        bool, typer.Option("--network", help="Let devices of the home network join by a code.")
    ] = False,
) -> None:
    """Serve the pages of a job until stopped."""
    from casewright.cli.serving import run_serve

    leave(lambda: run_serve(job, port, network=network))
