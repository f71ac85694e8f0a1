"""Results on disk: whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from casewright.outputs import files
from casewright.outputs.files import LIST_NAME, OutputError, write_file, write_folder


def _tree(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_a_file_is_written_with_its_folders(tmp_path: Path) -> None:
    """Missing folders are made."""
    write_file(tmp_path / "out" / "a.pdf", b"new")
    assert _tree(tmp_path) == {"out/a.pdf": b"new"}


def test_a_failed_write_leaves_the_old_file_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The disk runs full in the middle: yesterday's packet is still whole."""
    target = tmp_path / "a.pdf"
    target.write_bytes(b"old")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OutputError, match="no space left on device") as failed:
        write_file(target, b"new")
    assert failed.value.place == str(target)
    assert _tree(tmp_path) == {"a.pdf": b"old"}


def test_a_folder_holds_what_was_made_and_a_list_of_it(tmp_path: Path) -> None:
    """Files in folders of their own too."""
    write_folder(tmp_path / "packet", {"b.csv": b"2", "svg/a.svg": b"1"})
    assert _tree(tmp_path / "packet") == {
        "b.csv": b"2",
        "svg/a.svg": b"1",
        LIST_NAME: b"b.csv\nsvg/a.svg\n",
    }


def test_what_is_not_made_again_goes_and_what_others_put_there_stays(tmp_path: Path) -> None:
    """A case that is gone leaves no card behind; the person's own notes are kept."""
    folder = tmp_path / "packet"
    write_folder(folder, {"old.svg": b"1", "cut.csv": b"1"})
    (folder / "notes").mkdir()
    (folder / "notes" / "mine.txt").write_bytes(b"mine")
    write_folder(folder, {"cut.csv": b"2", "new.svg": b"2"})
    found = _tree(folder)
    found.pop(LIST_NAME)
    assert found == {"cut.csv": b"2", "new.svg": b"2", "notes/mine.txt": b"mine"}


def test_what_another_command_made_in_the_folder_stays_and_is_still_known(tmp_path: Path) -> None:
    """A survey leaves the packet that is there, and the next packet the survey."""
    folder = tmp_path / "kitchen"
    write_folder(folder, {"packet.pdf": b"1", "buy.csv": b"1"}, "survey.pdf".__eq__)
    write_folder(folder, {"survey.pdf": b"1"}, "survey.pdf".__ne__)
    write_folder(folder, {"packet.pdf": b"2"}, "survey.pdf".__eq__)
    listed = b"packet.pdf\nsurvey.pdf\n"
    assert _tree(folder) == {"packet.pdf": b"2", "survey.pdf": b"1", LIST_NAME: listed}


def test_a_file_of_someone_else_is_never_overwritten(tmp_path: Path) -> None:
    """The same name in a folder that is not ours stops everything."""
    folder = tmp_path / "packet"
    folder.mkdir()
    (folder / "cut.csv").write_bytes(b"mine")
    with pytest.raises(OutputError, match=r"holds cut\.csv, which was not made by"):
        write_folder(folder, {"cut.csv": b"2", "new.svg": b"2"})
    assert _tree(tmp_path) == {"packet/cut.csv": b"mine"}


def test_a_file_in_the_place_of_the_folder_is_an_error(tmp_path: Path) -> None:
    """Said in words, and nothing is touched."""
    (tmp_path / "packet").write_bytes(b"mine")
    with pytest.raises(OutputError, match="a file has this name"):
        write_folder(tmp_path / "packet", {"a": b""})
    assert _tree(tmp_path) == {"packet": b"mine"}


@pytest.mark.parametrize("step", ["_fill", "_keep"])
def test_a_failure_on_the_way_leaves_the_old_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    """Whatever breaks before the swap, the old results stand and no scraps remain."""
    folder = tmp_path / "packet"
    write_folder(folder, {"a.svg": b"old"})
    before = _tree(tmp_path)

    def broken(*_: object) -> None:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(files, step, broken)
    with pytest.raises(OutputError, match="input/output error"):
        write_folder(folder, {"a.svg": b"new"})
    assert _tree(tmp_path) == before
    assert [path.name for path in tmp_path.iterdir()] == ["packet"]


def test_a_failed_swap_puts_the_old_folder_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The new folder cannot take the name: the old one gets it back."""
    folder = tmp_path / "packet"
    write_folder(folder, {"a.svg": b"old"})
    rename = Path.rename

    def refuse(self: Path, target: Path) -> Path:
        if target == folder and not self.name.endswith(".old"):
            raise OSError(13, "Permission denied")
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", refuse)
    with pytest.raises(OutputError, match="permission denied"):
        write_folder(folder, {"a.svg": b"new"})
    assert (folder / "a.svg").read_bytes() == b"old"
    assert [path.name for path in tmp_path.iterdir()] == ["packet"]


@pytest.mark.parametrize("name", ["../a", "/a", "a/../../b", "", LIST_NAME, "a\\b"])
def test_no_name_leads_out_of_the_folder(tmp_path: Path, name: str) -> None:
    """Names of results cannot reach other files."""
    with pytest.raises(ValueError, match="no name for a file of results"):
        write_folder(tmp_path / "packet", {name: b""})
    assert _tree(tmp_path) == {}


def test_no_scraps_are_left_beside_the_folder(tmp_path: Path) -> None:
    """Two runs leave one folder."""
    for content in (b"1", b"2"):
        write_folder(tmp_path / "packet", {"a": content})
    assert [path.name for path in tmp_path.iterdir()] == ["packet"]


def test_results_can_be_read_by_others(tmp_path: Path) -> None:
    """Permissions are those of any new file, not of a secret one."""
    write_file(tmp_path / "a", b"")
    (tmp_path / "b").write_bytes(b"")
    assert (tmp_path / "a").stat().st_mode == (tmp_path / "b").stat().st_mode
