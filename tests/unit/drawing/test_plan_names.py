"""Names in a plan fill the shape of what they name."""

from hypothesis import given
from hypothesis import strategies as st

from casewright.drawing.plan_names import wrapped

_WORDS = st.lists(st.text("abcdefgh,-", min_size=1, max_size=12), min_size=1, max_size=7)


def test_a_wide_place_takes_one_line_a_narrow_one_more() -> None:
    assert wrapped("seat over a drawer", 2000, 300) == ("seat over a drawer",)
    assert wrapped("seat over a drawer", 300, 2000) == ("seat", "over a", "drawer")
    assert wrapped("seat over a drawer", 800, 450) == ("seat over", "a drawer")


@given(_WORDS, st.floats(1, 5000), st.floats(1, 5000))
def test_no_word_is_lost_or_broken(words: list[str], across: float, down: float) -> None:
    title = " ".join(words)
    assert " ".join(wrapped(title, across, down)) == title
