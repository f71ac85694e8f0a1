"""The project speaks of the job and of itself, never of the place where it was written."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest
from tests.fences.source_tree import ROOT

# One letter of each stands in brackets, so that this list does not find itself.
PATHS = [r"/w[o]rk/", r"/t[m]p/", r"/r[o]ot/", r"/h[o]me/", r"/o[p]t/", r"file:/[/]"]
WORDS = [
    r"\bs[e]ssions?\b", r"\b(?:sub-?)?ag[e]nts?\b", r"\b[l]lms?\b", r"\bcha[t]bots?\b",
    r"\btr[a]nscripts?\b", r"\bvid[e]os?\b", r"\bi[s]sues? #?\d",
]  # fmt: skip
HOSTS = [
    r"\bpyp[i]\.",
    r"\bpythonh[o]sted\b",
    r"\bnpmj[s]\b",
    r"\bdeb[i]an\.org\b",
    r"\bmirr[o]r\.",
]
FORBIDDEN = re.compile("|".join(PATHS + WORDS + HOSTS), re.IGNORECASE)


def _tracked() -> list[Path]:
    git = shutil.which("git")
    if git is None or not (ROOT / ".git").exists():
        pytest.skip("not a checkout: git cannot tell which files are the project's")
    listing = subprocess.run(  # noqa: S603 - a fixed command
        [git, "ls-files", "-z"], cwd=ROOT, capture_output=True, check=True
    )
    names = listing.stdout.decode("utf-8").split("\0")
    # Which packages of others the page is built with is told in their own words.
    own = (name for name in names if name and not name.endswith("package-lock.json"))
    return [ROOT / name for name in own if (ROOT / name).is_file()]


def _text(path: Path) -> str:
    try:
        return path.read_text("utf-8")
    except UnicodeDecodeError:
        return ""


def test_no_tracked_text_names_the_place_it_was_written_at() -> None:
    """No machine's paths, no names of registries, no word of how the text came to be."""
    found = [
        f"{path.relative_to(ROOT)}:{number}: {match.group()}"
        for path in _tracked()
        for number, line in enumerate(_text(path).splitlines(), start=1)
        if (match := FORBIDDEN.search(line))
    ]
    assert not found, "\n".join(found)


@pytest.mark.parametrize("text", ["/w" + "ork/main", "this Sess" + "ion", "pyp" + "i.org"])
def test_the_fence_finds_what_it_forbids(text: str) -> None:
    """The list above is not blind."""
    assert FORBIDDEN.search(text)
