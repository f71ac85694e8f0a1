"""Setting a tool up: what a test piece measures, the move that follows, and what shares it."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NoReturn

from casewright.casework.features import Cut, Feature, Setup
from casewright.casework.parts import Part
from casewright.dims import Unit, parse_length
from casewright.errors import LengthError, Location, Problem
from casewright.job.move_text import move_size
from casewright.job.writer import Writer
from casewright.record import Entry, RecordError, standing
from casewright.room.model import Room
from casewright.shop import Axis, Lean, Setting, TestCut, gauge_for, leans, move_words

__all__ = ["Coached", "Trial", "coach", "feature_named", "trials"]

_WORDS = {
    "proud": 1, "over": 1, "wide": 1, "deep": 1, "long": 1, "thick": 1,
    "sunk": -1, "under": -1, "narrow": -1, "shallow": -1, "short": -1, "thin": -1,
}  # fmt: skip
_FLUSH = ("flush", "right")
_WANTED = "_wanted"
_AXES: tuple[Axis, ...] = ("depth", "place", "width")


@dataclass(frozen=True, slots=True)
class Trial:
    """Something that can be measured on a test piece.

    Parameters
    ----------
    what
        The word for it: depth, width, place, line, lap, tongue, finger, overlay.
    axis
        What of the setting it shows.
    wanted
        What it should measure [mm]; None: only how far it is over or under can be told.
    number
        What the setting itself should come to [mm].
    rate
        How far the setting is over for each mm that the test piece is [-].
    words
        Where it is measured.
    """

    what: str
    axis: Axis
    wanted: Fraction | None
    number: Fraction
    rate: Fraction
    words: str


@dataclass(frozen=True, slots=True)
class Coached:
    """What a test piece comes to.

    Parameters
    ----------
    trial
        What was measured.
    off
        How far the test piece is over what is wanted [mm].
    move
        What to move, in words; empty: leave it.
    within
        How far a reading of it may be off: less than that is left alone [mm].
    same
        Cuts still to be made with the same setting, each with its piece.
    done
        Cuts that were made with it before.
    leaning
        Settings that all lean to one side, this one among them.
    entry
        For the record.
    """

    trial: Trial
    off: Fraction
    move: str
    within: Fraction
    same: tuple[tuple[Part, Feature], ...]
    done: tuple[tuple[Part, Feature], ...]
    leaning: tuple[Lean, ...]
    entry: Entry


def feature_named(room: Room, word: str) -> tuple[Part, Feature]:
    """The cut or the holes of that path, or of a mark: 12.rabbet_back.

    Raises
    ------
    RecordError
        With the nearest ones when there are none.
    """
    every = {feature.path: (part, feature) for part in room.parts for feature in part.features}
    marks = {part.mark: part.path for part in room.parts}
    head, dot, name = word.partition(".")
    path = f"{marks[head]}.{name}" if dot and head in marks else word
    if path not in every:
        inside = [each for each in every if each.startswith(f"{path}.")]
        near = inside[:6] or difflib.get_close_matches(path, every, 4, 0.5)
        want = f"did you mean {', or '.join(near)}?" if near else "parts --json lists them all"
        _refuse(f"there is no cut and no row of holes called {word}", want)
    return every[path]


def trials(part: Part, feature: Feature) -> tuple[Trial, ...]:
    """What can be measured on a test piece of a cut or of holes."""
    return tuple(_trials(part, feature))


def _trials(part: Part, feature: Feature) -> Iterator[Trial]:
    one, half, none = Fraction(1), Fraction(1, 2), Fraction(0)
    setup, kind = feature.setup, feature.kind
    deep = feature.depth.value if feature.depth is not None else none
    if kind == "lap":
        words = "how the faces of two laps laid together stand"
        yield Trial("lap", "depth", none, deep, -half, words)
    if kind == "tongue":
        thick = part.blank.thickness.value - 2 * deep
        yield Trial("tongue", "depth", thick, deep, -half, "thickness of the tongue")
    if kind == "finger":
        yield Trial("finger", "depth", none, deep, one, "how a finger stands on its mate")
    if setup.depth is not None and kind not in ("pocket", "finger", "mitre"):
        yield Trial("depth", "depth", deep, deep, one, "depth of the cut")
    if isinstance(feature, Cut) and kind in ("rabbet", "dado", "groove", "rebate", "slot"):
        wide = feature.width.value
        yield Trial("width", "width", wide, wide, one, "width of the cut")
    if setup.check is not None and kind not in ("pocket", "finger"):
        size = setup.check.value
        yield Trial("place", "place", size, size, one, setup.check_words)
    if not isinstance(feature, Cut) and setup.fence is not None and kind != "pocket":
        line = setup.fence.value
        yield Trial("line", "place", line, line, one, "from the datum edge to the row of holes")
    if kind == "hinge cup" and setup.check is not None:
        size = setup.check.value
        words = "how far a hung door laps over its case"
        yield Trial("overlay", "lap over the case", None, size, one, words)


def coach(
    room: Room,
    entries: Sequence[Entry],
    part: Part,
    feature: Feature,
    words: Sequence[str],
    writer: Writer,
) -> Coached:
    """What a test piece comes to, and the entry that keeps it.

    Parameters
    ----------
    entries
        What the record holds.
    words
        What was measured, and how much: 'depth 13/32', 'lap 1/32 proud'.

    Raises
    ------
    RecordError
        When that cannot be measured on it, or the size has no meaning.
    """
    trial = _trial(part, feature, words[0])
    unit = room.spec.unit
    off = _off(trial, words[1:], unit)
    gauge = gauge_for(room.spec.shop, trial.number)
    within = gauge.strays("").limit if gauge is not None else Fraction(1)
    setup, shift = feature.setup, off * trial.rate
    move = ""
    if abs(off) > within:
        move = move_words(_setting(setup), trial.axis, shift, move_size(shift, unit))
    entry = _entry(feature, trial, shift, " ".join([*words, *([f": {move}"] if move else [])]),
                   writer)  # fmt: skip
    if gauge is not None:
        entry = replace(entry, u=gauge.strays("").sigma)
    like = [(p, f) for p in room.parts for f in p.features if _is_set_alike(f, feature)]
    tests = list(_tests(room, [*(each.entry for each in standing(entries)), entry]))
    return Coached(
        trial,
        off,
        move,
        within,
        tuple(each for each in like if each[0].state in ("planned", "cut")),
        tuple(each for each in like if each[0].state not in ("planned", "cut")),
        tuple(
            lean for lean in leans(tests) if lean.axis == trial.axis and setup.tool in lean.tools
        ),
        entry,
    )


def _trial(part: Part, feature: Feature, what: str) -> Trial:
    known = trials(part, feature)
    found = next((each for each in known if each.what == what), None)
    if found is None:
        could = ", ".join(each.what for each in known) or "nothing"
        _refuse(f"{what} is nothing to measure on {feature.path}", f"there is {could}")
    return found


def _off(trial: Trial, words: Sequence[str], unit: Unit) -> Fraction:
    """How far the test piece is over what is wanted [mm]."""
    if len(words) == 1 and words[0] in _FLUSH:
        return Fraction(0)
    ways = [_WORDS[word] for word in words if word in _WORDS]
    rest = " ".join(word for word in words if word not in _WORDS)
    try:
        size = parse_length(rest, unit)
    except LengthError as error:
        place = Location("", word=error.text)
        raise RecordError((Problem(place, error.what, error.want),)) from None
    if ways:
        return ways[0] * size
    if not trial.wanted:
        want = f"say which way: {trial.what} {rest} proud, or sunk; over, or under; or flush"
        _refuse(f"it does not say which way {rest} is off", want)
    return size - trial.wanted


def _setting(setup: Setup) -> Setting:
    by_stop = setup.stop is not None
    return Setting(setup.tool, setup.bit, setup.passes, by_stop)


def _is_set_alike(one: Feature, other: Feature) -> bool:
    """Whether two cuts are made with one setting of one tool."""
    return one.kind == other.kind and _numbers(one.setup) == _numbers(other.setup)


def _numbers(setup: Setup) -> tuple[object, ...]:
    sizes = (setup.fence, setup.depth, setup.stop, setup.collar, setup.bit_size)
    return (setup.tool, setup.bit, *(None if size is None else size.value for size in sizes))


def _entry(feature: Feature, trial: Trial, shift: Fraction, note: str, writer: Writer) -> Entry:
    name = trial.axis.replace(" ", "_")
    sizes = ((name, trial.number + shift), (f"{name}{_WANTED}", trial.number))
    return Entry(
        id=writer.new_id(),
        device=writer.device,
        seq=0,
        at=writer.now,
        kind="tested",
        path=feature.path,
        sizes=tuple(sorted(sizes)),
        tool=feature.setup.tool,
        note=note.replace(" :", ":"),
    )


def _tests(room: Room, entries: Sequence[Entry]) -> Iterator[TestCut]:
    """What test pieces showed; cuts that share a setting are one."""
    settings = {f.path: repr(_numbers(f.setup)) for part in room.parts for f in part.features}
    for entry in entries:
        sizes = dict(entry.sizes)
        for axis in _AXES if entry.kind == "tested" else ():
            read, wanted = sizes.get(axis), sizes.get(f"{axis}{_WANTED}")
            if read is not None and wanted is not None:
                setting = settings.get(entry.path, entry.path)
                yield TestCut(entry.tool, axis, setting, read - wanted)


def _refuse(what: str, want: str) -> NoReturn:
    raise RecordError.of(what, want)
