"""What lies over something else is found, and what does not is left alone."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from casewright.drawing import (
    Balloon,
    Choice,
    Element,
    Ink,
    Leader,
    Scene,
    Text,
    circle,
    clashes,
    line,
    plot,
    struck,
)


def _groups(*elements: Element) -> tuple[int, int]:
    drawn = plot(Scene(elements)).groups
    return len(clashes(drawn)), len(struck(drawn))


WORD = Text((0, 0), "front edge", 3.0)


@pytest.mark.parametrize(
    ("other", "expected"),
    [
        (Text((4, 1), "back edge", 3.0), (1, 0)),
        (Text((4, 6), "back edge", 3.0), (0, 0)),
        (Balloon((2, 0), "a"), (1, 0)),
        (circle((3, 0), 1, keep_clear=True), (1, 0)),
        (circle((30, 0), 1, keep_clear=True), (0, 0)),
        (line((-20, 0), (20, 0)), (0, 1)),
        (line((-20, 4), (20, 4)), (0, 0)),
        (Leader((2, 0), (20.0, 20.0), ("here",)), (0, 1)),
    ],
)
def test_a_word_and_what_may_lie_over_it(other: Element, expected: tuple[int, int]) -> None:
    """Overlapping words, rings and holes clash; a line through a word strikes it."""
    assert _groups(WORD, other) == expected


def test_a_patch_hides_the_lines_that_were_drawn_before_it() -> None:
    """A number may break the line it stands on; one that is crossed later is lost."""
    patched = Text((0, 0), "12", 3.0, ground=Ink.PAPER)
    across = line((-20, 0), (20, 0))
    assert _groups(across, patched) == (0, 0)
    assert _groups(patched, across) == (0, 1)


def test_a_choice_takes_the_first_place_that_is_clear_and_asks_no_further() -> None:
    """Places are made one by one: those past the clear one are never asked for."""
    asked = []

    def places() -> list[tuple[Element, ...]]:
        return [(Text((x, 0), "b", 3.0),) for x in (0, 1, 20, 40)]

    def one_by_one() -> Iterator[tuple[Element, ...]]:
        for place in places():
            asked.append(place)
            yield place

    drawn = plot(Scene((WORD, Choice(one_by_one()))))
    assert not clashes(drawn.groups)
    assert len(asked) == 3
