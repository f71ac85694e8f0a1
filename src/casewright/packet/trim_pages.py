"""Trims at the wall: what is read first, what each piece is cut to, and how the saw is set."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from fractions import Fraction

from casewright.dims import Dim, measure_of
from casewright.dims.units import Unit
from casewright.drawing import ScaleError, View, sheet
from casewright.drawing.bend_plan import bend_scene, bent_ends
from casewright.drawing.crown_section import crown_section_scene
from casewright.outputs.blocks import (
    Block,
    CheckList,
    Column,
    Figure,
    Heading,
    Keep,
    Paragraph,
    Row,
    Table,
)
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Blank, Inline, Rich, Small, Strong
from casewright.packet.trim_steps import trim_steps
from casewright.room.model import Room, Run
from casewright.room.run_ends import SIDES
from casewright.room.specs import RunSide
from casewright.room.trim_questions import what_to_read
from casewright.room.trims.corners import met_in_corner
from casewright.room.trims.model import EndCut, Trim, TrimPiece
from casewright.room.trims.saw_settings import stance

__all__ = ["TRIMS", "trim_section"]

TRIMS = "trims"
"""Anchor of the section."""

_TALL = 88.0  # room for a section [mm]
_READ = (
    Column("Read as built", share=4.0), Column("Planned", share=1.2), Column("Read", share=1.5),
)  # fmt: skip
_PIECES = (
    Column("Mark", "centre"), Column("Piece", share=2.6), Column("Long points", share=1.2),
    Column("Wide", share=1.0), Column("Left end", share=1.4), Column("Right end", share=1.4),
)  # fmt: skip
_CUTS = (
    Column("Mark", "centre"), Column("End", share=0.9), Column("Corner", share=1.5),
    Column("Mitre", share=1.2), Column("Bevel", share=1.2), Column("At the fence", share=1.1),
    Column("Table to the", share=1.0), Column("Keep what is", share=1.2),
)  # fmt: skip
_FLAT = (
    "Laid flat on the saw, face up, for a blade that tilts to the left; to a tenth of a degree, "
    "which is finer than a saw is set. Nested against the fence instead, as it will stand: half "
    "of what the corner lacks of 180, no bevel. A corner that was not read leaves blanks; the "
    "small figures are those of the planned one, for test pieces only: write what you read and "
    "print this page again."
)


def trim_section(room: Room, paper: Paper) -> Section | None:
    """Every trim of every run; None where there is none."""
    runs = [run for run in room.runs if run.trims]
    if not runs:
        return None
    words = (
        "Trims are cut to what stands, never to the plan. Where a length is not read yet, the "
        "planned one is printed beside a blank: read, write it in the job file, print again."
    )
    blocks: list[Block] = [Paragraph(words)]
    for run in runs:
        for crown in (trim for trim in run.trims if trim.kind == "crown"):
            blocks += _crown(room, run, crown, paper)
        for trim in run.trims:
            if trim.kind not in ("crown", "backing", "frieze"):
                blocks += _plain(room, run, trim, paper)
    return Section("Trims", tuple(blocks), TRIMS)


def _crown(room: Room, run: Run, crown: Trim, paper: Paper) -> Iterator[Block]:
    behind = [trim for trim in run.trims if trim.kind in ("backing", "frieze")
              and trim.path.startswith(f"{crown.path}.")]  # fmt: skip
    unit = room.spec.unit
    yield Heading(f"{run.spec.title}: {crown.title}", 2, f"{TRIMS}:{crown.path}")
    nodes, whole = room.chain.nodes, f"run.{run.spec.key}.crown"
    drop, out = (nodes.get(f"{whole}.{name}") for name in ("drop", "projection"))
    frieze = nodes.get(f"{crown.path}.frieze")
    if drop is not None and out is not None and frieze is not None:
        with suppress(ScaleError):
            scene = crown_section_scene(run, crown, (drop, out, frieze), unit)
            words = f"Section of the crown, spring {_degrees(crown.spring.tenths)}" if (
                crown.spring) else "Section of the crown"  # fmt: skip
            drawn = sheet([[View(scene, words)]], paper.text_width_mm, _TALL, unit,
                          at_most=Fraction(1), bar=False)  # fmt: skip
            yield Figure(drawn, alternative=words)
    yield Table(_READ, tuple(_readings(room, run, crown)), small=True)
    yield from _bends(run, (crown, *behind), unit, paper, out)
    pieces = [piece for trim in (*behind, crown) for piece in trim.pieces]
    yield Table(_PIECES, tuple(_piece(room, crown, piece) for piece in pieces), small=True)
    cuts = tuple(_cuts(crown))
    if cuts:
        yield Keep((Heading("Cut table", 3), Table(_CUTS, cuts, small=True),
                    Paragraph(_FLAT, soft=True)))  # fmt: skip
    yield CheckList(tuple(trim_steps(room, run, crown)))


def _plain(room: Room, run: Run, trim: Trim, paper: Paper) -> Iterator[Block]:
    yield Heading(f"{run.spec.title}: {trim.title}", 2, f"{TRIMS}:{trim.path}")
    if trim.open_lengths:
        yield Table(_READ, tuple(_readings(room, run, trim)), small=True)
    yield from _bends(run, (trim,), room.spec.unit, paper)
    yield Table(_PIECES, tuple(_piece(room, trim, each) for each in trim.pieces), small=True)
    yield CheckList(tuple(trim_steps(room, run, trim)))


def _bends(
    run: Run, trims: Sequence[Trim], unit: Unit, paper: Paper, out: Dim | None = None
) -> Iterator[Block]:
    """Each diagonal corner that the run has, from above: one figure for each trim.

    Parameters
    ----------
    out
        How far the first of them stands out [mm]; None: its thickness.
    """
    for side in bent_ends(trims[0]):
        views = [
            View(bend_scene(run, trim, side, unit, out if trim is trims[0] else None),
                 f"{trim.title[:1].upper()}{trim.title[1:]}")
            for trim in trims[:2]
        ]  # fmt: skip
        with suppress(ScaleError):
            drawn = sheet([views], paper.text_width_mm, _TALL, unit, bar=False)
            words = f"{trims[0].title} across the corner at the {side} end, from above"
            yield Figure(drawn, alternative=words)


def _readings(room: Room, run: Run, trim: Trim) -> Iterator[Row]:
    unit = room.spec.unit
    for length in trim.open_lengths:
        words = what_to_read(trim, length.path)
        planned = room.designed.nodes.get(length.path, length)
        read: Rich = Blank(20.0) if length.built is None else Strong(measure_of(length, unit))
        yield Row((f"{words[:1].upper()}{words[1:]}", _planned(planned, length, unit), read))
    if trim.kind != "crown":
        return
    for side in SIDES:
        cut = _turning(trim, side)
        if cut is None or cut.corner is None:
            continue
        kind = "inside corner" if _is_inside(room, run, trim, side) else "corner of the return"
        if cut.is_bend:
            kind = "corner between front and diagonal face"
        read = Strong(_degrees(cut.corner)) if cut.is_read else Blank(20.0)
        yield Row((f"The {kind} at the {side} end", _degrees(cut.planned), read))


def _is_inside(room: Room, run: Run, trim: Trim, side: RunSide) -> bool:
    """Whether it meets another crown: in a corner of walls, or one that turns back on its wall."""
    if met_in_corner(room.spec, run.spec, side) is not None:
        return True
    return not any(piece.part.path.endswith(f"{side}_return") for piece in trim.pieces)


def _planned(planned: Dim, length: Dim, unit: str) -> Rich:
    dim = length if length.built is None else planned
    return measure_of(dim, "in" if unit == "in" else "mm") if length.built is None else ""


def _turning(trim: Trim, side: str) -> EndCut | None:
    """How the front piece turns at an end."""
    front = trim.along
    cut = front[0].left if side == "left" else front[-1].right
    return cut if cut.turns else None


def _piece(room: Room, trim: Trim, piece: TrimPiece) -> Row:
    part, unit = piece.part, room.spec.unit
    size: tuple[Inline, ...] = (Strong(measure_of(part.finished.length, unit)),)
    if not _is_known(trim, piece):
        size = (measure_of(part.finished.length, unit), "  ", Blank(14.0))
    return Row(
        (part.mark, part.title, size, measure_of(part.finished.width, unit),
         _end(piece.left), _end(piece.right)),
    )  # fmt: skip


def _is_known(trim: Trim, piece: TrimPiece) -> bool:
    """Whether everything the piece is cut to was read."""
    paths = {length.path for length in trim.open_lengths if length.built is None}
    return not paths.intersection(piece.part.waits_for)


def _end(cut: EndCut) -> str:
    """How an end is cut; a mitre without bevel at its angle, as the strip stands on edge."""
    if cut.is_bend and cut.setting is not None and not cut.setting.bevel:
        return f"{cut.kind}, {_degrees(cut.setting.mitre)}"
    return {"scarf": "scarf, 45°", "cope": "mitre, then cope"}.get(cut.kind, cut.kind)


def _cuts(crown: Trim) -> Iterator[Row]:
    for piece in crown.pieces:
        for cut, right in ((piece.left, False), (piece.right, True)):
            if cut.setting is None or cut.corner is None:
                continue
            laid = stance(inside=cut.kind != "outside mitre", right_end=right)
            corner = _degrees(cut.corner)
            yield Row(
                (
                    piece.part.mark, "right" if right else "left",
                    f"{corner} as read" if cut.is_read else f"{corner}, not read",
                    _set_to(cut, cut.setting.mitre), _set_to(cut, cut.setting.bevel),
                    f"{laid.at_fence} edge", laid.swing, f"{laid.keep} of the blade",
                )
            )  # fmt: skip


def _set_to(cut: EndCut, tenths: int) -> Rich:
    """An angle of the saw: a blank as long as the corner was not read."""
    if cut.is_read:
        return Strong(_degrees(tenths))
    return (Blank(10.0), " ", Small(_degrees(tenths)))


def _degrees(tenths: int) -> str:
    return f"{tenths // 10}.{tenths % 10}°"
