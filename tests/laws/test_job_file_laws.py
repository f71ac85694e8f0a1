"""Whatever is done to a job file: a located message or a finding, never anything else."""

from __future__ import annotations

import copy
from importlib.resources import files
from typing import Any

import pytest
import tomlkit
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from tests.island_room import ISLAND_WORDS
from tests.odd_files import ODD, holder_of, is_told, spots
from tests.schema_words import add_word

from casewright.errors import JobFileError
from casewright.job.load import load_job

_TEXTS = [
    (files("casewright.job") / "examples" / name).read_text()
    for name in (
        "garden_room.toml",
        "paint_store_metric.toml",
        "bookcase.toml",
        "gallery_tall.toml",
        "gallery_trims.toml",
        "gallery_appliances.toml",
        "gallery_islands.toml",
    )
] + [ISLAND_WORDS]
_DATA = [tomlkit.parse(text).unwrap() for text in _TEXTS]
_FEW = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@_FEW
@given(st.sampled_from(_DATA), st.data())
def test_a_key_deleted_or_made_odd(data: dict[str, Any], draw: st.DataObject) -> None:
    """Up to three spots of an example are deleted or given a value of another kind."""
    changed = copy.deepcopy(data)
    for _ in range(draw.draw(st.integers(1, 3))):
        path = draw.draw(st.sampled_from(spots(changed)))
        holder = holder_of(changed, path)
        if draw.draw(st.booleans()):
            del holder[path[-1]]
        else:
            holder[path[-1]] = copy.deepcopy(draw.draw(ODD))
        if not changed:
            break
    is_told(tomlkit.dumps(changed))


@settings(
    _FEW, phases=(Phase.explicit, Phase.generate)
)  # up to three words: small enough as drawn
@given(st.sampled_from(_DATA), st.data())
def test_words_of_the_schema_added_anywhere(data: dict[str, Any], draw: st.DataObject) -> None:
    """Up to three of all the words there are, each in a table that takes it, in its range."""
    changed = copy.deepcopy(data)
    for _ in range(draw.draw(st.integers(1, 3))):
        add_word(changed, draw)
    is_told(tomlkit.dumps(changed))


@_FEW
@given(st.sampled_from(_TEXTS), st.data())
def test_characters_of_the_text_changed(text: str, draw: st.DataObject) -> None:
    """A slip of the fingers: a character gone, doubled, or another in its place."""
    place = draw.draw(st.integers(0, len(text) - 1))
    slip = draw.draw(st.sampled_from(["", text[place] * 2, '"', "[", "=", "\n", "7", "é", "#"]))
    is_told(text[:place] + slip + text[place + 1 :])


@_FEW
@given(
    st.sampled_from(["wall", "base", "bookcase"]),
    st.fractions(1, 130, max_denominator=8),
    st.fractions(1, 130, max_denominator=8),
    st.fractions(1, 40, max_denominator=8),
    st.sampled_from(["slab", "applied frame", "glass frame", "none"]),
)
def test_sizes_out_of_all_proportion(
    kind: str, width: Any, height: Any, depth: Any, front: str
) -> None:
    """A door in a case too small for it, a case as flat as a board: told, never crashed on."""
    sizes = {"width": width, "height": height, "depth": depth}
    lines = [f'{name} = "{size.numerator}/{size.denominator}"' for name, size in sizes.items()]
    head = f'format = 1\nunit = "in"\n[case.odd]\nkind = "{kind}"\nfront = "{front}"\n'
    is_told(head + "\n".join(lines))


@pytest.mark.parametrize(
    "content",
    [
        b"\xff\xfe", b"", b"\x00" * 10, b"[" * 5000, b"a = [" * 3000, b"\xef\xbb\xbfformat = 1",
        b'format = 1\nunit = "in"\n[case.a]\nkind="wall"\n[case.a]\nkind="base"\n',
        "format = 1".encode("utf-16"), b"\x89PNG\r\n\x1a\n\x00", b'format = 1\runit = "in"\r',
        b"x" * 2_000_000, b'format = 1\r\nunit = "in"\r\n[case.u]\r\nkind = wall\r\n',
    ],
)  # fmt: skip
def test_files_that_are_hardly_text(content: bytes, tmp_path: Any) -> None:
    """Bytes that are no job file are refused with a located message."""
    file = tmp_path / "job.toml"
    file.write_bytes(content)
    with pytest.raises(JobFileError) as caught:
        load_job(file)
    assert caught.value.problems[0].location.file == "job.toml"
