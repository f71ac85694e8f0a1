"""The command `serve`: the pages of a job, until stopped."""

from __future__ import annotations

from pathlib import Path

from casewright.cli.exits import CLEAN
from casewright.web.serving import serve

__all__ = ["run_serve"]


def run_serve(job: Path, port: int, *, network: bool) -> int:
    """`serve`: to this machine alone, or to the home network."""

    def tell(line: str) -> None:
        print(line, flush=True)

    serve(job, port, network=network, tell=tell, building=lambda: tell("Building the page once …"))
    return CLEAN
