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
def check(job: Job, as_json: AsJson = False) -> None:
    """Say what is wrong, open or risky in a job, and whether its parts go together."""
    from casewright.cli.commands import run_check

    _leave(lambda: run_check(job, as_json=as_json), "check" if as_json else "")


@app.command(short_help="Every piece and the size to cut it to.", help=help_texts.PARTS)
def parts(job: Job, as_json: AsJson = False) -> None:
    """List every piece with the size to cut it to; with --json its holes and cuts as well."""
    from casewright.cli.commands import run_parts

    _leave(lambda: run_parts(job, as_json=as_json), "parts" if as_json else "")


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
    as_json: AsJson = False,
) -> None:
    """Plan the sheets and boards: what to buy, and each cut in order with its setting."""
    from casewright.cli.cutting import CutOptions, run_cut

    options = CutOptions(seconds, work, stages, last, done)
    _leave(lambda: run_cut(job, problem, options, as_json=as_json), "cut" if as_json else "")


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
) -> None:
    """Make the shop packet: packet.pdf, and the parts, buy list and hardware as CSV."""
    from casewright.cli.making import run_packet

    _leave(lambda: run_packet(job, out))


@app.command(short_help="Why a number is what it is.", help=help_texts.WHY)
def why(
    job: Job,
    path: Annotated[
        str, typer.Argument(metavar="PATH", help="A number, such as sink.door_left.width.")
    ] = "",
    as_json: AsJson = False,
) -> None:
    """Say why a number is what it is: its formula, and where each part of it comes from."""
    from casewright.cli.commands import run_why

    _leave(lambda: run_why(job, path, as_json=as_json), "why" if as_json else "")


def main(arguments: list[str] | None = None) -> None:
    """Run a command and leave with its exit code; no traceback for anything a person can do."""
    app(args=arguments)


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
