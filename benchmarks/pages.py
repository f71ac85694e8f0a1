"""The pages: from a changed number to the wall drawn anew, and the first page.

Run with `python benchmarks/pages.py`; it needs Debian's chromium. A room of 40 cases in four runs
is served by a process of its own, as `casewright serve` does, and a real browser changes numbers
on the drawn wall. Each row stands beside its budget, and beside the same request for a file that
needs no work.
"""

from __future__ import annotations

import json
import shutil
import statistics
import subprocess
import sys
import tempfile
import threading
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

CASES, RUNS, EDITS = 40, 4, 12
REDRAW, REST, FIRST, BYTES = 0.150, 1.0, 1.0, 300_000
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync",
    "--disable-background-networking", "--disable-component-update",
]  # fmt: skip
WATCH = """
(path) => new Promise((done) => {
  const wall = document.querySelector('.sheet');
  const begun = performance.now();
  const seen = new MutationObserver(() => {
    const number = wall.querySelector(`g.dimension[data-path="${path}"]`);
    if (number === null) return;
    seen.disconnect();
    requestAnimationFrame(() => done(performance.now() - begun));
  });
  seen.observe(wall, { childList: true, subtree: true });
  document.querySelector('.why form').requestSubmit();
})
"""


def job_text() -> str:
    """Four runs of ten base cases each, no two of one size."""
    lines = ['format = 1\nunit = "in"\nname = "Benchmark room"\n']
    each = CASES // RUNS
    for number in range(CASES):
        width = f"{18 + number % 7} {number % 31 + 1}/32"
        kind = "applied frame" if number % 2 else "slab"
        lines.append(f'[case.c{number}]\nkind = "base"\nwidth = "{width}"\nfront = "{kind}"\n')
    for run in range(RUNS):
        cases = ", ".join(f'"c{run * each + n}"' for n in range(each))
        lines.append(f"[run.r{run}]\ncases = [{cases}]\n")
    return "\n".join(lines)


@contextmanager
def served(job: Path) -> Iterator[str]:
    """Where a process serves the job."""
    program = [sys.executable, "-m", "casewright.cli.main", "serve", str(job), "--port", "0"]
    process = subprocess.Popen(program, stdout=subprocess.PIPE, text=True)
    try:
        address = ""
        assert process.stdout is not None
        for line in process.stdout:
            if line.startswith("Here: "):
                address = line.removeprefix("Here: ").strip()
                break
        yield address.rstrip("/")
    finally:
        process.terminate()
        process.wait(10)


class Steps:
    """When each version was checked and its sheets counted, as the news tell it."""

    def __init__(self, address: str) -> None:
        self.checked: dict[int, float] = {}
        self.counted: dict[int, float] = {}
        self._stream = urllib.request.urlopen(f"{address}/api/events")
        threading.Thread(target=self._listen, daemon=True).start()

    def _listen(self) -> None:
        for line in self._stream:
            if line.startswith(b"data: {") and b"version" in line:
                told, now = json.loads(line[6:]), time.perf_counter()
                self.checked.setdefault(told["checked"], now)
                self.counted.setdefault(told["counted"], now)

    def wait(self, times: dict[int, float], version: int) -> float:
        """When a version or a newer one had come so far."""
        while not any(each >= version for each in times):
            time.sleep(0.005)
        return min(when for each, when in times.items() if each >= version)


def edits(page: Page, steps: Steps, address: str) -> tuple[list[float], list[float], list[float]]:
    """Seconds to the wall drawn anew, to parts and findings, to sheets counted."""
    drawn, checked, counted = [], [], []
    for number in range(EDITS):
        path = f"c{number % 10}.overall_width"
        page.locator(f'g.dimension[data-path="{path}"]').first.locator(".field").click()
        page.locator(".why input").fill(f"{20 + number} 1/4")
        begun = time.perf_counter()
        drawn.append(page.evaluate(WATCH, path) / 1000)
        version = json.load(urllib.request.urlopen(f"{address}/api/job"))["steps"]["version"]
        checked.append(steps.wait(steps.checked, version) - begun)
        counted.append(steps.wait(steps.counted, version) - begun)
    return drawn, checked, counted


def first_page(page: Page, address: str) -> tuple[float, int]:
    """Seconds until the first wall is drawn, and bytes sent for it."""
    sizes: list[int] = []
    page.on("response", lambda r: sizes.append(int(r.headers.get("content-length", "0"))))
    begun = time.perf_counter()
    page.goto(address)
    page.locator(".sheet svg").first.wait_for()
    return time.perf_counter() - begun, sum(sizes)


def row(what: str, seconds: float, budget: float, peer: float) -> None:
    """One line of the table."""
    print(f"{what:44} {seconds:8.3f} {budget:8.3f} {seconds / budget:7.2f} {seconds / peer:8.1f}")


def main() -> None:
    """Print the table."""
    where = shutil.which("chromium")
    assert where is not None, "needs Debian's chromium"
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as play:
        job = Path(folder) / "room.toml"
        job.write_text(job_text(), "utf-8")
        with served(job) as address:
            browser = play.chromium.launch(executable_path=where, args=FLAGS)
            json.load(urllib.request.urlopen(f"{address}/api/job"))
            page = browser.new_page()
            opened, size = first_page(page, address)
            peers = []
            for _ in range(20):
                begun = time.perf_counter()
                urllib.request.urlopen(f"{address}/favicon.svg").read()
                peers.append(time.perf_counter() - begun)
            peer = statistics.median(peers)
            steps = Steps(address)
            drawn, checked, counted = edits(page, steps, address)
            browser.close()
    print(f"{CASES} cases in {RUNS} runs, {EDITS} edits; peer: a file without work {peer:.4f} s")
    print(f"{'what':44} {'s':>8} {'budget':>8} {'ratio':>7} {'to peer':>8}")
    row("changed number to wall drawn anew, median", statistics.median(drawn), REDRAW, peer)
    row("changed number to wall drawn anew, worst", max(drawn), REDRAW, peer)
    row("to parts and findings, median", statistics.median(checked), REST, peer)
    row("to sheets counted, median", statistics.median(counted), REST, peer)
    row("first page until its first wall is drawn", opened, FIRST, peer)
    print(f"first page: {size / 1000:.0f} KB of {BYTES // 1000} KB")


if __name__ == "__main__":
    main()
