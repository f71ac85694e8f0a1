"""Every dependency has a reason, and every pin fits what is asked for."""

from __future__ import annotations

import json
import re
from collections import Counter

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name
from packaging.version import Version
from tests.fences.source_tree import ROOT, settings

PINNED = re.compile(r"^([\w.-]+)==(\S+)", re.MULTILINE)


def _asked_for(kind: str) -> list[Requirement]:
    project = settings()["project"]
    extra = project["optional-dependencies"]["dev"] if kind == "dev" else []
    return [Requirement(text) for text in [*project["dependencies"], *extra]]


def _pins(kind: str) -> dict[str, Version]:
    text = (ROOT / "requirements" / f"{kind}.txt").read_text("utf-8")
    return {canonicalize_name(name): Version(version) for name, version in PINNED.findall(text)}


def _debian_packages() -> set[str]:
    script = (ROOT / ".ci" / "run").read_text("utf-8")
    named = set(re.findall(r"\bneed ([a-z][\w-]*) ", script))
    return {name for name in named if not name.startswith("python3")}


def _page_packages() -> set[str]:
    text = (ROOT / "src/casewright/web/page/package.json").read_text("utf-8")
    asked = json.loads(text)
    named = {*asked["dependencies"], *asked["devDependencies"]}
    return {name for name in named if not name.startswith("@types/")}


def test_every_dependency_has_one_reason_and_every_reason_a_dependency() -> None:
    """docs/dependencies.md and what is installed name the same things."""
    text = (ROOT / "docs" / "dependencies.md").read_text("utf-8")
    explained = Counter(re.findall(r"^### (\S+)$", text, re.MULTILINE))
    used: set[str] = {canonicalize_name(asked.name) for asked in _asked_for("dev")}
    used |= {*_pins("installer"), *_pins("pins"), *_pins("node"), *_debian_packages()}
    used |= _page_packages()
    assert explained == Counter(used)


@pytest.mark.parametrize("kind", ["run", "dev"])
def test_pins_are_what_the_project_asks_for(kind: str) -> None:
    """After a change in pyproject.toml, `./dev pin` has been run."""
    pins = _pins(kind)
    stale = [
        str(asked)
        for asked in _asked_for(kind)
        if not asked.specifier.contains(pins.get(canonicalize_name(asked.name), Version("0")))
    ]
    assert not stale, f"run ./dev pin: {stale}"


def test_development_runs_on_the_same_versions_as_the_user() -> None:
    """What is tested is what is shipped."""
    assert _pins("run").items() <= _pins("dev").items()


@pytest.mark.parametrize("kind", ["installer", "pins", "node", "run", "dev"])
def test_every_pin_is_checked_by_its_hash_and_names_no_address(kind: str) -> None:
    """What is installed is what was published, wherever it is fetched from."""
    text = (ROOT / "requirements" / f"{kind}.txt").read_text("utf-8")
    blocks = re.split(r"^(?=[\w.-]+==)", text, flags=re.MULTILINE)
    assert len(blocks) > 1
    assert not [block for block in blocks[1:] if "--hash=sha256:" not in block]
    assert "://" not in text
    assert not re.search(r"^\s*--(?!hash)", text, re.MULTILINE)


def test_what_is_asked_for_is_used() -> None:
    """A library that nothing imports is let go."""
    tools = {"mypy", "ruff", "import-linter", "pytest", "pytest-xdist"}
    renamed = {
        "fontpkg-ibm-plex-sans-condensed": "fontpkg_ibm_plex_sans_condensed",
        "pillow": "PIL",
        "zxing-cpp": "zxingcpp",
    }
    folders = ("src", "tests", "benchmarks")
    text = "\n".join(
        path.read_text("utf-8") for folder in folders for path in (ROOT / folder).rglob("*.py")
    )
    names = {asked.name for asked in _asked_for("dev")} - tools
    typed = {name for name in names if re.fullmatch(r"types-.*|.*-stubs", name)}
    idle = [name for name in names - typed if renamed.get(name, name) not in _imported(text)]
    assert not idle, ", ".join(sorted(idle))


def _imported(text: str) -> set[str]:
    return set(re.findall(r"^\s*(?:from|import) (\w+)", text, re.MULTILINE)) | set(
        re.findall(r"fontpkg_\w+", text)
    )
