"""Twenty phones in one shop: entries at once, what others see of them, a server that is killed.

Run with `python benchmarks/phones.py`. A job of ten cases is served by a process of its own, as
`casewright serve` does. Each phone sends readings, one request each, as fast as it is answered.
Times stand beside a row put durably into a database of its own, one transaction each, in the same
run. Then the server is killed without a word while all send; what was acknowledged is looked for
in the record, everything is sent again to a new server, and each entry counted.
"""

from __future__ import annotations

import http.client
import json
import os
import signal
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from casewright.job.recorded import read_entries
from casewright.web.entries import id_of

PHONES, READINGS, CASES, KILLS = 20, 10, 10, 4
HEARD = 1.0
"""What one device enters, another shows within so long [s]."""


def job_text() -> str:
    """Base cases with drawers and doors, no two of one size."""
    lines = ['format = 1\nunit = "in"\nname = "Benchmark shop"\n']
    lines += [
        f'[case.c{number}]\nkind = "base"\nwidth = "{18 + number} 1/4"\n'
        for number in range(CASES)
    ]
    return "\n".join(lines)


@dataclass
class Server:
    """A server that can be killed."""

    process: subprocess.Popen[str]
    port: int

    def ask(self, path: str, body: object = None) -> Any:
        """What a request is answered, as data."""
        return json.loads(self.said(path, body))

    def said(self, path: str, body: object = None) -> bytes:
        """What one request on a connection of its own is answered."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        headers = {"content-type": "application/json", "x-casewright": "1"}
        method = "GET" if body is None else "POST"
        connection.request(method, path, json.dumps(body) if body else None, headers)
        answer = connection.getresponse()
        said = answer.read()
        connection.close()
        assert answer.status == 200, said
        return said

    def kill(self) -> None:
        """Without a word, and all that it started."""
        with suppress(ProcessLookupError):
            os.killpg(self.process.pid, signal.SIGKILL)
        self.process.wait()


@contextmanager
def served(job: Path) -> Iterator[Server]:
    """A process that serves the job."""
    program = [sys.executable, "-m", "casewright.cli.main", "serve", str(job), "--port", "0"]
    process = subprocess.Popen(program, stdout=subprocess.PIPE, text=True, start_new_session=True)
    assert process.stdout is not None
    line = next(line for line in process.stdout if line.startswith("Here: "))
    server = Server(process, int(line.strip().rstrip("/").rpartition(":")[2]))
    try:
        server.ask("/api/shop/now")
        yield server
    finally:
        server.kill()


@dataclass
class Sent:
    """What phones sent: seconds to each answer, ids that were acknowledged."""

    seconds: list[float] = field(default_factory=list)
    acknowledged: set[str] = field(default_factory=set)


def send_all(server: Server, entries: list[list[dict[str, Any]]], sent: Sent) -> None:
    """Every phone its entries, one after the other; a dead server ends it."""

    def phone(own: list[dict[str, Any]]) -> None:
        for entry in own:
            begun = time.perf_counter()
            try:
                (answer,) = server.ask("/api/entries", [entry])
            except (OSError, http.client.HTTPException, AssertionError):
                return
            sent.seconds.append(time.perf_counter() - begun)
            if answer["became"] in ("kept", "there"):
                sent.acknowledged.add(entry["id"])

    threads = [threading.Thread(target=phone, args=(own,)) for own in entries]
    for each in threads:
        each.start()
    for each in threads:
        each.join()


def readings(server: Server) -> list[list[dict[str, Any]]]:
    """For every phone lengths of parts of its own, as they are planned."""
    parts = server.ask("/api/shop")["parts"]
    found = [each for part in parts for each in part["readings"]]
    assert len(found) >= PHONES * READINGS
    return [
        [
            entry(number * READINGS + n, f"phone {number}", "reading", [each["path"], words(each)])
            for n, each in enumerate(found[number * READINGS : (number + 1) * READINGS])
        ]
        for number in range(PHONES)
    ]


def words(reading: dict[str, Any]) -> str:
    """What is planned, as it would be typed."""
    bits = (bit if isinstance(bit, str) else bit["text"] for bit in reading["planned"])
    return "".join(bits).replace("~", "").strip()


def entry(number: int, device: str, kind: str, said: list[str]) -> dict[str, Any]:
    """An entry as a phone sends it."""
    return {"id": f"{number:032x}", "device": device, "kind": kind, "words": said, "sure": True}


def notes(first: int) -> list[list[dict[str, Any]]]:
    """For every phone notes of its own."""
    return [
        [entry(first + 1000 * number + n, f"phone {number}", "note", [f"{first} {number} {n}"])
         for n in range(10)]
        for number in range(PHONES)
    ]  # fmt: skip


def heard(server: Server, count: int) -> list[float]:
    """Seconds from an entry sent by one device to another that has read the record anew."""
    connection = http.client.HTTPConnection("127.0.0.1", server.port, timeout=60)
    connection.request("GET", "/api/events")
    stream = connection.getresponse()
    seconds = []
    for number in range(count):
        before = server.ask("/api/shop/now")["entries"]
        begun = time.perf_counter()
        server.ask("/api/entries", [entry(time.time_ns(), "one", "note", [f"seen {number}"])])
        while not stream.readline().startswith(b"event: record"):
            pass
        assert server.ask("/api/shop/now")["entries"] == before + 1
        seconds.append(time.perf_counter() - begun)
    connection.close()
    return seconds


@contextmanager
def leafed(server: Server) -> Iterator[None]:
    """While two phones leaf through all cards, whose drawings are drawn by the same process."""
    book = server.ask("/api/shop")
    names = [figure["name"] for card in book["cards"] for figure in card["figures"]]
    stop = threading.Event()

    def leaf(own: list[str]) -> None:
        for name in own:
            if stop.is_set():
                return
            server.said(f"/api/shop/drawings/{name}")

    threads = [threading.Thread(target=leaf, args=(names[n::2],)) for n in range(2)]
    for each in threads:
        each.start()
    yield
    stop.set()
    for each in threads:
        each.join()


def rows(folder: Path, count: int) -> float:
    """Seconds to one row put durably into a database, the median."""
    with sqlite3.connect(folder / "peer.db", isolation_level=None) as base:
        base.execute("pragma journal_mode=wal")
        base.execute("pragma synchronous=full")
        base.execute("create table entries (id text primary key, said text)")
        seconds = []
        for number in range(count):
            begun = time.perf_counter()
            base.execute("insert into entries values (?, ?)", (f"{number:032x}", "x" * 200))
            seconds.append(time.perf_counter() - begun)
    base.close()
    return statistics.median(seconds)


def kill_after(server: Server, sent: Sent, count: int) -> None:
    """Kill it once so many were acknowledged, the others on their way."""
    while len(sent.acknowledged) < count:
        time.sleep(0.001)
    server.kill()


def killed(job: Path, number: int) -> tuple[int, int, int, int]:
    """Acknowledged when the server was killed, of them lost; sent in all, doubled or missing."""
    entries, sent = notes(10**6 * (number + 1)), Sent()
    with served(job) as server:
        stop = threading.Thread(target=kill_after, args=(server, sent, 10 + 40 * number))
        stop.start()
        send_all(server, entries, sent)
        stop.join()
    there = {each.id for each in read_entries(job)[0]}
    lost = sum(id_of(each, 0) not in there for each in sent.acknowledged)
    with served(job) as server:
        send_all(server, entries, Sent())
    ids = [each.id for each in read_entries(job)[0]]
    wanted = {id_of(each["id"], 0) for own in entries for each in own}
    wrong = len(ids) - len(set(ids)) + len(wanted - set(ids))
    return len(sent.acknowledged), lost, len(wanted), wrong


def main() -> None:
    """Print the tables."""
    with tempfile.TemporaryDirectory() as folder:
        job = Path(folder) / "shop.toml"
        job.write_text(job_text(), "utf-8")
        peer = rows(Path(folder), 200)
        sent = Sent()
        with served(job) as server:
            own = readings(server)
            begun = time.perf_counter()
            send_all(server, own, sent)
            took = time.perf_counter() - begun
            seen = heard(server, 30)
            with leafed(server):
                meanwhile = heard(server, 30)
        kept = [each for each in read_entries(job)[0] if each.kind == "reading"]
        print(f"{PHONES} phones, {READINGS} readings each; peer: a row on the disk {peer:.4f} s")
        there = len({each.id for each in kept})
        print(f"sent {PHONES * READINGS}, acknowledged {len(sent.acknowledged)}, there {there}")
        print(f"{'what':44} {'s':>8} {'budget':>8} {'ratio':>7} {'to peer':>8}")
        row("a reading to its answer, median", statistics.median(sent.seconds), 0.0, peer)
        row("a reading to its answer, worst", max(sent.seconds), 0.0, peer)
        row("all readings, for each", took / (PHONES * READINGS), 0.0, peer)
        row("an entry to another device, median", statistics.median(seen), HEARD, peer)
        row("an entry to another device, worst", max(seen), HEARD, peer)
        row("the same while drawings are drawn, median", statistics.median(meanwhile), HEARD, peer)
        row("the same while drawings are drawn, worst", max(meanwhile), HEARD, peer)
        print(
            "\nkilled while all send: acknowledged, of them lost; sent in all, doubled or missing"
        )
        for number in range(KILLS):
            print("{:8}: {:6} {:6} {:6} {:6}".format(number + 1, *killed(job, number)))


def row(what: str, seconds: float, budget: float, peer: float) -> None:
    """One line of the table; a budget of 0 is none."""
    against = f"{budget:8.3f} {seconds / budget:7.2f}" if budget else f"{'':8} {'':7}"
    print(f"{what:44} {seconds:8.3f} {against} {seconds / peer:8.1f}")


if __name__ == "__main__":
    main()
