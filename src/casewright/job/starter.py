"""Job files to start from: a short one to change, and the examples."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

from casewright.dims import Unit
from casewright.outputs.files import OutputError

__all__ = ["DEMO_FILE", "demo_text", "starter_text", "write_new"]

DEMO_FILE = "kitchen.toml"
"""Name of the demo job."""

_STARTER = """\
# A job file for Casewright. Text behind # is for you; change everything else to your own.
# A bare number is in the unit below; {foreign} can be written out: "{foreign_length}".
# Fractions stand in quotes: "11 7/8".

format = 1
unit = "{unit}"
name = "{name}"

# One section for each case. The name behind the dot is permanent: numbers and readings hang on
# it. kind is "wall", "base", "tall" or "bookcase"; a base case may have drawers = 3, or over its
# doors a top_drawer = {drawer}, or sink = true. What you leave out has a default, and
#     casewright why {file} upper.width
# says which, and who decided it.

[case.upper]
kind = "wall"
width = "{width}"
height = "{height}"
shelves = 2

# When the sheets have come, measure their thickness with a calliper and write it here; parts that
# hang on it wait until then.
#
# [stock.plywood]
# measured = "{measured}"

# Several cases along a wall: give the readings of its width, low, middle and high. Cases without
# a width of their own share what is left.
#
# [run.window_wall]
# cases = ["upper"]
# wall = [{wall}]

# Then:  casewright check {file}     what is open, what is risky, does it go together
#        casewright packet {file}    the pages for the shop
"""

_WORDS: dict[Unit, dict[str, str]] = {
    "in": {
        "foreign": "millimetres", "foreign_length": "302 mm", "width": "33", "height": "30",
        "measured": "0.703", "drawer": "6", "wall": '"102 1/4", "102 3/8", "102 1/2"',
    },
    "mm": {
        "foreign": "inches", "foreign_length": "11 7/8 in", "width": "800", "height": "760",
        "measured": "17.8", "drawer": "150", "wall": '"2598", "2601", "2604"',
    },
}  # fmt: skip


def starter_text(file: str, unit: Unit) -> str:
    """A short job file with notes.

    Parameters
    ----------
    file
        Name the notes call it by.
    """
    name = Path(file).stem.replace("_", " ").replace("-", " ").replace('"', "").replace("\\", "")
    return _STARTER.format(file=file, unit=unit, name=name or "job", **_WORDS[unit])


def write_new(path: Path, text: str) -> None:
    """Write a new file; an existing one is never touched.

    Raises
    ------
    OutputError
        When there is such a file already, or it cannot be written.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("x", encoding="utf-8", newline="\n") as stream:
            stream.write(text)
    except FileExistsError:
        if path.is_dir():
            want = f"choose a name in it, such as {path / 'kitchen.toml'}"
            raise OutputError(str(path), "it is a folder", want) from None
        problem, want = "there is such a file already", "choose another name"
        raise OutputError(str(path), problem, want) from None
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise OutputError(str(path), reason, "choose another place") from None


def demo_text() -> str:
    """The demo job as written."""
    return (files("casewright.job") / "examples" / DEMO_FILE).read_text(encoding="utf-8")
