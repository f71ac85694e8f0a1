"""The last steps at the wall: fillers, trims, doors, drawers, caulk, and a look round."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from casewright.casework.cautions import CAUTIONS
from casewright.dims import Measure, Told, Unit, measure_of, tell, trade
from casewright.outputs.blocks import Step
from casewright.outputs.inlines import Blank, Inline, Link, PageNumber, Rich, Strong
from casewright.packet.trim_pages import TRIMS
from casewright.room.fillers import GAP_HEIGHTS
from casewright.room.model import Filler, Room

__all__ = ["last_steps"]


def last_steps(room: Room) -> Iterator[Step]:
    """What is done once every case is on its wall, in order."""
    fillers = [filler for run in room.runs for filler in run.fillers]
    if fillers:
        yield Step(
            "Fit the fillers: hold one plumb in front of its gap, its edge at the wall's nearest "
            "place; set the compasses to what its other edge lies over the case, and draw them "
            "down the wall. Saw or plane to the line, the back of the edge a little under, and "
            "screw it on from inside the case, flush with the front edges.",
            tuple(line for filler in fillers for line in _filler(room, filler)),
            (CAUTIONS["scribe_plane"],),
        )
    if any(run.trims for run in room.runs):
        last = ". The crown before the doors; toe skins last, after the floor."
        lead = "Read what the trims are cut to, and put them on: "
        yield Step((lead, Link("trims", TRIMS), " p. ", PageNumber(TRIMS), last))
    panes = any(part.role == "pane" for part in room.parts)
    if any(case.doors for case in room.cases):
        yield Step(
            "Hang the doors, and set them in this order: height, then side, then depth. Gaps are "
            "even when a feeler of one thickness goes into all of them.",
            tuple(_adjusting(room)),
            tuple(CAUTIONS[key] for key in ("lift_door", *(("glass_edges",) if panes else ()))),
        )
    if any(case.drawers for case in room.cases):
        yield Step(
            "Run the drawers in, lowest first. Set each front even with its neighbours before its "
            "last screws are driven.",
            (),
            ("A drawer pulled out tips a loose case: first its wall screws, then one drawer.",),
        )
    yield from _panels(room)
    yield Step(
        "Caulk last of all, in a thin line: along the scribed edges of fillers and between "
        "finished ends and the wall, never where something moves. What is wider than a finger "
        "can smooth gets a strip or a cord behind it first.",
        tuple(_caulked(room)),
    )
    yield Step("Go round once more:", tuple(_once_more(room)))


def _adjusting(room: Room) -> Iterator[Rich]:
    """How a door is set, in the order in which one setting disturbs the next least."""
    yield "height: loosen the plates, bring the leaf level with its neighbours, tighten"
    yield "side: at each hinge, until the gap is alike at head and foot"
    yield "depth: at each hinge, until the leaf stands off the case alike at head and foot"
    words: list[Inline] = ["the hinge's sheet says which screw moves what"]
    gap = room.chain.nodes.get("style.gap")
    if gap is not None:
        words += ["; between fronts ", Strong(measure_of(gap, room.spec.unit)), " was planned"]
    yield tuple(words)


def _caulked(room: Room) -> Iterator[Rich]:
    """Each gap at a wall, with its length."""
    unit = room.spec.unit
    for run in room.runs:
        for filler in run.fillers:
            if not filler.beyond.value:
                long = Strong(measure_of(filler.part.finished.length, unit))
                yield (f"{filler.part.mark}, {filler.part.title} of {run.spec.title}, ", long)
        for case in run.cases:
            if case.key in room.in_islands:
                continue
            for side in case.spec.finished:
                long = Strong(measure_of(case.height, unit))
                yield (f"{side} end of ", Link(case.spec.title, case.key), ", ", long)


def _panels(room: Room) -> Iterator[Step]:
    """Panels of appliances, each by its maker's sheet."""
    panels = [case for case in room.cases if case.spec.panel is not None]
    if panels:
        yield Step(
            "Hang the panels of the appliances once the trade has connected them and their feet "
            "are set, by each maker's own sheet: brackets first, then the face into the plane of "
            "the doors beside it.",
            tuple((Link(case.spec.title, case.key),) for case in panels),
        )


def _figure(name: str, unit: Unit, said: str) -> Measure:
    """A figure of the trade in the unit of the job alone."""
    return replace(trade(name, unit), said=said)


def _level(unit: Unit) -> Told:
    if unit == "mm":
        return tell("{} per metre", _figure("level_metre", unit, "1 mm"))
    tops, over = _figure("level_tops", unit, "1/16 in"), _figure("level_over", unit, "4 ft")
    return tell("{} over {}", tops, over)


def _once_more(room: Room) -> Iterator[str]:
    """What is looked at before tools are put away (common practice)."""
    unit = room.spec.unit
    yield "every wall screw in a stud, every case that hangs on two columns of them or on its rail"
    yield tell("tops level to {}, diagonals equal", _level(unit))
    if any(case.doors for case in room.cases):
        alike = _figure("even_gaps", unit, "1/32 in" if unit == "in" else "1 mm")
        yield tell("no door rubs, neighbouring gaps alike to {}", alike)
    if any(case.drawers for case in room.cases):
        yield "drawers run, stay shut, and stop before they come out"
    yield "what is tall or stands alone is screwed to studs: pull at its upper edge"
    if any(run.appliances for run in room.runs):
        yield "appliances as their sheets ask: clearances, anti-tip bracket; the trade connects"
    yield "shelves in, on all of their pins"


def _filler(room: Room, filler: Filler) -> Iterator[Rich]:
    """What a filler is cut to and why; three blanks where its gap was not read."""
    unit, part = room.spec.unit, filler.part
    own = room.chain.place(filler.path)
    widest, taper = (room.chain.nodes[f"{own.path}.{name}"] for name in ("widest_gap", "taper"))
    edge = next(word for word in part.ends[2:] if word != "case edge")
    words: list[Inline] = [
        f"{part.mark}, {part.title}: ", Strong(measure_of(part.finished.width, unit)),
        " wide; its widest gap is ", Strong(measure_of(widest, unit)),
        f", scribe the {edge}",
    ]  # fmt: skip
    if filler.beyond.value:
        words.append(", so that doors and pulls round the corner clear each other")
    if taper.value:
        words += [", which tapers ", Strong(measure_of(taper, unit)), f" {_widening(filler)}"]
    if filler.lip is not None:
        words.append(f"; glue {filler.lip.mark} behind its case edge first, and screw through it")
    yield tuple(words)
    gaps: list[Inline] = ["Gap as read: " if filler.is_read else "Gap as planned: "]
    for name, gap in zip(GAP_HEIGHTS, filler.gaps, strict=True):
        gaps += [f" {name} ", Strong(measure_of(gap, unit))]
        if gap.built is None:
            gaps += [", read ", Blank()]
    yield tuple(gaps)


def _widening(filler: Filler) -> str:
    low, middle, high = (gap.value for gap in filler.gaps)
    if middle > max(low, high):
        return "to both ends"
    if middle < min(low, high):
        return "to the middle"
    return "toward the head" if low > high else "toward the foot"
