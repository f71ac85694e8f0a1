"""Proof of the trims of a run: their pieces meet each other, the cases, and what the run ends at.

It works on sizes and placements as they are, never on the formulas that made them.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.levels import extent
from casewright.casework.parts import Part
from casewright.casework.proof import Failure
from casewright.room.model import Run
from casewright.room.specs import RunEnd
from casewright.room.trims.model import Trim

__all__ = ["trim_failures"]


_OF_A_CROWN = ("crown", "backing", "frieze")


def _low(part: Part, axis: int) -> Fraction:
    return extent(part, axis)[0].value


def _high(part: Part, axis: int) -> Fraction:
    return extent(part, axis)[1].value


def _across(trim: Trim) -> list[Part]:
    """The pieces that run back to the wall."""
    return [part for part in trim.parts if part.placed.orientation.length.axis == 2]


def trim_failures(run: Run) -> Iterator[Failure]:
    """Everything about the trims of a run that does not meet."""
    by_kind = {trim.kind: trim for trim in run.trims}
    for trim in run.trims:
        yield from _joined(trim)
        yield from _ends(run, trim)
        yield from _level(trim)
    for trim in run.trims:
        if trim.kind == "toe skin":
            yield from _toe(run, trim)
    for rail in (trim for trim in run.trims if trim.kind == "light rail"):
        yield from _at(
            rail, 1, run.lift.value, "does not meet the bottoms of the cases", high=True
        )
        front = _behind(run, rail).face_plane.value
        yield from _at(rail, 2, front, "is not flush with the front edges", high=True)
        yield from _turned(run, rail, flush=True)
    sets = ([trim for trim in run.trims if trim.kind == kind] for kind in _OF_A_CROWN)
    for crown, backing, frieze in zip(*sets, strict=True):
        yield from _crown(run, crown, backing, frieze)
    if "seam strip" in by_kind:
        yield from _on_seams(run, by_kind["seam strip"])
    if "seat lid" in by_kind:
        yield from _lid(run, by_kind["seat lid"])
    if "scribe moulding" in by_kind:
        yield from _scribed(run, by_kind["scribe moulding"])


def _lid(run: Run, lid: Trim) -> Iterator[Failure]:
    """It lies on all boxes, flush with their backs, proud in front, as far from either end."""
    left, right = run.starts[0].value, run.starts[-1].value + run.cases[-1].overall_width.value
    for part in lid.parts:
        rest = [abs(_low(part, 1) - case.height.value) for case in run.cases]
        if max(rest):
            yield Failure("joints", (part.path,), "the lid does not lie on every box", max(rest))
        ends = (_low(part, 0) - left, right - _high(part, 0))
        if min(ends) < 0 or ends[0] != ends[1]:
            off = abs(ends[0] - ends[1])
            yield Failure("size", (part.path,), "the lid is not in the middle of its seats", off)
        if _low(part, 2) or _high(part, 2) < max(case.face_plane.value for case in run.cases):
            says = "the lid does not reach from the backs of its boxes to their fronts"
            yield Failure("size", (part.path,), says, abs(_low(part, 2)))
        if any(edge.edge == "w1" for edge in part.edges):
            yield Failure("edges", (part.path,), "its treated edge lies at the wall")
    yield from _lid_screws(run, lid)


def _lid_screws(run: Run, lid: Trim) -> Iterator[Failure]:
    """A fixed one is held by each stretcher under it, by screws that end inside it."""
    starts = dict(zip((case.key for case in run.cases), run.starts, strict=True))
    under = {p.path: p for case in run.cases for p in case.parts if p.role == "stretcher"}
    fixed = run.cases[0].spec.lid == "fixed"
    if {screws.through for screws in lid.screws} != (set(under) if fixed else set()):
        yield Failure("joints", (lid.path,), "it is not screwed to every stretcher under it")
    over = {part.path: part for part in lid.parts}
    for screws in lid.screws:
        one, part = under.get(screws.through), over.get(screws.into)
        if one is None or part is None:
            yield Failure("joints", (screws.path,), "screws of the lid hold nothing under it")
            continue
        thick = one.finished.thickness.value
        point = screws.length.value - thick
        start = starts[one.case].value
        clear = _low(part, 0) <= start + _high(one, 0) and start + _low(one, 0) <= _high(part, 0)
        if _high(one, 1) != _low(part, 1) or not clear:
            says = "the lid does not lie on the stretcher that it is screwed to"
            yield Failure("joints", (screws.path,), says)
        if not 0 < point < part.finished.thickness.value:
            says = "screws of the lid end short of it, or come out of it"
            yield Failure("fasteners", (screws.path,), says, abs(point))


def _joined(trim: Trim) -> Iterator[Failure]:
    """Each piece begins where the one before it ends; a scarf laps by a thickness."""
    for one, other in pairwise(trim.along):
        lap = one.part.finished.thickness.value if one.right.kind == "scarf" else 0
        off = abs(_high(one.part, 0) - lap - _low(other.part, 0))
        if off:
            says = f"the {other.part.title} does not begin where the {one.part.title} ends"
            yield Failure("size", (other.part.path, one.part.path), says, off)


def _ends(run: Run, trim: Trim) -> Iterator[Failure]:
    """It begins and ends where what it runs along does; a piece that turns goes past that."""
    fronts = trim.along
    if trim.start is None or not fronts:
        return
    start, along = trim.start.value, trim.open_lengths[0]
    sprung = trim.sprung.value if trim.sprung is not None else Fraction(0)
    first, last = fronts[0], fronts[-1]
    for piece, cut, off in (
        (first, first.left, start - _low(first.part, 0)),
        (last, last.right, _high(last.part, 0) - start - along.value - sprung),
    ):
        if off < 0 or (off and not cut.turns):
            says = f"the {piece.part.title} does not end with what it runs along"
            yield Failure("size", (piece.part.path,), says, abs(off))
    if along.built is None:
        bent = first.left.is_bend, last.right.is_bend
        (left, low), (right, high) = _what_it_runs_along(run, start, start + along.value)
        ends = ((left, start, low, 1), (right, start + along.value, high, -1))
        for end, edge, case, way in (e for e, skip in zip(ends, bent, strict=True) if not skip):
            off = (case - edge) * way
            # In an inside corner a crown ends where it meets that of the other run.
            may_stop = end != "open" and trim.kind in ("crown", "backing", "frieze")
            if (off < 0 and not may_stop) or (off and end == "open"):
                says = f"the {trim.title} does not end with the cases"
                yield Failure("size", (trim.path,), says, abs(off))


def _what_it_runs_along(
    run: Run, low: Fraction, high: Fraction
) -> tuple[tuple[RunEnd, Fraction], tuple[RunEnd, Fraction]]:
    """What the cases behind a trim end at on either side, and where; an appliance is open."""
    reach = [
        (start.value, start.value + case.overall_width.value, case.key)
        for case, start in zip(run.cases, run.starts, strict=True)
    ]
    behind = [each for each in reach if each[0] < high and each[1] > low] or reach
    places = run.spec.places
    left: RunEnd = run.spec.left if behind[0][2] == places[0] else "open"
    right: RunEnd = run.spec.right if behind[-1][2] == places[-1] else "open"
    return (left, behind[0][0]), (right, behind[-1][1])


def _reach(run: Run, trim: Trim) -> tuple[Fraction, Fraction]:
    """Both ends of the cases behind a trim."""
    start = trim.start.value if trim.start is not None else Fraction(0)
    (_, left), (_, right) = _what_it_runs_along(run, start, start + trim.open_lengths[0].value)
    return left, right


def _behind(run: Run, trim: Trim) -> Case:
    """The first of the cases behind a trim."""
    left, right = _reach(run, trim)
    return next(case for case, start in zip(run.cases, run.starts, strict=True)
                if left <= start.value < right)  # fmt: skip


def _level(trim: Trim) -> Iterator[Failure]:
    """All pieces but upright ones begin and end at the same heights."""
    flat = [part for part in trim.parts if part.placed.orientation.length.axis != 1]
    for one, other in pairwise(flat):
        off = max(abs(_low(one, 1) - _low(other, 1)), abs(_high(one, 1) - _high(other, 1)))
        if off:
            says = f"the {other.title} is not level with the {one.title}"
            yield Failure("size", (other.path, one.path), says, off)


def _at(
    trim: Trim, axis: int, plane: Fraction, says: str, *, high: bool = False
) -> Iterator[Failure]:
    """The pieces along the wall touch a plane."""
    for part in (piece.part for piece in trim.along):
        off = abs((_high if high else _low)(part, axis) - plane)
        if off:
            yield Failure("joints", (part.path,), f"the {part.title} {says}", off)


def _toe(run: Run, skin: Trim) -> Iterator[Failure]:
    case = next(each for each in run.cases if each.mouth is None)
    bottom = next(level for level in case.levels if level.role == "bottom").low.value
    yield from _at(skin, 1, bottom, "does not reach up to the bottoms", high=True)
    notches = [
        cut for part in case.parts if part.role == "side" for cut in part.features
        if isinstance(cut, Cut) and cut.kind == "notch" and cut.end is not None
    ]  # fmt: skip
    for cut in notches[:1]:
        plane = case.depth.value - (cut.end.value if cut.end is not None else 0)
        yield from _at(skin, 2, plane, "does not lie on the toe boards")
    for plinth in run.plinths:
        yield from _at(skin, 2, plinth.case.depth.value, "does not lie on the plinth")


def _turned(run: Run, trim: Trim, *, flush: bool) -> Iterator[Failure]:
    """A return and the front piece reach equally far past the corner that they turn.

    Parameters
    ----------
    flush
        Whether the trim's outer faces are those of the cases; else its inner ones are.
    """
    fronts = trim.along
    for part in _across(trim):
        left = part.placed.orientation.length.sign > 0
        front = fronts[0].part if left else fronts[-1].part
        edge = (_low if left == flush else _high)(part, 0)
        past = edge - _low(front, 0) if left else _high(front, 0) - edge
        piece = next(each for each in trim.pieces if each.part is part)
        rear = Fraction(0) if piece.rear is None else piece.rear.value
        read = piece.read.built if piece.read is not None else None
        face = (_high if flush else _low)(front, 2) if read is None else rear + read
        off = abs(past - (_high(part, 2) - face))
        if off:
            says = f"the {part.title} and the {front.title} do not close their mitre"
            yield Failure("joints", (part.path, front.path), says, off)
        off = abs(edge - _reach(run, trim)[0 if left else 1])
        if off and not trim.open_lengths[0].built:
            says = f"the {part.title} does not lie on the end of the cases"
            yield Failure("joints", (part.path,), says, off)
        if _low(part, 2) != rear:
            says = f"the {part.title} does not reach the {'face beside it' if rear else 'wall'}"
            yield Failure("size", (part.path,), says, abs(_low(part, 2) - rear))


def _crown(run: Run, crown: Trim, backing: Trim, frieze: Trim) -> Iterator[Failure]:
    """Backing on the cases, flush with them; the frieze on it; the crown on that."""
    (left_end, right_end), case = _reach(run, crown), _behind(run, crown)
    top = run.lift.value + case.height.value
    for trim in (backing, frieze):
        yield from _at(trim, 1, top, "does not stand on the cases")
    yield from _at(
        backing, 2, case.face_plane.value, "is not flush with the front edges", high=True
    )
    yield from _at(frieze, 2, case.face_plane.value, "does not lie on the backing")
    for part in _across(backing):
        left = part.placed.orientation.length.sign > 0
        edge = _low(part, 0) - left_end if left else _high(part, 0) - right_end
        fronts = backing.along
        behind = _low((fronts[0] if left else fronts[-1]).part, 2)
        if (edge and not backing.open_lengths[0].built) or _high(part, 2) != behind:
            says = f"the {part.title} does not close the corner of the backing"
            yield Failure("joints", (part.path,), says, abs(edge))
    face = max((_high(each.part, 2) for each in frieze.along), default=Fraction(0))
    yield from _at(crown, 2, face, "does not lie on the frieze board")
    upper = min((_high(part, 1) for part in frieze.parts), default=Fraction(0))
    # Where the ceiling leaves too little over the cases all of it begins below their tops: told.
    sunk = all(_low(part, 1) < top for part in crown.parts)
    for part in crown.parts:
        if not sunk and not top <= _low(part, 1) < upper:
            says = f"nothing stands behind the foot of the {part.title}"
            yield Failure("joints", (part.path, frieze.path), says)
    yield from _turned(run, crown, flush=False)


def _on_seams(run: Run, strips: Trim) -> Iterator[Failure]:
    """On the front edges of two boxes, proud inside of both, and trimmed flush with both."""
    starts = {case.key: start.value for case, start in zip(run.cases, run.starts, strict=True)}
    seams = [(left, right) for left, right in run.neighbours
             if left.spec.face == right.spec.face == "strips"]  # fmt: skip
    for part in strips.parts:
        low, high = _low(part, 0), _high(part, 0)
        met = next((pair for pair in seams if low < starts[pair[1].key] < high), None)
        if met is None or part.placed.z.value != met[0].depth.value:
            says = f"the {part.title} does not lie on the edges of two boxes"
            yield Failure("joints", (part.path,), says)
            continue
        left, right = met
        sides = [next(p for p in case.parts if p.role == "side" and p.hand == hand)
                 for case, hand in ((left, "right"), (right, "left"))]  # fmt: skip
        inside = (starts[left.key] + _low(sides[0], 0), starts[right.key] + _high(sides[1], 0))
        trims = {cut.datum: cut.width.value for cut in part.features if isinstance(cut, Cut)}
        off = max(abs(low + trims.get("w1", Fraction(0)) - inside[0]),
                  abs(high - trims.get("w0", Fraction(0)) - inside[1]))  # fmt: skip
        if off or len(trims) != 2:
            says = f"the {part.title} is not trimmed flush with the inside of both boxes"
            yield Failure("joints", (part.path,), says, off)
        yield from _trimmed_between(part, run.lift.value, (left, right))
        face = left.frame
        base = run.lift.value + (face.y.value if face is not None else 0)
        off = max(abs(_low(part, 1) - base), abs(_high(part, 1) - run.lift.value
                                                 - left.height.value))  # fmt: skip
        if off:
            says = f"the {part.title} is not as tall as the faces beside it"
            yield Failure("size", (part.path,), says, off)


def _trimmed_between(part: Part, lift: Fraction, cases: tuple[Case, Case]) -> Iterator[Failure]:
    """Either edge is trimmed from each board of its box to the next, up to what closes its top."""
    foot = _low(part, 1)
    for case, edge in zip(cases, ("w1", "w0"), strict=True):
        cuts = sorted(
            (foot + cut.start.value - lift, foot + cut.end.value - lift)
            for cut in part.features
            if isinstance(cut, Cut) and cut.datum == edge and cut.start and cut.end
        )
        box = [p for p in case.parts if not p.front]
        front = max(_high(p, 2) for p in box if p.role == "side")
        boards = sorted(
            (_low(p, 1), _high(p, 1)) for p in box
            if p.role in ("bottom", "top", "stretcher", "divider", "fixed shelf")
            and _high(p, 2) == front
        )  # fmt: skip
        wanted = [(below[1], above[0]) for below, above in pairwise(boards)]
        off = max((abs(a - b) for own, bay in zip(cuts, wanted, strict=False)
                   for a, b in zip(own, bay, strict=True)), default=Fraction(0))  # fmt: skip
        if off or len(cuts) != len(wanted):
            says = f"the {part.title} is not trimmed all along the openings beside it"
            yield Failure("joints", (part.path, case.key), says, off)


def _scribed(run: Run, trim: Trim) -> Iterator[Failure]:
    for part in trim.parts:
        left = part.placed.orientation.width.sign < 0
        edge = run.starts[0].value if left else run.cases_end.value
        off = max(abs((_high if left else _low)(part, 0) - edge), abs(_low(part, 2)),
                  abs(_low(part, 1) - run.lift.value))  # fmt: skip
        if off:
            says = f"the {part.title} does not lie in the corner of case and wall"
            yield Failure("joints", (part.path,), says, off)
