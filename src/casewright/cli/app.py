"""The command line's program, the words that commands share, and the way out for every error."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, NoReturn, TextIO

import typer
from typer.core import TyperCommand

from casewright.cli import help_texts
from casewright.cli.exits import BAD_INPUT, CLEAN, FAILED_PROOF, STOPPED

if TYPE_CHECKING:
    from casewright.errors import CasewrightError
    from casewright.job.recorded import Use

__all__ = ["AsJson", "AsOf", "Job", "SizesCommand", "WithoutRecord", "app", "leave", "use_of"]


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
WithoutRecord = Annotated[
    bool, typer.Option("--without-record", help="As if nothing had been read or cut yet.")
]
AsOf = Annotated[
    str | None,
    typer.Option(metavar="WHEN", help="With the record as it was: a date, or the id of an entry."),
]
AsJson = Annotated[bool, typer.Option("--json", help="Print a JSON document instead of text.")]

_UNDER_ZERO = re.compile(r"-\.?\d.*")


class SizesCommand(TyperCommand):
    """A command that sizes are written behind: one under zero is no option."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        """Refuse a size with a minus before it is taken for an option.

        Raises
        ------
        typer.BadParameter
            Which one, and what would be right.
        """
        for word in args:
            if _UNDER_ZERO.fullmatch(word):
                msg = f"{word} is under 0, and nothing reads so: write what was read."
                raise typer.BadParameter(msg)
        return super().parse_args(ctx, args)


def use_of(without_record: bool, as_of: str | None) -> Use | None:
    """Which state of the record is asked for; None: as it is now."""
    if not without_record and as_of is None:
        return None
    from casewright.job.recorded import Use

    return Use(without_record, as_of)


def leave(run: Callable[[], int], document: str = "") -> NoReturn:
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
