"""`casewright`: the commands, their help, and the way out for every error."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal, NoReturn, TextIO

import typer

from casewright.cli import help_texts
from casewright.cli.exits import BAD_INPUT, CLEAN, FAILED_PROOF, STOPPED

if TYPE_CHECKING:
    from casewright.errors import CasewrightError
    from casewright.job.recorded import Use

__all__ = ["app", "main"]


app = typer.Typer(
    help=help_texts.PROGRAM,
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)

Job = Annotated[
    Path, typer.Argument(metavar="JOB", readable=False, help="The job file, such as kitchen.toml.")
]
Stages = Annotated[
    Literal["2", "3", "free"] | None,
    typer.Option(help="Most cutting directions, instead of the problem's own."),
]
WithoutRecord = Annotated[
    bool, typer.Option("--without-record", help="As if nothing had been read or cut yet.")
]
AsOf = Annotated[
    str | None,
    typer.Option(metavar="WHEN", help="With the record as it was: a date, or the id of an entry."),
]
AsJson = Annotated[bool, typer.Option("--json", help="Print a JSON document instead of text.")]


@app.command(short_help="Make the demo room's packet.", help=help_texts.DEMO)
def demo(
    out: Annotated[
        Path, typer.Option(help="Folder to put the demo job and its packet into.")
    ] = Path("out/demo"),
) -> None:
    """Work out the demo room and make its packet."""
    from casewright.cli.making import run_demo

    _leave(lambda: run_demo(out))


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

    _leave(lambda: run_new(file, metric=metric, schema=schema))


@app.command(short_help="What is open, risky or wrong.", help=help_texts.CHECK)
def check(
    job: Job, without_record: WithoutRecord = False, as_of: AsOf = None, as_json: AsJson = False
) -> None:
    """Say what is wrong, open or risky in a job, and whether its parts go together."""
    from casewright.cli.commands import run_check

    use = _use(without_record, as_of)
    _leave(lambda: run_check(job, use, as_json=as_json), "check" if as_json else "")


@app.command(short_help="Every piece and the size to cut it to.", help=help_texts.PARTS)
def parts(
    job: Job, without_record: WithoutRecord = False, as_of: AsOf = None, as_json: AsJson = False
) -> None:
    """List every piece with the size to cut it to; with --json its holes and cuts as well."""
    from casewright.cli.commands import run_parts

    use = _use(without_record, as_of)
    _leave(lambda: run_parts(job, use, as_json=as_json), "parts" if as_json else "")


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
    use, document = _use(without_record, as_of), "cut" if as_json else ""
    _leave(lambda: run_cut(job, problem, options, use, as_json=as_json), document)


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

    _leave(lambda: run_verify(problem, plan, stages, as_json=as_json), "verify" if as_json else "")


@app.command(short_help="Make the shop packet (PDF and CSV).", help=help_texts.PACKET)
def packet(
    job: Job,
    out: Annotated[
        Path | None,
        typer.Option(help="Folder for the packet; otherwise out/ and the job file's name."),
    ] = None,
    without_record: WithoutRecord = False,
    as_of: AsOf = None,
) -> None:
    """Make the shop packet: packet.pdf, and the parts, buy list and hardware as CSV."""
    from casewright.cli.making import run_packet

    use = _use(without_record, as_of)
    _leave(lambda: run_packet(job, out, use))


@app.command(short_help="What the free widths of a run could be.", help=help_texts.LAYOUT)
def layout(
    job: Job,
    run: Annotated[
        str | None, typer.Option(metavar="NAME", help="Only this run, as under [run.NAME].")
    ] = None,
    accept: Annotated[
        int | None, typer.Option(metavar="N", help="Write answer N of the run into the file.")
    ] = None,
    without_record: WithoutRecord = False,
    as_of: AsOf = None,
    as_json: AsJson = False,
) -> None:
    """Fill the walls: up to five layouts that differ in kind, each with its trade."""
    from casewright.cli.layout import run_layout

    use, document = _use(without_record, as_of), "layout" if as_json else ""
    _leave(lambda: run_layout(job, run, accept, use, as_json=as_json), document)


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

    use, document = _use(without_record, as_of), "survey" if as_json else ""
    _leave(lambda: run_survey(job, out, use, as_json=as_json), document)


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

    use = _use(without_record, as_of)
    _leave(lambda: run_why(job, path, use, as_json=as_json), "why" if as_json else "")


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

    use, document = _use(without_record, as_of), "forecast" if as_json else ""
    _leave(lambda: run_forecast(job, path, use, everything=everything, as_json=as_json), document)


@app.command(short_help="Write down what was read, cut or done.", help=help_texts.RECORD)
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
    _leave(lambda: run_record(job, words or [], options, as_json=as_json), document)


@app.command(short_help="What follows from what was read and cut.", help=help_texts.RESOLVE)
def resolve(
    job: Job,
    accept: Annotated[
        bool, typer.Option("--accept", help="Say yes: from now on only what comes after is told.")
    ] = False,
    fewest: Annotated[
        bool, typer.Option("--fewest", help="Change as few pieces as can be, every fit kept.")
    ] = False,
    as_json: AsJson = False,
) -> None:
    """Show what stays, what changes and why, and what is impossible now with its remedies."""
    from casewright.cli.resolve import run_resolve

    document = "resolve" if as_json else ""
    _leave(lambda: run_resolve(job, accepts=accept, fewest=fewest, as_json=as_json), document)


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

    _leave(lambda: run_changed(job, since, as_json=as_json), "changed" if as_json else "")


def main(arguments: list[str] | None = None) -> None:
    """Run a command and leave with its exit code; no traceback for anything a person can do."""
    app(args=arguments)


def _use(without_record: bool, as_of: str | None) -> Use | None:
    """Which state of the record is asked for; None: as it is now."""
    if not without_record and as_of is None:
        return None
    from casewright.job.recorded import Use

    return Use(without_record, as_of)


def _leave(run: Callable[[], int], document: str = "") -> NoReturn:
    """Run a command and leave.

    Parameters
    ----------
    document
        Name of the JSON document that was asked for; it then tells errors too.
    """
    raise typer.Exit(_guarded(run, document))


def _guarded(run: Callable[[], int], document: str) -> int:
    from casewright.errors import CasewrightError

    try:
        return run()
    except CasewrightError as error:
        _tell(error, document)
        return BAD_INPUT
    except BrokenPipeError:
        _silence(sys.stdout)
        return CLEAN
    except OSError as error:
        where = f": {error.filename}" if error.filename else ""
        print(f"{error.strerror or error}{where}", file=sys.stderr)
        return BAD_INPUT
    except KeyboardInterrupt:
        print("stopped", file=sys.stderr)
        return STOPPED
    except Exception as error:
        return _defect(error)


def _tell(error: CasewrightError, document: str) -> None:
    print(error, file=sys.stderr)
    if document:
        from casewright.cli.printing import print_json
        from casewright.job.documents import errors_document

        print_json(errors_document(document, error))


def _silence(stream: TextIO) -> None:
    """Point a broken pipe to nowhere, so that closing it at the end cannot fail again."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _defect(error: Exception) -> int:
    """Say that the program is wrong, not the person; where it happened goes on request."""
    print(
        f"Casewright itself failed here, your file is not to blame: {type(error).__name__}: "
        f"{error}\nNothing was written. Please report it with your job file; "
        "CASEWRIGHT_TRACE=1 shows where.",
        file=sys.stderr,
    )
    if os.environ.get("CASEWRIGHT_TRACE"):
        import traceback

        traceback.print_exception(error)
    return FAILED_PROOF


if __name__ == "__main__":
    main()
