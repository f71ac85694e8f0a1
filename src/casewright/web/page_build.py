"""Building the page at the first start, and again when its sources have changed."""

from __future__ import annotations

import hashlib
import os
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

from casewright.record.folder_lock import alone
from casewright.web.node import PageBuildError, node_and_npm

__all__ = ["built_page_folder"]

_HERE = Path(__file__).parent
SOURCE, BUILT = _HERE / "page", _HERE / "built"
_STAMP = "sources.txt"
_NOT_SOURCES = {"node_modules", "openapi.json", "api.gen.ts"}


def built_page_folder(building: Callable[[], None] = lambda: None) -> Path:
    """The folder with the built page; in a checkout it is built when its sources are newer.

    Parameters
    ----------
    building
        Called before it is built, which takes some seconds.

    Raises
    ------
    PageBuildError
        When it must be built and cannot be.
    """
    if not SOURCE.is_dir():
        return BUILT
    stamp = _stamp()
    if _is_built(stamp):
        return BUILT
    building()
    with alone(SOURCE):
        if not _is_built(stamp):  # nor by another meanwhile
            _build()
            (BUILT / _STAMP).write_text(stamp, "utf-8")
    return BUILT


def _is_built(stamp: str) -> bool:
    kept = BUILT / _STAMP
    is_of_these = kept.is_file() and kept.read_text("utf-8") == stamp
    return is_of_these and (BUILT / "index.html").is_file()


def _sources() -> Iterator[Path]:
    for path in sorted(SOURCE.rglob("*")):
        inside = path.relative_to(SOURCE).parts
        if path.is_file() and not _NOT_SOURCES & set(inside):
            yield path


def _stamp() -> str:
    digest = hashlib.sha256()
    for path in _sources():
        digest.update(path.relative_to(SOURCE).as_posix().encode() + b"\0" + path.read_bytes())
    return digest.hexdigest()


def _build() -> None:
    node, npm = node_and_npm()
    environment = {**os.environ, "PATH": f"{Path(node).parent}{os.pathsep}{os.environ['PATH']}"}
    lock = (SOURCE / "package-lock.json").read_bytes()
    installed = SOURCE / "node_modules" / ".installed"
    want = hashlib.sha256(lock).hexdigest()
    if not installed.is_file() or installed.read_text("utf-8") != want:
        _run([*npm, "ci", "--ignore-scripts", "--no-audit", "--no-fund"], environment)
        installed.write_text(want, "utf-8")
    vite = SOURCE / "node_modules" / "vite" / "bin" / "vite.js"
    _run([node, str(vite), "build", "--logLevel", "warn"], environment)


def _run(command: list[str], environment: dict[str, str]) -> None:
    done = subprocess.run(  # noqa: S603 (our own build with tools that were found)
        command, cwd=SOURCE, env=environment, capture_output=True, text=True, check=False
    )
    if done.returncode:
        said = "\n".join((done.stdout + done.stderr).strip().splitlines()[-12:])
        message = f"the page could not be built; is there a network?\n{said}"
        raise PageBuildError(message)


if __name__ == "__main__":
    built_page_folder()
