"""Commands that make: `new`, `demo`, `packet`."""

from __future__ import annotations

import re
import sys
from pathlib import Path

from casewright.cli.commands import has_failed, load_and_work_out, tell_rescue
from casewright.cli.exits import CLEAN, FAILED_PROOF, OPEN
from casewright.cli.progress import working
from casewright.errors import CasewrightError
from casewright.job.editor_schema import schema_text
from casewright.job.fingerprint import printed_fingerprint
from casewright.job.load import load_job
from casewright.job.packets import draw_packet, packet_files
from casewright.job.printed import note_print
from casewright.job.recorded import Use
from casewright.job.starter import DEMO_FILE, demo_text, starter_text, write_new
from casewright.job.surveying import SURVEY_NAME
from casewright.job.worked import WorkedJob
from casewright.job.writer import this_writer
from casewright.outputs.files import check_folder, write_file, write_folder
from casewright.record import RecordError, alone

__all__ = ["AddressError", "run_demo", "run_new", "run_packet"]


_ADDRESS = re.compile(r"http://[a-z0-9.-]+(:[0-9]{1,5})?/?", re.IGNORECASE | re.ASCII)


class AddressError(CasewrightError):
    """What stands for an address is none."""


def run_new(file: Path, *, metric: bool, schema: Path | None) -> int:
    """`new`: a short job file with notes; `--schema`: what editors need to help."""
    write_new(file, starter_text(file.name, "mm" if metric else "in"))
    print(f"{file} written. Change it to your own, then: casewright check {file}")
    if schema is not None:
        write_file(schema, schema_text().encode())
        print(f"{schema} written, for editors that know JSON Schema.")
    return CLEAN


def run_demo(out: Path) -> int:
    """`demo`: the demo's job file and its packet, in one folder.

    Its open questions and findings are there on purpose: they do not count as a failure.
    """
    job = out / DEMO_FILE
    if job.exists():
        print(f"{job} is there already and is used as it is.", file=sys.stderr)
    else:
        write_new(job, demo_text())
    print(job)
    code = run_packet(job, out)
    return CLEAN if code == OPEN else code


def _note(job: Path, worked: WorkedJob) -> None:
    """Keep which packet was printed and from what; the packet is good without."""
    try:
        tell_rescue(note_print(load_job(job), printed_fingerprint(worked.room), this_writer()))
    except RecordError as error:
        print(f"The record does not know of this packet. {error}", file=sys.stderr)


def _check_address(pages: str) -> None:
    """Refuse what the code of a label cannot lead to; empty is good."""
    if pages and not _ADDRESS.fullmatch(pages):
        message = (
            f'--pages "{pages}": no address that pages are served at; write it as '
            "`casewright serve JOB --network` prints it: http://192.168.1.20:8417/"
        )
        raise AddressError(message)


def run_packet(
    job: Path,
    out: Path | None,
    use: Use | None = None,
    *,
    left_only: bool = False,
    pages: str = "",
) -> int:
    """`packet`: the whole packet into a folder, or nothing at all; or what is left to do."""
    folder = out or Path("out") / job.stem
    check_folder(folder)
    _check_address(pages)
    worked = load_and_work_out(job, use, reminds=True)
    if has_failed(worked, as_json=False):
        print("No packet was made: the parts do not go together.", file=sys.stderr)
        return FAILED_PROOF
    with working("planning the cuts and drawing"):
        drawn = draw_packet(worked, left_only=left_only, pages=pages)
    with working("printing"):
        files = packet_files(drawn)
    with alone(job.parent):
        write_folder(folder, files, lambda name: name == SURVEY_NAME)
    if use is None:
        _note(job, worked)
    for name in sorted(files, key=lambda name: (not name.endswith(".pdf"), name)):
        print(folder / name)
    purchases = drawn.purchases
    opened, found = len(purchases.questions), len(purchases.findings)
    if opened or found:
        print(f"{opened} open, {found} found: they stand on the cover.")
    return CLEAN if purchases.is_clean else OPEN
