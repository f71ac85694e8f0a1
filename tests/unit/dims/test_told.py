"""Sentences that know their lengths."""

from __future__ import annotations

import pickle
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.dims import Chain, Measure, Origin, Told, as_said, joined, parts_of, tell
from casewright.outputs.html_lines import line_html
from casewright.outputs.typst_lines import line_data
from casewright.sources import INCH

_WIDTH = Chain().place("sink").enter("width", Fraction(21, 8) * INCH, Origin("chosen", "by hand"))
_WORDS = st.text(alphabet="ab 1/2.", max_size=6)
_LENGTHS = st.builds(
    Measure, st.fractions(0, 900, max_denominator=64), st.just("in"), st.text("xyz", max_size=2)
)
_SENTENCES = st.lists(st.one_of(_WORDS, _LENGTHS), max_size=5).map(lambda items: joined("", items))


def _paths(words: str) -> list[str]:
    return [part.path for part in parts_of(words) if isinstance(part, Measure)]


def test_a_sentence_reads_as_text_and_knows_its_numbers() -> None:
    """To a prompt it is letters; to a page each length leads to its number."""
    said = tell("rip it {} wide", as_said(_WIDTH, "in"))
    assert said == 'rip it 2 5/8" wide'
    assert _paths(said) == ["sink.width"]


def test_a_sentence_within_a_sentence_keeps_its_numbers() -> None:
    """What is put together of sentences knows all their lengths; words with braces stay words."""
    inner = tell("rip it {} wide", as_said(_WIDTH, "in"))
    whole = tell("{}: {}", "bin {3}", inner) + ", then crosscut"
    assert whole == 'bin {3}: rip it 2 5/8" wide, then crosscut'
    assert _paths("First, " + whole) == ["sink.width"]
    assert (inner.capital, _paths(inner.capital)) == ('Rip it 2 5/8" wide', ["sink.width"])


@pytest.mark.parametrize("words", ["no place", "{} and {}"])
def test_a_sentence_takes_as_many_lengths_as_it_has_places(words: str) -> None:
    """A length without a place would be lost."""
    with pytest.raises(ValueError, match="zip"):
        tell(words, as_said(_WIDTH, "in"))


@given(st.lists(_SENTENCES, max_size=4), _WORDS)
def test_nothing_is_lost_when_sentences_are_joined(items: list[Told], between: str) -> None:
    """Text as `str.join` puts it together, the numbers one after the other."""
    whole = joined(between, items)
    assert whole == between.join(str(each) for each in items)
    assert _paths(whole) == [path for each in items for path in _paths(each)]
    again = pickle.loads(pickle.dumps(whole))  # noqa: S301 (our own)
    assert (again, again.parts) == (whole, whole.parts)


@given(_SENTENCES, st.text("ab1", min_size=1, max_size=2), _WORDS)
def test_words_are_replaced_as_in_any_text(said: Told, old: str, new: str) -> None:
    """The lengths stay where only words changed."""
    found = said.replace(old, new)
    assert found == str(said).replace(old, new)
    texts = [each.replace(old, new) if isinstance(each, str) else each.text for each in said.parts]
    if found == "".join(texts):
        assert _paths(found) == _paths(said)


def test_on_a_page_and_on_paper_a_told_length_is_a_length() -> None:
    """Its fraction is stacked; on the page it can be asked."""
    said = tell("plane to {}", as_said(_WIDTH, "in"))
    page = line_html(said, lambda _: "")
    assert 'data-path="sink.width"' in page
    assert "<sup>5</sup>" in page
    words, length = line_data((said,))
    assert words == "plane to "
    assert isinstance(length, dict)
    assert length["k"] == "measure"
