"""The built page, held in memory: what is not in it cannot be asked for."""

from __future__ import annotations

import hashlib
import mimetypes
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

__all__ = ["BuiltPage", "PageFile"]

_FRONT = "index.html"
_TYPES = {".js": "text/javascript", ".css": "text/css", ".html": "text/html",
          ".svg": "image/svg+xml", ".woff2": "font/woff2"}  # fmt: skip


@dataclass(frozen=True, slots=True)
class PageFile:
    """A file of the page.

    Parameters
    ----------
    content
        Its bytes.
    kind
        Its media type.
    """

    content: bytes
    kind: str


@dataclass(frozen=True, slots=True)
class BuiltPage:
    """All files of the page by their path from its root.

    Parameters
    ----------
    files
        With `index.html`, which every address of the page is answered with.
    build
        Changes with any of them.
    """

    files: Mapping[str, PageFile]
    build: str

    @property
    def front(self) -> PageFile:
        """What every address is answered with."""
        return self.files[_FRONT]

    @classmethod
    def read(cls, folder: Path) -> BuiltPage:
        """A page from the folder that it was built into.

        Raises
        ------
        FileNotFoundError
            When no page is there: a defect of the installation.
        """
        if not (folder / _FRONT).is_file():
            raise FileNotFoundError(folder / _FRONT)
        files, digest = {}, hashlib.sha256()
        for path in sorted(folder.rglob("*")):
            if path.is_file():
                content = path.read_bytes()
                digest.update(content)
                files[path.relative_to(folder).as_posix()] = PageFile(content, _kind(path))
        return cls(files, digest.hexdigest()[:12])


def _kind(path: Path) -> str:
    found = _TYPES.get(path.suffix) or mimetypes.guess_type(path.name)[0]
    return found or "application/octet-stream"
