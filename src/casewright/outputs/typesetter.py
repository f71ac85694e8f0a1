"""Running the typesetter: data in, PDF out, here or in a process of its own.

The typesetter keeps what it has laid out for the rest of its process, tens of megabytes a
hundred pages; a process that prints again and again lets a child do it and gets the memory back.
"""

from __future__ import annotations

import subprocess
import sys
from functools import cache
from importlib.resources import files

import typst

__all__ = ["FontError", "PrintError", "typeset", "typeset_apart"]

_FONT_PACKAGE = "fontpkg_ibm_plex_sans_condensed"
_NO_FONTS = f"no fonts in {_FONT_PACKAGE}: install the project's requirements again"


class PrintError(RuntimeError):
    """The typesetter complained: a defect of the program."""


class FontError(RuntimeError):
    """The typeface that all pages are set in is not installed."""


@cache
def _fonts() -> typst.Fonts:
    """The one typeface, and no font of the machine: a print depends on no place."""
    try:
        folder = files(_FONT_PACKAGE) / "files"
    except ModuleNotFoundError as error:
        raise FontError(_NO_FONTS) from error
    fonts = typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(folder)]
    )
    if not fonts.families():
        raise FontError(_NO_FONTS)
    return fonts


@cache
def _template() -> bytes:
    return (files("casewright.outputs") / "shop.typ").read_bytes()


def typeset(data: str) -> bytes:
    """Pages as PDF from the data of a document.

    Raises
    ------
    PrintError
        When the typesetter fails or warns of anything.
    FontError
        When the typeface is missing.
    """
    try:
        made, warnings = typst.compile_with_warnings(
            _template(), font_paths=_fonts(), format="pdf", sys_inputs={"data": data}
        )
    except typst.TypstError as error:
        raise PrintError(error.message) from error
    if warnings:
        raise PrintError("; ".join(warning.message for warning in warnings))
    return made


def typeset_apart(data: str) -> bytes:
    """The same bytes, made by a process of its own.

    Raises
    ------
    PrintError
        When that process fails, for whatever reason.
    """
    command = [sys.executable, "-P", "-m", "casewright.outputs.typesetter"]
    done = subprocess.run(  # noqa: S603 (our own interpreter and module, no words of a job)
        command, input=data.encode(), capture_output=True, check=False
    )
    if done.returncode:
        raise PrintError(done.stderr.decode(errors="replace").strip())
    return done.stdout


if __name__ == "__main__":
    try:
        sys.stdout.buffer.write(typeset(sys.stdin.buffer.read().decode()))
    except (PrintError, FontError) as failure:
        sys.exit(f"{type(failure).__name__}: {failure}")
