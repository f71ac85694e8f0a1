"""Publications and practices that figures come from, by key."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from types import MappingProxyType
from typing import Literal

__all__ = ["SOURCES", "Source", "SourceKind", "UnknownSourceError", "source", "source_words"]

SourceKind = Literal["standard", "handbook", "common practice", "data sheet", "from memory"]


class UnknownSourceError(KeyError):
    """A figure names a source that is not listed: a defect of the program."""

    def __str__(self) -> str:
        return str(self.args[0])


@dataclass(frozen=True, slots=True)
class Source:
    """Where figures come from.

    Parameters
    ----------
    key
        Short name that figures, findings and docstrings refer to.
    title
        Of the publication, or the practice in words.
    publisher
        Who put it out, empty for a practice.
    edition
        Edition or year, empty when none is known.
    kind
        standard, handbook, common practice, data sheet or from memory.
    note
        What a reader should know before relying on it.
    """

    key: str
    title: str
    publisher: str
    edition: str
    kind: SourceKind
    note: str = ""

    @property
    def citation(self) -> str:
        """One line for the foot of a page."""
        parts = [self.title, self.publisher, self.edition]
        return ", ".join(part for part in parts if part)


_SECONDARY = "figures read in a secondary copy, not in the publication itself"
_MEMORY = "figures from memory: confirm against the publication before relying on them"

_ALL = (
    Source(
        "inch-1959", "International agreement on the yard and the pound",
        "National Institute of Standards and Technology, USA", "1959", "standard",
        "1 in = 25.4 mm exactly, by definition",
    ),
    Source(
        "ps1", "PS 1, Structural Plywood",
        "National Institute of Standards and Technology, USA", "PS 1-19 and PS 1-22",
        "standard", _SECONDARY,
    ),
    Source(
        "hp1", "ANSI/HPVA HP-1, Hardwood and Decorative Plywood",
        "Decorative Hardwoods Association", "", "from memory",
        "not seen in the 2020 text: a placeholder until confirmed",
    ),
    Source(
        "ps20", "PS 20, American Softwood Lumber Standard",
        "National Institute of Standards and Technology, USA", "", "standard", _SECONDARY,
    ),
    Source(
        "nhla", "NHLA Rules for hardwood lumber", "National Hardwood Lumber Association", "",
        "standard", _SECONDARY,
    ),
    Source(
        "a208.2", "ANSI A208.2, Medium Density Fiberboard", "Composite Panel Association",
        "2009", "standard", _SECONDARY,
    ),
    Source(
        "wood-handbook", "Wood Handbook: Wood as an Engineering Material",
        "USDA Forest Products Laboratory", "FPL-GTR-190 (2010), carried in FPL-GTR-282 (2021)",
        "handbook", "some rows read in a secondary copy, others from memory: see the row",
    ),
    Source(
        "nds", "National Design Specification for Wood Construction",
        "American Wood Council", "2018", "from memory", _MEMORY,
    ),
    Source(
        "gum", "Guide to the expression of uncertainty in measurement",
        "Joint Committee for Guides in Metrology", "JCGM 100:2008", "from memory",
        "the law of propagation only; no figures are taken from it",
    ),
    Source(
        "even-sums", "On the frequency distribution of means of samples (J. O. Irwin; P. Hall)",
        "Biometrika 19", "1927", "from memory", "the law of a sum of even deviations; no figures",
    ),
    Source(
        "iso-128", "ISO 128-2, Technical product documentation: lines",
        "International Organization for Standardization", "", "standard",
        "line widths and the first kinds of lines read in a secondary copy, the rest from memory",
    ),
    Source(
        "board-foot", "Board foot: 144 cubic inches of lumber", "", "", "common practice",
        "the trade's definition; read in a secondary copy",
    ),
    Source(
        "niosh-lifting", "Applications Manual for the Revised NIOSH Lifting Equation",
        "National Institute for Occupational Safety and Health, USA",
        "Publication 94-110, revised 2021", "standard", _SECONDARY,
    ),
    Source(
        "system-32", "The 32 mm system of cabinet holes", "", "", "common practice", _SECONDARY,
    ),
    Source(
        "trade-averages", "Average weights as the trade quotes them", "", "",
        "common practice", "weigh the stock in hand where weight decides",
    ),
    Source(
        "plastic-sheets", "Typical data sheets of clear plastics", "", "", "data sheet",
        "the maker's sheet governs",
    ),
    Source(
        "glass-sheets", "EN 572-1, Soda lime silicate glass",
        "European Committee for Standardization", "", "from memory",
        "a range of 2400 to 2530 kg/m3 read in a secondary copy; 2500 from memory",
    ),
    Source(
        "shelf-sag", "Article on shelves in a woodworking magazine", "", "2007",
        "common practice",
        "what the eye sees, 1/32 in per foot, and creep of half again: read in a secondary copy",
    ),
    Source(
        "book-loads", "Books on a shelf, as magazines' tests weighed them", "", "",
        "common practice",
        "20 lb a foot on average read in a secondary copy; 25 for full-size books from memory",
    ),
    Source(
        "irc", "International Residential Code", "International Code Council", "", "standard",
        "stud spacing, clearances over cooking, places for safety glass read in secondary copies, "
        "parts of them from memory; local code governs",
    ),
    Source(
        "tsca-vi", "TSCA Title VI, Formaldehyde standards for composite wood products",
        "US Environmental Protection Agency", "40 CFR 770", "standard", _SECONDARY,
    ),
    Source(
        "ada", "ADA Standards for Accessible Design", "US Department of Justice", "2010",
        "standard", _SECONDARY,
    ),
    Source(
        "kcma", "ANSI/KCMA A161.1, Performance and construction standard for cabinets",
        "Kitchen Cabinet Manufacturers Association, USA", "2012, 2017, 2022", "standard",
        _SECONDARY,
    ),
    Source(
        "kitchen-planning", "Kitchen planning guidelines of a trade association of the USA", "",
        "", "common practice", _SECONDARY,
    ),
    Source("common practice", "Common practice of the trade", "", "", "common practice"),
)  # fmt: skip

SOURCES: Mapping[str, Source] = MappingProxyType({entry.key: entry for entry in _ALL})
"""Every source by its key."""


def source_words(key: str) -> str:
    """What a finding rests on, in few words: a publication, 'common practice', a maker's sheet.

    Parameters
    ----------
    key
        Of a source; other words stand for themselves.

    Examples
    --------
    >>> source_words("ada"), source_words("the sheet of the slides")
    ('ADA Standards for Accessible Design, 2010', 'the sheet of the slides')
    """
    known = SOURCES.get(key)
    if known is None or key == "common practice":
        return key
    return ", ".join(filter(None, (known.title, known.edition)))


def source(key: str) -> Source:
    """The source of that key.

    Raises
    ------
    UnknownSourceError
        When no source has it; names the nearest ones.
    """
    found = SOURCES.get(key)
    if found is None:
        near = get_close_matches(key, SOURCES, n=3) or sorted(SOURCES)
        msg = f"no source {key!r}; there is {', '.join(near)}"
        raise UnknownSourceError(msg)
    return found
