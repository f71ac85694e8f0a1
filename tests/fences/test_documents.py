"""What the documents say is so."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

from tests.fences.source_tree import ROOT, SOURCE, floors, settings

LINK = re.compile(r"\[[^\]]+\]\(([^)#]+)(?:#[^)]*)?\)")
ROW = re.compile(r"^\| (\d+) \| `(\w+)` \| (\*planned\*)?", re.MULTILINE)


def _documents() -> list[Path]:
    return [ROOT / "README.md", *sorted((ROOT / "docs").rglob("*.md"))]


def _drawn() -> list[tuple[str, str, str]]:
    """Floor, package and whether it is planned, from the table of the architecture."""
    return ROW.findall((ROOT / "docs" / "architecture.md").read_text("utf-8"))


def test_every_link_leads_to_a_file() -> None:
    """A reader who follows a link inside the project arrives."""
    lost = [
        f"{document.relative_to(ROOT)}: {target}"
        for document in _documents()
        for target in LINK.findall(document.read_text("utf-8"))
        if "://" not in target and not (document.parent / target).exists()
    ]
    assert not lost, "\n".join(lost)


def test_every_document_is_led_to_from_the_readme() -> None:
    """Nothing is written that a newcomer cannot find."""
    reached, queue = set[Path](), [ROOT / "README.md"]
    while queue:
        document = queue.pop()
        if document in reached:
            continue
        reached.add(document)
        targets = LINK.findall(document.read_text("utf-8"))
        paths = [(document.parent / target).resolve() for target in targets]
        queue.extend(path for path in paths if path.suffix == ".md" and path.exists())
    assert reached == set(_documents())


def test_every_file_that_a_document_names_is_there() -> None:
    """A fence or a folder that is named in the text exists."""
    named = re.compile(r"`((?:tests|docs|requirements|src|examples)/[\w./-]+)`")
    gone = [
        f"{document.relative_to(ROOT)}: {path}"
        for document in _documents()
        for path in named.findall(document.read_text("utf-8"))
        if not (ROOT / path).exists()
    ]
    assert not gone, "\n".join(gone)


def test_the_house_stands_as_it_is_drawn() -> None:
    """The table in the documents, the import contract and the folders name the same packages."""
    packages = [package for _, package, _ in _drawn()]
    assert sorted(packages) == sorted(package for floor in floors() for package in floor)
    built = {path.parent.name for path in SOURCE.glob("casewright/*/__init__.py")}
    assert {package for _, package, planned in _drawn() if not planned} == built


def test_the_floors_are_stacked_as_they_are_drawn() -> None:
    """The layers of the contract have the order of the table; a floor may have steps."""
    floor_of = {package: int(number) for number, package, _ in _drawn()}
    layers = [sorted({floor_of[package] for package in layer}) for layer in floors()]
    assert all(len(layer) == 1 for layer in layers)
    assert layers == sorted(layers)
    assert {layer[0] for layer in layers} == set(range(len(set(floor_of.values()))))


def test_only_planned_packages_stand_in_brackets() -> None:
    """Once a package is built, the contract insists on it."""
    layers = settings()["tool"]["importlinter"]["contracts"][0]["layers"]
    optional = {name for layer in layers for name in re.findall(r"\((\w+)\)", layer)}
    assert optional == {package for _, package, planned in _drawn() if planned}


def test_the_commands_of_the_readme_are_commands_of_dev() -> None:
    """What the README tells a newcomer to type is there."""
    told = set(re.findall(r"\./dev (\w+)", (ROOT / "README.md").read_text("utf-8")))
    shown = subprocess.run([ROOT / "dev", "help"], capture_output=True, check=True, text=True)  # noqa: S603
    known = set(re.findall(r"^  (\w+) ", shown.stdout, re.MULTILINE)) | {"help"}
    assert {"demo", "test"} <= told <= known
