"""The tables of docs/benchmarks.md, printed anew.

Run with `python benchmarks/report.py sheets boards work`: each is run and its table put into the
page, with the version, the date and the machine. `--table FILE` takes a table that was printed
before by the one benchmark named.
"""

from __future__ import annotations

import argparse
import os
import platform
import re
import subprocess
import sys
from datetime import UTC, datetime
from importlib.metadata import version
from pathlib import Path

HERE = Path(__file__).resolve().parent
PAGE = HERE.parent / "docs" / "benchmarks.md"
COMMANDS = {
    "sheets": ["cutting.py", "--library"],
    "boards": ["boards.py"],
    "work": ["work.py"],
    "variants": ["variants.py"],
    "knapsacks": ["knapsacks.py"],
}


def printed(name: str) -> str:
    """What a benchmark prints."""
    script, *options = COMMANDS[name]
    command = [sys.executable, str(HERE / script), *options]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def put(page: str, name: str, table: str) -> str:
    """The page with one table in the place of the old one."""
    stamp = (
        f"casewright {version('casewright')}, {datetime.now(UTC):%Y-%m-%d}, Python "
        f"{platform.python_version()}, {platform.machine()}, {os.cpu_count()} cores"
    )
    text = f"<!-- {name} -->\n```\n{stamp}\n\n{table.strip()}\n```\n<!-- end -->"
    place = re.compile(rf"<!-- {name} -->\n.*?<!-- end -->", re.DOTALL)
    if not place.search(page):
        msg = f"{PAGE.name} has no place for {name}"
        raise SystemExit(msg)
    return place.sub(lambda _: text, page)


def main() -> None:
    """Run what is named and write the page."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("names", nargs="+", choices=sorted(COMMANDS))
    parser.add_argument("--table", type=Path, help="a table printed before")
    options = parser.parse_args()
    if options.table and len(options.names) > 1:
        parser.error("--table goes with one name")
    for name in options.names:
        table = options.table.read_text("utf-8") if options.table else printed(name)
        PAGE.write_text(put(PAGE.read_text("utf-8"), name, table), "utf-8")


if __name__ == "__main__":
    main()
