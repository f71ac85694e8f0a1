"""Edits of a job file change what was meant and not a character more."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from difflib import SequenceMatcher
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.jobs import EXAMPLE_NAMES, FIVE_LINES, example, read

from casewright.errors import JobFileError
from casewright.job.case_edits import delete_case, insert_case, own_width
from casewright.job.edits import set_value
from casewright.job.positions import KeyPath, scan
from casewright.job.splicing import EditError

TEXTS = [FIVE_LINES, *(example(name) for name in EXAMPLE_NAMES)]


def _data(text: str) -> dict[str, Any]:
    return tomllib.loads(text)


def _changed(before: str, after: str) -> tuple[list[str], list[str]]:
    """Lines taken out and put in."""
    old, new = before.split("\n"), after.split("\n")
    gone, come = [], []
    for tag, a0, a1, b0, b1 in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if tag != "equal":
            gone += old[a0:a1]
            come += new[b0:b1]
    return gone, come


def _scalars(text: str) -> list[KeyPath]:
    found = scan(text)
    return [
        path
        for path, span in found.values.items()
        if text[span.start] not in "[{" and "\n" not in text[span.start : span.end]
    ]


@settings(max_examples=100, deadline=None)
@given(st.sampled_from(TEXTS), st.data(), st.booleans())
def test_a_changed_value_changes_one_line(text: str, data: st.DataObject, crlf: bool) -> None:
    """Notes, order, spacing and line ends stay."""
    text = text.replace("\n", "\r\n") if crlf else text
    path = data.draw(st.sampled_from(_scalars(text)))
    value = data.draw(st.one_of(st.text(max_size=20), st.integers(-99, 999), st.booleans()))
    assume(not isinstance(value, str) or value.isprintable())
    edited = set_value(text, path, value)
    gone, come = _changed(text, edited)
    assert len(gone) == len(come) <= 1
    wanted: Any = _data(text)
    inner = wanted
    for step in path[:-1]:
        inner = inner[step]
    inner[path[-1]] = value
    assert _data(edited) == wanted


@settings(max_examples=100, deadline=None)
@given(st.sampled_from(TEXTS), st.data())
def test_changing_a_value_back_gives_the_old_text(text: str, data: st.DataObject) -> None:
    """Where the value stands in its simplest form, not a character differs."""
    path = data.draw(st.sampled_from(_scalars(text)))
    old: Any = _data(text)
    for step in path:
        old = old[step]
    assume(isinstance(old, str | int))
    assert set_value(set_value(text, path, "other"), path, old) == text


@settings(max_examples=100, deadline=None)
@given(st.sampled_from(TEXTS), st.data(), st.booleans())
def test_a_case_put_in_and_taken_out_leaves_the_old_text(
    text: str, data: st.DataObject, crlf: bool
) -> None:
    """Only blank lines may stay behind."""
    text = text.replace("\n", "\r\n") if crlf else text
    after = data.draw(st.sampled_from([None, *_data(text)["case"]]))
    with_new = insert_case(text, "new_one", ('kind = "wall"', "width = 20"), after=after)
    gone, come = _changed(text, with_new)
    assert not [line for line in gone if line.strip()]
    assert [line.strip() for line in come if line.strip()] == [
        "[case.new_one]", 'kind = "wall"', "width = 20",
    ]  # fmt: skip
    assert _data(with_new)["case"]["new_one"] == {"kind": "wall", "width": 20}
    back = delete_case(with_new, "new_one")
    assert [line for line in back.split("\n") if line.strip()] == [
        line for line in text.split("\n") if line.strip()
    ]


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_any_case_can_be_taken_out(name: str) -> None:
    """With its doors, and out of its run; the rest still is a job.

    Unless something else needed it, which is told: a lid over several seats, a filler beside it.
    """
    text = example(name)
    cases = list(_data(text)["case"])
    runs = _data(text).get("run", {}).values()
    alone = {run["cases"][0] for run in runs if len(run["cases"]) == 1}
    needed: list[JobFileError] = []
    for key in cases if len(cases) > 1 else ():
        if key in alone:  # a run without cases is taken out by hand
            continue
        left = delete_case(text, key)
        wanted = _data(text)
        del wanted["case"][key]
        for run in wanted.get("run", {}).values():
            run["cases"] = [each for each in run["cases"] if each != key]
            run.get("solved", {"widths": {}})["widths"].pop(key, None)
            if run.get("solved") == {**run.get("solved", {}), "widths": {}}:
                del run["solved"]
        for island in wanted.get("island", {}).values():
            island.get("solved", {}).get("widths", {}).pop(key, None)
        assert _data(left) == wanted
        try:
            assert key not in {case.key for case in read(left).cases}
        except JobFileError as error:
            needed.append(error)
    assert all(problem.want for error in needed for problem in error.problems)
    assert len(needed) <= len(cases) // 4


def test_an_edit_that_would_do_more_is_refused() -> None:
    """Tables, names that are taken, cases written in another form."""
    inline = 'format = 1\nunit = "in"\ncase.a = { kind = "wall", width = 9 }\n'
    attempts: tuple[Callable[[], str], ...] = (
        lambda: set_value(FIVE_LINES, ("case", "upper"), 1),
        lambda: set_value(FIVE_LINES, ("case", "lower", "width"), 1),
        lambda: set_value(FIVE_LINES, ("case", "upper", "title"), "two\nlines"),
        lambda: set_value("a = [", ("a",), 1),
        lambda: insert_case(FIVE_LINES, "upper", ()),
        lambda: insert_case(FIVE_LINES, "a b", ()),
        lambda: insert_case(FIVE_LINES, "b", (), after="a"),
        lambda: insert_case(FIVE_LINES, "b", ("x = 1", "[case.c]", "x = 2")),
        lambda: insert_case(FIVE_LINES, "b", ("[style]",)),
        lambda: delete_case(FIVE_LINES, "lower"),
        lambda: delete_case(inline, "a"),
    )
    for attempt in attempts:
        with pytest.raises(EditError):
            attempt()


def test_a_new_key_comes_behind_the_others_of_its_section() -> None:
    """One line is added, before the next section."""
    text = FIVE_LINES + "# about the run\n[run.a]\ncases = []\n"
    edited = set_value(text, ("case", "upper", "height"), "36 1/2")
    gone, come = _changed(text, edited)
    assert (gone, come) == ([], ['height = "36 1/2"'])
    assert edited.index("height") < edited.index("# about")


def test_notes_over_a_header_go_with_the_case() -> None:
    """Those over the next section stay."""
    text = FIVE_LINES + '\n# mine\n[case.b]\nkind = "base"\n\n# his\n[style]\ngap = 1\n'
    assert delete_case(text, "b") == FIVE_LINES + "\n# his\n[style]\ngap = 1\n"


@pytest.mark.parametrize(
    ("solved", "left"),
    [
        ('widths = { a = "20", b = "21" }  # mine\n', 'widths = { b = "21" }  # mine\n'),
        ('widths = { b = "21", a = "20" }\n', 'widths = { b = "21" }\n'),
        ('widths.b = "21"  # stays\nwidths.a = "20"\n', 'widths.b = "21"  # stays\n'),
        ('widths = { a = "20" }\nleft_filler = "2"\n', None),
    ],
)
def test_a_solved_width_goes_with_its_case(solved: str, left: str | None) -> None:
    """Or when the case gets a width of its own; notes on the others stay.

    An answer that gives no other width goes as a whole.
    """
    cases = '\n[case.a]\nkind = "wall"\n\n[case.b]\nkind = "wall"\n'
    run = '\n[run.r]\ncases = ["a", "b"]\nwall = "72"\n\n[run.r.solved]\n'
    after = delete_case(FIVE_LINES + cases + run + solved + "\n# mine\n[style]\n", "a")
    wanted = "" if left is None else "[run.r.solved]\n" + left + "\n"
    tail = f"{wanted}# mine\n[style]\n"
    assert after.endswith(f'cases = ["b"]\nwall = "72"\n\n{tail}')
    own = own_width(FIVE_LINES + cases + run + solved + "\n# mine\n[style]\n", "a", "19 1/2")
    kept = cases.replace('kind = "wall"\n', 'kind = "wall"\nwidth = "19 1/2"\n', 1)
    assert own == FIVE_LINES + kept + run.removesuffix("[run.r.solved]\n") + tail
    assert read(after.replace("\n[style]\n", "\n")).runs
