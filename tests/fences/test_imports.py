"""What a package may import, beyond the floors that the import contract checks."""

from __future__ import annotations

import sys
from collections.abc import Iterator

from tests.fences.source_tree import Module, imports, modules, up_to

SOLVERS = {"cutting", "planning"}
PLACE_AND_TIME = {
    "asyncio", "datetime", "getpass", "http", "locale", "multiprocessing", "platform", "secrets",
    "socket", "sqlite3", "ssl", "subprocess", "threading", "time", "urllib", "uuid", "zoneinfo",
}  # fmt: skip
# Processes of our own program help; they are given all they need and no place, and end with it.
PROCESSES = {
    ("casewright.outputs.apart", "subprocess"),
    ("casewright.outputs.process", "threading"),
}


def _of(packages: frozenset[str] | set[str]) -> Iterator[Module]:
    return (module for module in modules() if module.package in packages)


def test_up_to_casework_the_standard_library_is_enough() -> None:
    """The model of the wood depends on no other project, so that it outlives them."""
    strangers = [
        f"{module.where}:{line} imports {name}"
        for module in _of(up_to("casework"))
        for line, name in imports(module)
        if name.split(".")[0] not in sys.stdlib_module_names | {"casewright"}
    ]
    assert not strangers, "\n".join(strangers)


def test_solvers_know_no_wood() -> None:
    """A solver sees nothing of ours above the floor of geometry: anyone could use it."""
    known = up_to("geometry") | SOLVERS
    strangers = [
        f"{module.where}:{line} imports {name}"
        for module in _of(SOLVERS)
        for line, name in imports(module)
        if name.startswith("casewright.") and name.split(".")[1] not in known
    ]
    assert not strangers, "\n".join(strangers)


def test_below_the_use_cases_there_is_no_clock_and_no_network() -> None:
    """The same job gives the same packet anywhere and at any time."""
    strangers = [
        f"{module.where}:{line} imports {name}"
        for module in _of(up_to("packet") - {"record"})
        for line, name in imports(module)
        if name.split(".")[0] in PLACE_AND_TIME and (module.name, name) not in PROCESSES
    ]
    assert not strangers, "\n".join(strangers)


def test_the_fences_see_what_they_guard() -> None:
    """The packages named here are on a floor, so that a renamed one does not slip out."""
    assert {"dims", "geometry", "casework"} <= up_to("casework")
    assert up_to("packet") >= {"record"} | SOLVERS
    assert {module.package for module in modules()} >= {"dims", "geometry", "casework"}
