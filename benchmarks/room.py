"""A whole room, from its job file to the proven model, and on to the printed packet.

Run with `python benchmarks/room.py`. Every row stands beside a bound or a peer timed in the same
run: reading beside a bare TOML parse of the same file, building beside the same number of sums on
bare fractions. Each case has sizes of its own, so that nothing can be worked out once for many.
"""

from __future__ import annotations

import argparse
import gc
import os
import platform
import subprocess
import sys
import tempfile
import time
import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import partial
from pathlib import Path
from typing import TypeVar

import tomlkit
from memory import Watch, peak_megabytes

from casewright.casework.proof.prove import GRID
from casewright.casework.verification import verify
from casewright.checks import check
from casewright.dims import chances, slack_sizes
from casewright.job import positions, syntax
from casewright.job.collector import collector_at_rest
from casewright.job.load import load_job
from casewright.job.packets import draw_packet, packet_files, plan_purchases
from casewright.job.worked import WorkedJob, work_out
from casewright.room import sampling
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import JobSpec

CASES = 40
GROWTH = (10, 40, 100, 400)
ROUNDS = 5
KINDS = (
    'kind = "wall"\nheight = {height}\nwidth = {width}\n',
    'kind = "base"\nwidth = {width}\ntoe = "plinth"\n',
    'kind = "wall"\nheight = {height}\nwidth = {width}\njoint = "dado"\n',
    'kind = "base"\nwidth = {width}\nfront = "applied frame"\n',
)
PACKET_TARGET, HELP_TARGET, MODEL_TARGET, MEMORY_TARGET = 10.0, 0.3, 0.3, 500

Result = TypeVar("Result")


@dataclass(frozen=True, slots=True)
class Timing:
    """First and best time of several rounds [s]."""

    cold: float
    warm: float


def job_text(cases: int) -> str:
    """A room of cases of four kinds, no two of one size."""
    head = 'format = 1\nunit = "in"\nname = "Benchmark room"\n'
    tables = [
        f"[case.case_{number}]\n"
        + KINDS[number % len(KINDS)].format(
            height=f'"{30 + number % 10} {number % 15 + 1}/16"',
            width=f'"{24 + number // 32 % 12} {number % 31 + 1}/32"',
        )
        for number in range(cases)
    ]
    return "\n".join([head, *tables])


def timed(work: Callable[[], Result], rounds: int = ROUNDS) -> tuple[Timing, Result]:
    """How long the work takes, and what comes of it; nothing of an earlier round is kept."""
    seconds = []
    results: list[Result] = []
    for _ in range(rounds):
        results.clear()
        forget()
        gc.collect()
        with collector_at_rest():  # as every command works
            start = time.perf_counter()
            results.append(work())
            seconds.append(time.perf_counter() - start)
    return Timing(seconds[0], min(seconds)), results[0]


def forget() -> None:
    """Drop the slack, chances and texts that earlier rounds left: a command begins without any."""
    slack_sizes.size_of.cache_clear()
    chances._chance.cache_clear()  # noqa: SLF001 - nothing else has it
    sampling._DRAWN.clear()  # noqa: SLF001 - nothing else has it
    positions.scan.cache_clear()
    syntax._data.cache_clear()  # noqa: SLF001 - nothing else has it


def model(file: Path) -> WorkedJob:
    """From the file to the proven model."""
    return work_out(load_job(file).spec)


def prove(room: Room) -> None:
    """Prove every case and replay its assembly."""
    for case in room.cases:
        verify(case, hardware=room.spec.hardware, grid=GRID)


def bare_sums(nodes: int) -> Fraction:
    """As many sums on bare fractions as the model has named numbers."""
    third, total = Fraction(127, 5), Fraction(0)
    for number in range(nodes):
        total = third * number / 32 - Fraction(number, 16)
    return total


def row(what: str, took: Timing, peer: str, against: float) -> None:
    """One line of the table."""
    ratio = took.warm / against
    print(f"{what:<34}{took.cold:>8.3f}{took.warm:>8.3f}{ratio:>8.2f}  {peer}")


def report_model(file: Path) -> WorkedJob:
    """From the file to the proven model, whole and step by step."""
    whole, worked = timed(lambda: model(file))
    spec: JobSpec = worked.room.spec
    nodes = len(worked.room.chain.nodes)
    text = file.read_text()
    peer, _ = timed(lambda: tomlkit.parse(text))
    bare, _ = timed(lambda: tomllib.loads(text))
    sums, _ = timed(lambda: bare_sums(nodes))
    room = worked.room
    print(f"{CASES} cases, {len(room.parts)} parts, {nodes:,} named numbers")
    print(f"{'what':<34}{'cold s':>8}{'warm s':>8}{'ratio':>8}  against")
    row("file to proven model", whole, f"the target, {MODEL_TARGET} s", MODEL_TARGET)
    load, _ = timed(lambda: load_job(file))
    row("  read and understand the file", load, "tomlkit's parse of it", peer.warm)
    built, _ = timed(lambda: build(spec))
    row("  build", built, "as many bare sums", sums.warm)
    proven, _ = timed(lambda: prove(room))
    row("  prove, replay the assembly", proven, "build", built.warm)
    checked, _ = timed(lambda: check(room))
    row("  check", checked, "build", built.warm)
    row("peer: tomlkit's parse", peer, "tomllib's parse", bare.warm)
    return worked


def report_packet(worked: WorkedJob) -> None:
    """The packet, its cuts planned while its cards are drawn."""
    plan, _ = timed(lambda: plan_purchases(worked), 1)
    row("  plan the cuts, alone", plan, "the target", PACKET_TARGET)
    before = processor_seconds()
    with Watch() as memory:
        draw, drawn = timed(lambda: draw_packet(worked), 1)
        print_, files = timed(lambda: packet_files(drawn), 1)
    row("  draw, the cuts planned meanwhile", draw, "the target", PACKET_TARGET)
    row("  print", print_, "the target", PACKET_TARGET)
    whole = Timing(draw.cold + print_.cold, draw.warm + print_.warm)
    row("whole packet", whole, f"the target, {PACKET_TARGET:.0f} s", PACKET_TARGET)
    worked_for = processor_seconds() - before
    print(f"{'  work of all its processes':<34}{worked_for:>8.3f} s on {os.cpu_count()} cores")
    size = sum(len(data) for data in files.values()) / 1e6
    print(f"{'packet':<34}{size:>8.1f} MB in {len(files)} files")
    print(f"{'peak memory, all processes':<34}{memory.peak:>8.0f} MB of {MEMORY_TARGET} MB")


def run_help() -> None:
    """The help text in a process of its own."""
    command = (sys.executable, "-m", "casewright.cli.main", "--help")
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)


def report_help() -> None:
    """Start of the command line, beside the start of bare Python."""
    bare, _ = timed(lambda: subprocess.run((sys.executable, "-c", "pass"), check=True))
    took, _ = timed(run_help)
    row("casewright --help", took, f"the target, {HELP_TARGET} s", HELP_TARGET)
    row("peer: python -c pass", bare, "casewright --help", took.warm)


def report_growth(folder: Path) -> None:
    """Time a case of rooms of growing size."""
    print(f"\n{'cases':>8}{'parts':>8}{'warm s':>10}{'ms a case':>12}{'growth':>9}")
    first = 0.0
    for cases in GROWTH:
        file = folder / f"room_{cases}.toml"
        file.write_text(job_text(cases))
        took, worked = timed(partial(model, file), 3)
        each = took.warm / cases
        first = first or each
        parts = len(worked.room.parts)
        print(f"{cases:>8}{parts:>8}{took.warm:>10.3f}{each * 1000:>12.2f}{each / first:>9.2f}")
    print("growth: time a case against that of the smallest room; 1 is linear")


def processor_seconds() -> float:
    """What this process and all it started have worked [s]."""
    return sum(os.times()[:4])


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--no-packet", action="store_true", help="leave the packet out")
    options = parser.parse_args()
    print(f"Python {platform.python_version()}, {platform.machine()}")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        file = folder / "room.toml"
        file.write_text(job_text(CASES))
        worked = report_model(file)
        if worked.failures:
            raise SystemExit("\n".join(str(failure) for _, failure in worked.failures))
        report_help()
        if options.no_packet:
            print(f"{'peak memory':<34}{peak_megabytes():>8.0f} MB of {MEMORY_TARGET} MB")
        else:
            report_packet(worked)
        report_growth(folder)


if __name__ == "__main__":
    main()
