"""Heights of a room as one sum: from the highest floor to the lowest ceiling, closed exactly."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.dims import TAPE_MARK, Dim, Told, Unit, as_said, joined, shop_text, tell
from casewright.job.height_numbers import COUNTER, HeightNumbers
from casewright.layout.conflicts import LayoutConflict, conflicts
from casewright.layout.one_wall import lay_out
from casewright.layout.tasks import EndFiller, Preferences, RunPlace, WallTask
from casewright.room.model import Room
from casewright.room.specs import JobSpec
from casewright.sources import INCH

__all__ = ["HeightAnswer", "RoomHeights", "has_heights", "room_heights"]

_BACKSPLASH: dict[Unit, tuple[Fraction, Fraction]] = {
    "in": (15 * INCH, 24 * INCH), "mm": (Fraction(380), Fraction(610)),
}  # fmt: skip
"""Least and greatest from counter to wall cases (common practice)."""

_UPPERS: dict[Unit, tuple[Fraction, Fraction]] = {
    "in": (12 * INCH, 60 * INCH), "mm": (Fraction(300), Fraction(1520)),
}  # fmt: skip
_FRIEZE_MOST: dict[Unit, Fraction] = {"in": 6 * INCH, "mm": Fraction(150)}
_LIKES = Preferences(
    off_centre=0, width=0, mirror=0, fillers=0, wish=3, filler_wish=1, orphan=0, narrow=0
)
"""What stands at a height that is worked at matters more than how high the frieze is."""


@dataclass(frozen=True, slots=True)
class HeightAnswer:
    """Heights that close.

    Parameters
    ----------
    parts
        What lies over what, from the floor up, each with its height [mm]; their sum is the clear
        height.
    trade
        What it gives and what it takes, in words.
    bottom, uppers
        Where wall cases begin above the floor, and how high they are [mm].
    """

    parts: tuple[tuple[str, Fraction], ...]
    trade: tuple[Told, ...]
    bottom: Fraction
    uppers: Fraction


@dataclass(frozen=True, slots=True)
class RoomHeights:
    """What the heights of a room could be.

    Parameters
    ----------
    clear
        From the highest floor to the lowest ceiling [mm].
    bound
        Which readings it comes from, in words.
    answers
        The best first; none where nothing closes.
    conflicts
        Why nothing closes.
    step
        Of the grid [mm].
    numbers
        Tells its lengths.
    """

    clear: Dim
    bound: Told
    answers: tuple[HeightAnswer, ...]
    conflicts: tuple[LayoutConflict, ...]
    step: Fraction
    unit: Unit
    numbers: HeightNumbers

    def text(self, length: Fraction) -> str:
        """A length as the job writes it."""
        return shop_text(length, self.unit)

    def sizes(self, answer: HeightAnswer) -> Iterator[Told]:
        """What lies over what in an answer, from the floor up: 'counter 1 1/2'."""
        name = f"answer_{self.answers.index(answer) + 1}"
        for part, high in answer.parts:
            yield tell("{} {}", part, self.numbers.size(high, f"{name}.{part}"))

    def because(self, answer: HeightAnswer) -> str:
        """What bound an answer, and what it trades, in words."""
        clear = f"{self.text(self.clear.value)} from the highest floor to the lowest ceiling"
        return "; ".join((clear, *((self.bound,) if self.bound else ()), *answer.trade))


def has_heights(room: Room) -> bool:
    """Whether base cases, wall cases in runs, and a ceiling that was read make one sum."""
    hung = any(run.cases[0].spec.kind == "wall" for run in room.runs)
    return room.survey.clear is not None and hung and bool(_lows(room))


def _lows(room: Room) -> list[Dim]:
    """Heights of base cases [mm]."""
    return [case.height for case in room.boxes
            if case.spec.kind == "base" and case.spec.lid is None]  # fmt: skip


def room_heights(room: Room) -> RoomHeights | None:
    """Heights of base, counter, backsplash, wall cases, frieze and crown.

    What is left of the clear height under a step of the grid goes into the frieze, or stays open
    where no crown reaches the ceiling. None without base cases, wall cases in runs, or a ceiling
    that was read.
    """
    spec, clear, step = room.spec, room.survey.clear, TAPE_MARK[room.spec.unit]
    if clear is None or not has_heights(room):
        return None
    base = max(_lows(room), key=lambda dim: dim.value)
    numbers = HeightNumbers(room, clear, base, step)
    task = _task(spec, base.value, clear.value, step)
    found = tuple(_answers(task, clear.value, numbers))
    heights = RoomHeights(
        clear, _bound(room), found, () if found else conflicts(task), step, spec.unit, numbers
    )
    for number, answer in enumerate(found, start=1):
        numbers.explain(number, dict(answer.parts), heights.because(answer))
    return heights


def _task(spec: JobSpec, base: Fraction, clear: Fraction, step: Fraction) -> WallTask:
    """The sum laid on its side: sizes that are given count up to the next step, the room down."""
    unit, style = spec.unit, spec.style

    def up(length: Fraction) -> int:
        return int(-(-length // step))

    crowns = [run.trims.crown for run in spec.runs if run.trims.crown is not None]
    to_ceiling = [crown for crown in crowns if crown.to_ceiling]
    counter = COUNTER.of(unit)
    wished = up(style["wall_bottom"].value - base - counter)
    least, most = (up(each) for each in _BACKSPLASH[unit])
    fills = any(crown.fitted for crown in to_ceiling)
    uppers = None if fills else up(style["wall_height"].value)
    low, high = (up(each) for each in _UPPERS[unit])
    places = [
        RunPlace("base cases", up(base), up(base), opening=True),
        RunPlace("counter", up(counter), up(counter), opening=True),
        RunPlace("backsplash", min(least, wished), max(most, wished), wished),
        RunPlace("wall cases", low, high, uppers),
    ]
    above = EndFiller(0, up(clear))
    if to_ceiling:
        drop = max(up(crown.drop.value) for crown in to_ceiling)
        friezes = [crown.frieze.value for crown in to_ceiling if crown.frieze is not None]
        frieze = up(max(friezes, default=style["frieze"].value))
        places.append(RunPlace("crown", drop, drop, opening=True))
        above = EndFiller(0, max(up(_FRIEZE_MOST[unit]), frieze), frieze)
    return WallTask(int(clear // step), tuple(places), None, above, _LIKES)


_Of = tuple[HeightNumbers, str]
"""What tells the numbers of an answer, and its name there."""


def _answers(task: WallTask, clear: Fraction, numbers: HeightNumbers) -> Iterator[HeightAnswer]:
    """The best of all, then the best with one thing as it was wished for."""
    seen, step = set[tuple[int, ...]](), numbers.step
    for one in _pinned(task):
        found = lay_out(one)
        if found is not None and (found.right, *found.widths) not in seen:
            seen.add((found.right, *found.widths))
            heights = dict(zip((p.key for p in task.places), found.widths, strict=True))
            rest = clear - sum(found.widths) * step
            sizes = {key: n * step for key, n in heights.items()}
            yield _answer(task, sizes, rest, (numbers, f"answer_{len(seen)}"))


def _pinned(task: WallTask) -> Iterator[WallTask]:
    yield task
    for number, place in enumerate(task.places):
        if place.wished is not None and place.low <= place.wished <= place.high:
            held = replace(place, low=place.wished, high=place.wished)
            yield replace(task, places=(*task.places[:number], held, *task.places[number + 1 :]))
    above = task.right
    if above is not None and above.wished is not None:
        yield replace(task, right=replace(above, low=above.wished, high=above.wished))


def _answer(task: WallTask, heights: dict[str, Fraction], rest: Fraction, of: _Of) -> HeightAnswer:
    crown = heights.pop("crown", None)
    parts = list(heights.items())
    parts += [("open above", rest)] if crown is None else [("frieze", rest), ("crown", crown)]
    bottom = sum((heights[key] for key in ("base cases", "counter", "backsplash")), Fraction(0))
    trade = tuple(_trade(task, heights, rest, of))
    return HeightAnswer(tuple(parts), trade, bottom, heights["wall cases"])


def _trade(
    task: WallTask, heights: dict[str, Fraction], rest: Fraction, of: _Of
) -> Iterator[Told]:
    (numbers, name), wished = of, {place.key: place.wished for place in task.places}
    above = task.right
    rows = [(key, heights[key], wished[key]) for key in ("backsplash", "wall cases")]
    if above is not None and above.wished is not None:
        rows.append(("frieze", rest, above.wished))
    for key, height, wish in rows:
        if wish is None:
            yield Told(f"{key} fill what is left")
            continue
        off = height - wish * numbers.step
        if abs(off) < numbers.step:
            yield Told(f"{key} as wished")
        else:
            more = "more" if off > 0 else "less"
            yield tell("{} {} {} than wished", key, numbers.off(name, key, abs(off)), more)


def _bound(room: Room) -> Told:
    """Where the floor is highest and the ceiling lowest."""
    words: list[Told] = []
    for name, worst, what in (
        ("down", room.survey.floor, "the floor is highest"),
        ("up", room.survey.ceiling, "the ceiling lowest"),
    ):
        for wall in room.survey.walls.values():
            at = next(
                (wall.at[f"station_{n}.along"] for n in range(1, len(wall.spec.stations) + 1)
                 if worst is not None and (read := wall.read.get(f"station_{n}.{name}"))
                 is not None and read.value == worst.value),
                None,
            )  # fmt: skip
            if at is not None:
                place = as_said(at, room.spec.unit, shop_text(at.value, room.spec.unit))
                words.append(tell("{} {} along {}", what, place, wall.spec.title))
                break
    return joined("; ", words)
