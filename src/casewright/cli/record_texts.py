"""What `record` prints for people: entries as lines, and what follows from them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from pathlib import Path

from casewright.dims import Unit, shop_text
from casewright.dims.count_text import counted
from casewright.job.record_documents import chosen
from casewright.packet.mark_words import mark_list
from casewright.record import Entry, damaged_files, standing
from casewright.resolve.differences import Difference
from casewright.room.model import Room
from casewright.room.specs import JobSpec

__all__ = [
    "change_lines",
    "change_text",
    "entry_lines",
    "fronts_left_lines",
    "later_lines",
    "list_lines",
    "written_lines",
]

_SHORT_ID = 8
_OUTLINE = ("", "length", "blank_length", "width", "blank_width", "thickness")
_MOST_CHANGES = 30
_MOST_FEATURES = 4


def list_lines(
    spec: JobSpec, path: Path, entries: Sequence[Entry], words: Sequence[str]
) -> Iterator[str]:
    """A line for every entry, what no longer stands marked as such; then the sums."""
    found = standing(entries)
    stands = {each.entry.id for each in found}
    shown = chosen(entries, words)
    for entry in shown:
        gone = "" if entry.id in stands or entry.kind == "withdrawn" else "   (no longer stands)"
        yield f"{_entry_line(entry, spec.unit)}{gone}"
    minutes = sum((e.minutes for e in shown if e.minutes and e.id in stands), Fraction(0))
    spent = f", {_time(minutes)} spent" if minutes else ""
    yield f"{path.name}: {_entries(len(shown))}{spent}"
    for aside in damaged_files(path):
        yield f"A damaged record was put aside: {aside.name}"


def entry_lines(entries: Sequence[Entry], unit: Unit) -> Iterator[str]:
    """A line for every entry."""
    for entry in entries:
        yield _entry_line(entry, unit)


def written_lines(entries: Sequence[Entry], room: Room) -> Iterator[str]:
    """What was written, with what a mark stands for."""
    marks = {part.path: f"{part.mark}, {part.title}: " for part in room.parts}
    for entry in entries:
        yield f"{_short(entry)}  {marks.get(entry.path, '')}{_says(entry, room.spec.unit)}"


def fronts_left_lines(entries: Sequence[Entry], room: Room) -> Iterator[str]:
    """Fronts of a case that stay to be made, where only its box was marked."""
    for entry in entries:
        if entry.kind not in ("assembled", "finished", "hung"):
            continue
        left = [p for p in room.parts if p.case == entry.path and p.front and p.state == "planned"]
        if not left:
            continue
        fronts = list(dict.fromkeys(part.front for part in left))
        yield (
            f"This marks the box of {entry.path}. Its {counted(len(fronts), 'front')} "
            f"({mark_list(part.mark for part in left)}) {'stays' if len(fronts) == 1 else 'stay'} "
            f"to be made: once done, record {entry.kind} {' '.join(fronts)}"
        )


def later_lines(later: Sequence[tuple[Entry, Entry]]) -> Iterator[str]:
    """What has no effect, because an entry dated later says something else."""
    for entry, other in later:
        yield (
            f"LOOK: {_short(other).strip()} goes before it for {entry.path}, it is dated "
            f"{_day(other)}. Is the clock right? Withdraw that one, or put this in its place with "
            f"--corrects {_short(other).strip()}"
        )


def change_lines(found: Sequence[Difference], heading: str = "What follows") -> Iterator[str]:
    """What is to be made otherwise from now on."""
    if not found:
        return
    yield f"{heading}, in {counted(len(found), 'piece')}:"
    for each in found[:_MOST_CHANGES]:
        yield f"  {each.mark:4}  {each.path}  {change_text(each)}"
    if len(found) > _MOST_CHANGES:
        yield f"  and {len(found) - _MOST_CHANGES} more"


def change_text(each: Difference) -> str:
    """How a piece differs, in words."""
    size = " -> ".join(filter(None, (each.old, each.new)))
    words = [size] if each.what == "changed" else [f"{each.what}: {size}"]
    if each.features:
        shown = ", ".join(each.features[:_MOST_FEATURES])
        more = len(each.features) - _MOST_FEATURES
        words.append(f"cuts and holes: {shown}{f' and {more} more' if more > 0 else ''}")
    if each.state != "planned":
        words.append(f"it is {each.state} already")
    return "; ".join(filter(None, words))


def _entry_line(entry: Entry, unit: Unit) -> str:
    day = _day(entry)
    corrects = f", in the place of {entry.corrects[:_SHORT_ID]}" if entry.corrects else ""
    return f"{_short(entry)}  {day}  {_says(entry, unit)}{corrects}  ({entry.device})"


def _day(entry: Entry) -> str:
    return f"{entry.at.day:2} {entry.at:%b %Y %H:%M}"


def _says(entry: Entry, unit: Unit) -> str:
    if entry.kind == "accepted":
        kept = {name.rpartition(".")[0] for name, _ in entry.sizes}
        return f"accepted, {counted(len(kept), 'piece')} kept as planned" if kept else "accepted"
    size = "" if entry.kind == "tested" else _size_text(entry, unit)
    minutes = f"{entry.minutes} min" if entry.minutes else ""
    path = "" if entry.kind == "offcut" else entry.path
    words = " ".join(filter(None, (entry.kind, path, entry.stock, size, minutes)))
    return ", ".join(filter(None, (words, entry.tool, entry.note)))


def _size_text(entry: Entry, unit: Unit) -> str:
    outline = [name for name, _ in entry.sizes if name in _OUTLINE]
    sizes = dict(entry.sizes)
    ordered = sorted(outline, key=_OUTLINE.index)
    text = " x ".join(shop_text(sizes[name], unit) for name in ordered)
    more = len(entry.sizes) - len(outline)
    return f"{text} and {counted(more, 'size')} of cuts" if more else text


def _short(entry: Entry) -> str:
    return entry.id[:_SHORT_ID].ljust(_SHORT_ID)


def _time(minutes: Fraction) -> str:
    hours, rest = divmod(round(minutes), 60)
    return f"{hours} h {rest:02d} min" if hours else f"{rest} min"


def _entries(count: int) -> str:
    return f"{count} entr{'y' if count == 1 else 'ies'}"
