"""A document as data for the typesetter.

Nothing a person wrote becomes markup: every word travels as a JSON string and is set as text.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from casewright.drawing import Area, Group, Ink, Plot, SignKind
from casewright.drawing.lettering import FAMILIES
from casewright.outputs import blocks as b
from casewright.outputs.document import Document, Paper, Section, section_anchors
from casewright.outputs.inlines import Rich, rich_text
from casewright.outputs.list_ends import ends_kept
from casewright.outputs.scan_code import scan_code_svg
from casewright.outputs.section_text import SectionText, block_weight, printing_text
from casewright.outputs.svg import svg_text
from casewright.outputs.typst_lines import Json, line_data, sign_picture
from casewright.outputs.typst_tables import table_data

__all__ = [
    "document_json", "head_text", "paper_data", "section_texts",
]  # fmt: skip

_UNPRINTABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
_CONTROL = "\\u00"  # how JSON begins to write any character below a space that has no letter
_SPILL = 0.05  # what rounding may add to a drawing that just fits [mm]
_SHEETS = 4  # of labels that are one block
_SIGN_COLOURS: dict[SignKind, Ink] = {
    "look": Ink.LOOK,
    "measure first": Ink.MEASURE,
    "ask": Ink.ASK,
    "caution": Ink.LOOK,
}


class _Page(NamedTuple):
    """Where a block stands."""

    document: Document
    paper: Paper


def document_json(document: Document) -> str:
    """A document as JSON text: the same document always gives the same text."""
    sections = section_texts(document)
    return printing_text(head_text(document), (section.whole for section in sections))


def head_text(document: Document) -> str:
    """What all sections of a document share, as JSON text."""
    return _text(
        {
            "title": document.title,
            "job": document.job,
            "fingerprint": document.fingerprint,
            "unit_note": document.unit_note,
            "families": list(FAMILIES),
            "inks": {ink.name.lower(): ink.value for ink in Ink},
        }
    )


def section_texts(document: Document) -> list[SectionText]:
    """Every section of a document, ready for the typesetter."""
    anchors = section_anchors(document)
    return [
        _section(section, anchor, document)
        for section, anchor in zip(document.sections, anchors, strict=True)
    ]


def paper_data(paper: Paper) -> Json:
    """A sheet of paper and its margins [mm]."""
    return {
        "width": paper.width_mm,
        "height": paper.height_mm,
        "left": paper.left_mm,
        "right": paper.right_mm,
        "top": paper.top_mm,
        "bottom": paper.bottom_mm,
    }


def _text(data: Json) -> str:
    """Data as JSON text, without characters that cannot be printed."""
    text = _json(data)
    if _CONTROL in text or _UNPRINTABLE.search(text):
        return _json(_clean(data))
    return text


def _json(data: Json) -> str:
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def _clean(data: Json) -> Json:
    """Data without characters that cannot be printed: they become the replacement character."""
    if isinstance(data, str):
        return _UNPRINTABLE.sub("\ufffd", data)
    if isinstance(data, Mapping):
        return {key: _clean(value) for key, value in data.items()}
    if isinstance(data, Sequence):
        return [_clean(value) for value in data]
    return data


def _section(section: Section, anchor: str, document: Document) -> SectionText:
    paper = section.paper or document.paper
    head: Json = {
        "title": section.title,
        "anchor": anchor,
        "plain": section.plain,
        "paper": paper_data(paper),
    }
    page = _Page(document, paper)
    blocks = tuple(
        _text(_numbered(_block(block, page), number))
        for number, block in enumerate(_divided(ends_kept(section.blocks)))
    )
    return SectionText(
        _text(head),
        blocks,
        tuple(map(block_weight, blocks)),
        sheets=all(isinstance(block, b.Labels) for block in section.blocks),
    )


def _divided(blocks: tuple[b.Block, ...]) -> Iterator[b.Block]:
    """Blocks, where there are only labels some sheets at a time."""
    for block in blocks:
        if isinstance(block, b.Labels) and len(blocks) == 1:
            yield from _sheets(block)
        else:
            yield block


def _sheets(labels: b.Labels) -> Iterator[b.Labels]:
    """Labels in blocks that fill their sheets; the first may begin with used ones."""
    full = labels.sheet.across * labels.sheet.down * _SHEETS
    start, end = 0, full - labels.skip % full
    while start < len(labels.labels) or start == 0:
        skip = 0 if start else labels.skip
        yield replace(labels, labels=labels.labels[start:end], skip=skip)
        start, end = end, end + full


def _numbered(data: Json, number: int) -> Json:
    """Blocks that stay on one page, or fill theirs, say which of their section they are."""
    if isinstance(data, dict) and data["k"] in ("keep", "labels"):
        data["number"] = number
    return data


def _block(block: b.Block, page: _Page) -> Json:
    data: Json
    match block:
        case b.Heading(text, level, anchor):
            data = {"k": "heading", "text": text, "level": level, "anchor": anchor}
        case b.Paragraph(text, soft, anchor):
            data = {"k": "paragraph", "c": line_data(text), "soft": soft, "anchor": anchor}
        case b.Bullets(items):
            data = {"k": "bullets", "items": [line_data(item) for item in items]}
        case b.CheckList(steps, start, boxes):
            data = {
                "k": "checklist", "start": start, "boxes": boxes,
                "steps": [_step(step) for step in steps],
            }  # fmt: skip
        case b.Caution(text, title):
            data = _callout("caution", text, title)
        case b.Callout(sign, text, title):
            data = _callout(sign, text, title)
        case b.Table():
            data = table_data(block)
        case b.Figure():
            data = _figure(block, page.paper)
        case _:
            data = _arrangement(block, page)
    return data


def _arrangement(block: b.Beside | b.Keep | b.Contents | b.Space | b.Labels, page: _Page) -> Json:
    data: Json
    match block:
        case b.Beside(columns, shares):
            data = {
                "k": "beside",
                "shares": list(shares or (1.0,) * len(columns)),
                "columns": [_blocks(column, page) for column in columns],
            }
        case b.Keep(blocks):
            data = {"k": "keep", "number": None, "blocks": _blocks(blocks, page)}
        case b.Contents():
            data = {"k": "contents", "entries": _entries(page.document)}
        case b.Space(height):
            data = {"k": "space", "height": height}
        case b.Labels():
            data = _labels(block)
    return data


def _blocks(blocks: tuple[b.Block, ...], page: _Page) -> list[Json]:
    return [_block(block, page) for block in blocks]


def _entries(document: Document) -> list[Json]:
    """Every section but the one that the contents stand in."""
    return [
        {"title": section.title, "to": anchor}
        for section, anchor in zip(document.sections, section_anchors(document), strict=True)
        if not any(isinstance(block, b.Contents) for block in section.blocks)
    ]


def _step(step: b.Step) -> Json:
    return {
        "c": line_data(step.text),
        "notes": [line_data(note) for note in step.notes],
        "cautions": [_callout("caution", caution, "") for caution in step.cautions],
        "anchor": step.anchor,
    }


def _callout(sign: SignKind, text: Rich, title: str) -> Json:
    return {
        "k": "callout",
        "colour": _SIGN_COLOURS.get(sign, Ink.INK).value,
        "picture": sign_picture(sign),
        "title": title,
        "c": line_data(text),
    }


def _figure(figure: b.Figure, paper: Paper) -> Json:
    area = figure.plot.area
    _check_room(figure, paper)
    return {
        "k": "figure",
        "svg": svg_text(figure.plot, with_ids=False),
        "width": round(area.width, 3),
        "height": round(area.height, 3),
        "caption": line_data(figure.caption) if figure.caption else None,
        "anchor": figure.anchor,
        "alt": figure.alternative or figure.plot.title or rich_text(figure.caption),
        "links": _links(figure.plot),
    }


def _check_room(figure: b.Figure, paper: Paper) -> None:
    """Refuse a drawing that would run off its page: a defect of whoever fitted it."""
    area = figure.plot.area
    wide = area.width > paper.text_width_mm + _SPILL
    if wide or area.height > paper.text_height_mm + _SPILL:
        size = f"{area.width:.1f} x {area.height:.1f} mm"
        msg = f"a drawing of {size} does not fit {paper.name}: {figure.plot.title}"
        raise ValueError(msg)


def _links(drawn: Plot) -> list[Json]:
    """Where a drawing leads elsewhere: rectangles from its upper left corner [mm].

    One for each place it leads to: the balloons that lead there, else all that does.
    """
    leading: dict[str, list[Group]] = {}
    for group in drawn.groups:
        if group.tag.target and group.marks:
            leading.setdefault(group.tag.target, []).append(group)
    return [
        _link(target, area, drawn.area)
        for target, groups in leading.items()
        for area in _link_areas(groups)
    ]


def _link_areas(groups: list[Group]) -> list[Area]:
    balloons = [group.area for group in groups if group.kind == "balloon"]
    return balloons or [Area.around(group.area for group in groups)]


def _link(target: str, area: Area, paper: Area) -> Json:
    return {
        "to": target,
        "x": round(area.x0 - paper.x0, 3),
        "y": round(paper.y1 - area.y1, 3),
        "width": round(area.width, 3),
        "height": round(area.height, 3),
    }


def _labels(labels: b.Labels) -> Json:
    sheet = labels.sheet
    return {
        "k": "labels",
        "number": None,
        "outlines": labels.outlines,
        "note": line_data(labels.note),
        "skip": labels.skip,
        "across": sheet.across,
        "down": sheet.down,
        "width": sheet.width_mm,
        "height": sheet.height_mm,
        "left": sheet.left_mm,
        "top": sheet.top_mm,
        "step_x": sheet.step_x_mm,
        "step_y": sheet.step_y_mm,
        "labels": [_label(label) for label in labels.labels],
    }


def _label(label: b.Label) -> Json:
    return {
        "mark": label.mark,
        "title": label.title,
        "lines": [line_data(line) for line in label.lines],
        "aside": [line_data(line) for line in label.aside],
        "after": line_data(label.after),
        "signs": [sign_picture(sign) for sign in label.signs],
        "toward": label.toward,
        "to": label.target,
        "code": scan_code_svg(label.opens) if label.opens else "",
    }
