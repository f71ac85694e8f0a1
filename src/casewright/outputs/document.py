"""A printed document: sections of blocks on paper, with anchors that anything can lead to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, fields, is_dataclass
from fractions import Fraction
from functools import cache
from typing import NamedTuple

from casewright.dims import Measure, Told
from casewright.dims.units import Unit
from casewright.drawing import Plot
from casewright.outputs.blocks import Block, Contents, LabelSheet
from casewright.outputs.inlines import PageNumber, PageNumbers

__all__ = [
    "A4", "LABELS_A4", "LABELS_LETTER", "LETTER", "Document", "LinkError", "Paper",
    "PrintedNumber", "Section",
    "anchors", "check_links", "measures", "page_references", "paper_named", "section_anchors",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet of paper [mm], upright.

    Parameters
    ----------
    left_mm, right_mm, top_mm, bottom_mm
        Margins; the running head and the page number stand in the upper and lower one.
    """

    name: str
    width_mm: float
    height_mm: float
    left_mm: float = 17.0
    right_mm: float = 13.0
    top_mm: float = 19.0
    bottom_mm: float = 15.0

    @property
    def text_width_mm(self) -> float:
        """Room between the side margins [mm]."""
        return self.width_mm - self.left_mm - self.right_mm

    @property
    def text_height_mm(self) -> float:
        """Room between the upper and lower margin [mm]."""
        return self.height_mm - self.top_mm - self.bottom_mm

    @property
    def turned(self) -> Paper:
        """The same sheet lying on its side."""
        return Paper(
            f"{self.name} turned", self.height_mm, self.width_mm, self.right_mm, self.right_mm
        )


LETTER = Paper("letter", 215.9, 279.4)
A4 = Paper("A4", 210.0, 297.0)


def paper_named(name: str) -> Paper:
    """The paper that a job names: letter or a4."""
    return LETTER if name == "letter" else A4


LABELS_LETTER = LabelSheet(2, 10, 101.6, 25.4, 3.96875, 12.7, 106.3625, 25.4)
"""20 labels of 4 by 1 in on a letter sheet (a size common in the trade)."""
LABELS_A4 = LabelSheet(2, 8, 99.1, 33.9, 4.65, 12.9, 101.6, 33.9)
"""16 labels of 99.1 by 33.9 mm on an A4 sheet (a size common in the trade)."""


@dataclass(frozen=True, slots=True)
class Section:
    """A part of the document that begins a new page.

    Parameters
    ----------
    title
        In the running head, the contents and the outline of the PDF.
    anchor
        Where others lead to.
    paper
        Its own paper; None: the document's.
    plain
        Without a title on the page, as on a cover or a full-size template.
    """

    title: str
    blocks: tuple[Block, ...]
    anchor: str = ""
    paper: Paper | None = field(default=None, kw_only=True)
    plain: bool = field(default=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Document:
    """Everything that is printed.

    Parameters
    ----------
    title
        What it is: 'Shop packet'.
    job
        Name of the job, in the running head.
    fingerprint
        Of its inputs, in the running head: two prints that differ say so.
    unit_note
        At the foot of each page: 'Sizes in inches'.
    """

    title: str
    job: str
    fingerprint: str
    unit: Unit
    paper: Paper
    sections: tuple[Section, ...]
    unit_note: str = ""


class LinkError(ValueError):
    """An anchor is missing or stands twice: a defect of the program."""


_BARE = frozenset((str, int, float, bool, type(None)))


def _parts(thing: object) -> Iterator[object]:
    """A thing and everything inside it, in order, without looking into plots; no bare words."""
    waiting = [thing]
    while waiting:
        part = waiting.pop()
        if type(part) in _BARE:
            continue
        yield part
        if isinstance(part, tuple):
            waiting.extend(reversed(part))
        elif isinstance(part, Told):
            waiting.extend(reversed(part.parts))
        elif not isinstance(part, Plot | Measure):
            names = _members(type(part))  # type: ignore[arg-type]  # classes can be hashed
            waiting.extend(getattr(part, name) for name in names)


@cache
def _members(kind: type) -> tuple[str, ...]:
    """What a kind of thing is made of, the last first; nothing for words and numbers."""
    return tuple(each.name for each in reversed(fields(kind))) if is_dataclass(kind) else ()


def anchors(document: Document | Section) -> list[str]:
    """Every anchor in order."""
    found = (getattr(part, "anchor", "") for part in _parts(document))
    return [anchor for anchor in found if anchor]


def section_anchors(document: Document) -> list[str]:
    """Where the contents lead to: each section's anchor, or one made for it."""
    return [
        section.anchor or f"section {number}"
        for number, section in enumerate(document.sections, 1)
    ]


def page_references(section: Section, contents: Iterable[str]) -> set[str]:
    """Anchors whose page numbers a section prints.

    Parameters
    ----------
    contents
        Those that a table of contents prints.
    """
    found: set[str] = set()
    for part in _parts(section):
        match part:
            case PageNumber(target):
                found.add(target)
            case PageNumbers(targets):
                found.update(targets)
            case Contents():
                found.update(contents)
            case _:
                pass
    return found


def _targets(document: Document) -> Iterator[str]:
    for part in _parts(document):
        if isinstance(part, Plot):
            yield from (group.tag.target for group in part.groups if group.tag.target)
        elif target := getattr(part, "target", ""):
            yield target
        else:
            yield from getattr(part, "targets", ())


def check_links(document: Document) -> None:
    """Make sure that everything that leads somewhere arrives.

    Raises
    ------
    LinkError
        When an anchor is missing or stands twice.
    """
    found = anchors(document)
    known = set(found)
    twice = (
        sorted({anchor for anchor in found if found.count(anchor) > 1})
        if len(known) < len(found)
        else []
    )
    missing = sorted(set(_targets(document)) - known)
    if twice or missing:
        msg = f"anchors that stand twice: {twice}; anchors that are missing: {missing}"
        raise LinkError(msg)


class PrintedNumber(NamedTuple):
    """A number as it is printed.

    Parameters
    ----------
    path
        On the chain.
    value
        In the line that it stands in; None in a drawing, which knows its text alone [mm].
    """

    text: str
    path: str
    value: Fraction | None = None


def measures(document: Document) -> Iterable[PrintedNumber]:
    """Every printed number with its path on the chain, in reading order, drawings included."""
    for part in _parts(document):
        if isinstance(part, Measure):
            yield PrintedNumber(part.text, part.path, part.value)
        elif isinstance(part, Plot):
            for group in part.groups:
                if group.kind == "dimension" and group.tag.title:
                    yield PrintedNumber(group.tag.title, group.tag.path)
