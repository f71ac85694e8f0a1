"""Citations and the rows that name them."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping

import pytest

import casewright.sources as package
from casewright.sources import SOURCES, Provenance, UnknownSourceError, source


def provenances(value: object) -> Iterator[Provenance]:
    """Every provenance inside a table, however it is nested."""
    if isinstance(value, Provenance):
        yield value
    elif isinstance(value, Mapping):
        for row in value.values():
            yield from provenances(row)
    elif isinstance(value, tuple):
        for row in value:
            yield from provenances(row)
    elif dataclasses.is_dataclass(value) and not isinstance(value, type):
        for field in dataclasses.fields(value):
            yield from provenances(getattr(value, field.name))


DEFINITIONS = ("INCH", "FOOT", "BOARD_FOOT", "POUND")
"""Plain numbers, exact by definition."""

TABLES = {
    name: list(provenances(getattr(package, name)))
    for name in package.__all__
    if name.isupper() and name not in ("SOURCES", *DEFINITIONS)
}


def test_a_source_is_found_by_its_key() -> None:
    """The registry gives back the entry, with a line for the foot of a page."""
    found = source("ps20")
    assert found.key == "ps20"
    assert found.citation == (
        "PS 20, American Softwood Lumber Standard, "
        "National Institute of Standards and Technology, USA"
    )


def test_an_unknown_key_names_the_nearest() -> None:
    """A slip in a key is answered with the key that was meant."""
    with pytest.raises(UnknownSourceError, match=r"no source 'ps02'; there is .*ps20"):
        source("ps02")


def test_every_source_says_what_it_is() -> None:
    """No entry without a title; one that is no practice names who put it out."""
    for key, entry in SOURCES.items():
        assert entry.key == key
        assert entry.title
        assert entry.publisher or entry.kind in ("common practice", "data sheet")


@pytest.mark.parametrize("name", TABLES)
def test_every_row_of_every_table_has_a_listed_source(name: str) -> None:
    """A figure without a source cannot slip in."""
    assert TABLES[name]
    for provenance in TABLES[name]:
        assert provenance.source in SOURCES


def test_what_was_never_seen_is_never_confirmed() -> None:
    """Rows from memory and placeholders do not pass as read, whatever the table."""
    for rows in TABLES.values():
        for provenance in rows:
            if source(provenance.source).kind == "from memory":
                assert not provenance.confirmed
    assert not Provenance("nhla", "shaky").confirmed
    assert Provenance("nhla", "secondary copy").confirmed
