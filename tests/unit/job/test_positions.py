"""Where keys and values stand in a text."""

from __future__ import annotations

import pytest
import tomlkit
from tests.jobs import EXAMPLE_NAMES, example

from casewright.job.positions import KeyPath, Positions, scan

TEXT = """\
# a note with = and [brackets]
name = 'one'            # trailing
[case.left]
width = "11 7/8"
"quoted key" = [1, [2, "three # no note"],
  { deep = 4 }]
front = { leaves = 2, style.gap = "1/8" }
[[many]]
a = 1
[[many]]
a = '''
[case.no]
'''
[many.inner]
b = 2
"""


@pytest.mark.parametrize(
    ("path", "word", "at"),
    [
        (("name",), "'one'", (2, 8)),
        (("case", "left", "width"), '"11 7/8"', (4, 9)),
        (("case", "left", "quoted key", 0), "1", (5, 17)),
        (("case", "left", "quoted key", 1, 1), '"three # no note"', (5, 24)),
        (("case", "left", "quoted key", 2, "deep"), "4", (6, 12)),
        (("case", "left", "front", "leaves"), "2", (7, 20)),
        (("case", "left", "front", "style", "gap"), '"1/8"', (7, 35)),
        (("many", 0, "a"), "1", (9, 5)),
        (("many", 1, "a"), "'''", (11, 5)),
        (("many", 1, "inner", "b"), "2", (15, 5)),
    ],
)
def test_a_value_stands_where_it_is_written(path: KeyPath, word: str, at: tuple[int, int]) -> None:
    """Through tables, lists of tables, inline tables, notes and texts of several lines."""
    found = scan(TEXT)
    span = found.values[path]
    assert found.word(span) == word
    assert found.at(span.start) == at


def test_headers_in_their_order() -> None:
    """Entries of a list of tables carry their number; a header inside a text is none."""
    paths = [path for path, _ in scan(TEXT).headers]
    assert paths == [("case", "left"), ("many", 0), ("many", 1), ("many", 1, "inner")]


def test_the_nearest_place_of_what_is_not_there() -> None:
    """A missing key is told at its table."""
    found = scan(TEXT)
    span = found.nearest(("case", "left", "kind"))
    assert span is not None
    assert found.word(span) == "left"
    assert found.nearest(("run",)) is None


def test_what_is_written_twice() -> None:
    """Keys, headers, keys in inline tables; not the many of a list."""
    text = "[a]\nb = 1\nb = 2\n[a]\n[[c]]\n[[c]]\nd = { e = 1, e = 2 }\n"
    paths = [twice.path for twice in scan(text).repeated]
    assert paths == [("a", "b"), ("a",), ("c", 1, "d", "e")]


@pytest.mark.parametrize("text", ["", "a", "a =", "a = [", "[a", "[]", '"', "a = '''", "=", "]"])
def test_a_broken_text_is_followed_as_far_as_it_goes(text: str) -> None:
    """The scanner never fails: the parser speaks."""
    assert isinstance(scan(text), Positions)


def _leaves(value: object, path: KeyPath = ()) -> list[tuple[KeyPath, object]]:
    if isinstance(value, dict):
        return [leaf for key, inner in value.items() for leaf in _leaves(inner, (*path, key))]
    if isinstance(value, list):
        own = [leaf for n, inner in enumerate(value) for leaf in _leaves(inner, (*path, n))]
        return own or [(path, value)]
    return [(path, value)]


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_every_value_the_parser_finds_has_a_place(name: str) -> None:
    """And what stands there reads as that value."""
    text = example(name)
    found = scan(text)
    for path, value in _leaves(tomlkit.parse(text).unwrap()):
        span = found.values[path]
        written = tomlkit.parse(f"x = {text[span.start : span.end]}").unwrap()["x"]
        assert written == value
