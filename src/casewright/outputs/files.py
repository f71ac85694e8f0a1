"""Writing results so that none is ever half written.

A file appears under its name only when it is complete. A folder of results is made beside the
old one and takes its place in one step. Files in it that someone else put there are kept.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path, PurePosixPath

from casewright.errors import CasewrightError

__all__ = ["LIST_NAME", "OutputError", "check_folder", "write_file", "write_folder"]

LIST_NAME = "files-made-by-casewright.txt"
"""File in a folder of results that names the others: what may be replaced the next time."""


class OutputError(CasewrightError):
    """A file or folder could not be written; what was there before is still there.

    Parameters
    ----------
    place
        The file or folder.
    problem
        What is in the way.
    want
        What would be right.
    """

    def __init__(self, place: str, problem: str, want: str) -> None:
        super().__init__(place, problem, want)
        self.place = place
        self.problem = problem
        self.want = want

    def __str__(self) -> str:
        return f"{self.place} was not written: {self.problem}; {self.want}"


def write_file(path: Path, content: bytes) -> None:
    """Write a file whole or not at all.

    Raises
    ------
    OutputError
        When it cannot be written; a file of that name is as it was before.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        _write_beside(path, content)
    except OSError as error:
        raise _failure(path, error) from error


def _write_beside(path: Path, content: bytes) -> None:
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    made = Path(name)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())
        made.chmod(0o666 & ~_umask())
        made.replace(path)
    except BaseException:
        made.unlink(missing_ok=True)
        raise


def _umask() -> int:
    """Permissions that new files do not get here; reading it means setting it for a moment."""
    mask = os.umask(0o022)
    os.umask(mask)
    return mask


def check_folder(folder: Path) -> None:
    """Whether a folder of results could be written, before the work is done that fills it.

    Raises
    ------
    OutputError
        When a file is in its way, or nothing may be written there.
    """
    there = folder
    while not there.exists() and there.parent != there:
        there = there.parent
    if not there.is_dir():
        name = "a file has this name" if there == folder else f"{there} is a file"
        raise OutputError(str(folder), name, "choose another folder")
    if not os.access(folder.parent if there == folder else there, os.W_OK | os.X_OK):
        raise OutputError(str(folder), "permission denied", "choose another place")


def write_folder(
    folder: Path,
    contents: Mapping[str, bytes],
    of_another: Callable[[str], bool] = lambda _: False,
) -> None:
    """Write a folder of results, all of it or none.

    Files of an earlier run that are not made again go; files that others put there stay.

    Parameters
    ----------
    contents
        Bytes of each file by its name in the folder, with `/` between folders.
    of_another
        Whether a file of an earlier run is what another command makes in the folder: it stays.

    Raises
    ------
    OutputError
        When it cannot be written, or would overwrite what is not ours; the folder is as before.
    ValueError
        When a name leads out of the folder: a defect of the program.
    """
    names = sorted(contents)
    for name in names:
        _check_name(name)
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        foreign = _foreign_files(folder, names)
        staying = [name for name in _listed(folder) - set(names) if of_another(name)]
        staying = sorted(name for name in staying if (folder / name).is_file())
        made = Path(tempfile.mkdtemp(prefix=f".{folder.name}.", dir=folder.parent))
        try:
            _fill(made, contents, [*names, *staying])
            _keep(folder, made, [*foreign, *map(Path, staying)])
            made.chmod(0o777 & ~_umask())
            _swap(folder, made)
        finally:
            shutil.rmtree(made, ignore_errors=True)
    except OSError as error:
        raise _failure(folder, error) from error


def _check_name(name: str) -> None:
    path = PurePosixPath(name)
    if path.is_absolute() or ".." in path.parts or "\\" in name or name in ("", LIST_NAME):
        msg = f"no name for a file of results: {name!r}"
        raise ValueError(msg)


def _foreign_files(folder: Path, names: list[str]) -> list[Path]:
    """Files of an existing folder that an earlier run did not make, from its top."""
    if not folder.exists():
        return []
    if not folder.is_dir():
        raise OutputError(str(folder), "a file has this name", "choose another folder")
    ours = _listed(folder)
    found = [path.relative_to(folder) for path in sorted(folder.rglob("*")) if not path.is_dir()]
    foreign = [path for path in found if path.as_posix() not in ours | {LIST_NAME}]
    clash = sorted({path.as_posix() for path in foreign} & set(names))
    if clash:
        problem = f"it holds {clash[0]}, which was not made by an earlier run"
        raise OutputError(str(folder), problem, "move that file away, or choose another folder")
    return foreign


def _listed(folder: Path) -> set[str]:
    """Names that earlier runs made, by their list."""
    listing = folder / LIST_NAME
    return set(listing.read_text(encoding="utf-8").splitlines()) if listing.is_file() else set()


def _fill(made: Path, contents: Mapping[str, bytes], listed: list[str]) -> None:
    listing = "".join(f"{name}\n" for name in sorted(listed)).encode()
    for name, content in [*sorted(contents.items()), (LIST_NAME, listing)]:
        path = made / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)


def _keep(folder: Path, made: Path, foreign: list[Path]) -> None:
    for path in foreign:
        (made / path).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(folder / path, made / path, follow_symlinks=False)


def _swap(folder: Path, made: Path) -> None:
    """Put the new folder in the place of the old one; put the old one back if that fails."""
    if not folder.exists():
        made.rename(folder)
        return
    old = made.with_name(f"{made.name}.old")
    folder.rename(old)
    try:
        made.rename(folder)
    except OSError:
        old.rename(folder)
        raise
    with suppress(OSError):
        shutil.rmtree(old)


def _failure(place: Path, error: OSError) -> OutputError:
    reason = (error.strerror or str(error)).lower()
    return OutputError(str(place), reason, "make room, or choose another place")
