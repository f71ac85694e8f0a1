"""Questions the model raises: what is missing, and which parts wait for it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.parts import Part
from casewright.dims import PathReach, tell
from casewright.findings import Question
from casewright.room.appliances import (
    appliance_questions,
    held_for_appliances,
    open_appliances,
)
from casewright.room.arm_questions import arm_questions
from casewright.room.matched import held_together
from casewright.room.model import Room
from casewright.room.panels import held_panels, open_panels, panel_questions
from casewright.room.place_questions import place_questions
from casewright.room.slide_questions import open_slides, slide_questions
from casewright.room.trim_questions import held_pieces, open_trims, trim_questions
from casewright.room.wood_questions import open_wood, wood_question
from casewright.stock import EdgeBand
from casewright.survey.doubts import Doubt

__all__ = ["ask"]


def ask(room: Room) -> Room:
    """Add the questions about readings, stock and hardware; mark the parts that wait for them.

    A part waits when the size it is cut to, or a cut in it, rests on a number nobody has
    confirmed. Holes for hardware that is not at hand hold up the boring, not the cutting.
    """
    unmeasured, doubts = _unmeasured(room), room.survey.doubts
    doubtful = tuple(path for doubt in doubts for path in doubt.paths)
    wood = open_wood(room)
    slides = open_slides(room)
    open_paths = tuple(
        dict.fromkeys(
            (
                *unmeasured,
                *doubtful,
                *wood,
                *slides,
                *open_appliances(room),
                *open_panels(room),
                *open_trims(room),
            )
        )
    )
    waiting: dict[str, list[str]] = {slides.get(path, path): [] for path in open_paths}
    marked = _marked(room, PathReach(open_paths), waiting, slides)
    questions = [
        Question(
            path=path,
            needs=f"measure the thickness of {room.spec.stock[path.split('.')[1]].title}",
            because="sheets are seldom as thick as their label, and these parts are cut to it",
            waiting=tuple(waiting[path]),
            how=f'under [{path.rpartition(".")[0]}] write measured = "..."',
        )
        for path in unmeasured
        if waiting[path]
    ]
    questions.extend(_read_again(doubt, waiting) for doubt in doubts)
    questions.extend(place_questions(room))
    questions.extend(wood_question(room, p, tuple(waiting[p])) for p in wood if waiting[p])
    questions.extend(_hardware(room, marked.cases))
    questions.extend(arm_questions(room, marked.cases))
    questions.extend(slide_questions(marked, waiting))
    questions.extend(appliance_questions(room, waiting))
    questions.extend(panel_questions(room, waiting))
    questions.extend(trim_questions(marked, waiting))
    return replace(marked, questions=(*room.questions, *questions))


def _marked(
    room: Room, reach: PathReach, waiting: Mapping[str, list[str]], sheets: Mapping[str, str]
) -> Room:
    """The room with every part that waits marked, and entered under what it waits for.

    What is machined waits for nothing any more.

    Parameters
    ----------
    sheets
        The data sheet that a number stands in, by the number's path.
    """
    held = held_pieces(room) | held_for_appliances(room) | held_panels(room)

    def own(part: Part) -> set[str]:
        paths = {sheets.get(path, path) for path in _outline(part, reach)}
        return paths.union(held.get(part.path, ()))

    if room.spec.matches:
        held |= dict(held_together(room, {part.path: own(part) for part in room.parts}))

    def mark(part: Part) -> Part:
        is_open = part.state in ("planned", "cut")
        found = tuple(sorted(own(part))) if is_open else ()
        for path in found:
            waiting[path].append(part.path)
        return replace(part, waits_for=found) if found else part

    cases = tuple(
        replace(case, parts=tuple(mark(part) for part in case.parts)) for case in room.cases
    )
    by_key = {case.key: case for case in cases}
    runs = tuple(run.with_parts(mark).with_cases(by_key) for run in room.runs)
    return replace(room, cases=cases, runs=runs)


def _read_again(doubt: Doubt, waiting: Mapping[str, list[str]]) -> Question:
    return Question(
        path=doubt.paths[0],
        needs=tell("read again: {}", doubt.again),
        because=doubt.says,
        waiting=tuple(dict.fromkeys(part for path in doubt.paths for part in waiting[path])),
        how="correct the reading in the job file; if it stands, write it as "
        "{ read = ..., sure = true }",
    )


def _unmeasured(room: Room) -> tuple[str, ...]:
    paths = []
    for key, goods in room.spec.stock.items():
        path = f"stock.{key}.thickness"
        node = room.chain.nodes.get(path)
        if node is not None and node.built is None and not isinstance(goods, EdgeBand):
            paths.append(path)
    return tuple(paths)


def _outline(part: Part, reach: PathReach) -> frozenset[str]:
    dims = [part.blank.length, part.blank.width]
    for feature in part.features:
        if isinstance(feature, Cut):
            dims += [feature.at, feature.width, feature.depth]
    return frozenset().union(*map(reach.of, dims))


def _hardware(room: Room, cases: Iterable[Case]) -> list[Question]:
    asked = []
    for name, sheet, kinds, keys in (
        ("hinge", room.spec.hardware.hinge, ("hinge cup", "hinge plate"),
         "constant, bore_distance and plate_heights, as the sheet in its box gives them"),
        ("pull", room.spec.hardware.pull, ("pull",),
         "centres, the distance between its screws: 0 for a knob"),
    ):  # fmt: skip
        waiting = tuple(
            part.path
            for case in cases
            for part in case.parts
            if any(feature.kind in kinds for feature in part.features)
        )
        if sheet.placeholder and waiting:
            asked.append(
                Question(
                    path=f"hardware.{name}",
                    needs=f"the data sheet of the {name} in hand",
                    because="holes are bored to it; the numbers here are only usual ones",
                    waiting=waiting,
                    how=f"under [hardware.{name}] write {keys}",
                )
            )
    return asked
