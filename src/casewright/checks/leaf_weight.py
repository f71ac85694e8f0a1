"""Doors and lids too heavy for one person to hold while they are hung.

The last lift of a job is a door held in both hands while its hinges find their plates, or a lid
held open while its hinges are screwed on. Over what the shop says one person lifts alone, or over
three times the limit of the lifting equation, the way is another: a helper, blocks or a jack under
the leaf, the lid laid down on its box. The equation takes a door upright, face to the body, by its
edges a third of its height up, from the floor to its hinges; a lid flat, from a stand of 36 in
(90 cm); no handles, no twist, one lift in five minutes. Holding it there with one hand, and the
other at a hinge, is outside of it. What weighs under 15 lb (7 kg) is let pass.

Passes
------
A leaf of 3/4 fibreboard, 16 x 30: about 10 lb.

Fails
-----
A leaf of 1 in fibreboard, 30 x 80: about 64 lb.

Sources
-------
`niosh-lifting`: the equation; that over an index of 3 nearly everybody is at risk is from memory.
`common practice`: where a door is held; densities by the job's stock, what one person lifts by the
job's shop.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import effort_words, helped_words, kilograms
from casewright.findings import Severity
from casewright.room.lifting import Effort, leaf_effort, lid_effort
from casewright.room.model import Room
from casewright.sources import POUND

__all__ = ["RULE"]

_LIGHT = 15 * POUND


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.boxes:
        if not case.fronts and case.spec.lid is None:
            continue
        weights = _weights(room, case)
        for door in case.doors:
            weight = weights.get(door.path, Fraction(0))
            if weight > _LIGHT:
                effort = leaf_effort(room, case, door, weight)
                ways = (helped_words(effort), "blocks or a jack under it while the hinges go in")
                yield from _judge(room, door.path, f"the {door.title}", effort, ways)
        lid = next((part for part in case.parts if part.role == "lid"), None)
        if lid is not None and weights[lid.front] > _LIGHT:
            effort = lid_effort(room, case, lid, weights[lid.front])
            ways = helped_words(effort), "lower it onto its box end by end, never hold it open"
            yield from _judge(room, lid.path, "the lid", effort, ways)


def _weights(room: Room, case: Case) -> dict[str, Fraction]:
    """Weight of each front and of a lid, by its path [kg]."""
    found: dict[str, Fraction] = {}
    for part in case.parts:
        if part.front:
            density = getattr(room.spec.stock[part.stock], "density", Fraction(0))
            found[part.front] = found.get(part.front, Fraction(0)) + part.weight(density)
    return found


def _judge(
    room: Room, path: str, name: str, effort: Effort, ways: tuple[str, ...]
) -> Iterator[Breach]:
    most = room.spec.shop.lift
    over = effort.weight > most
    if over or effort.is_strenuous:
        yield Breach(
            path,
            f"{name} weighs about {kilograms(room, effort.weight)}"
            + (f", over the {kilograms(room, most)} one person lifts here" if over else "")
            + f"; {effort_words(room, effort)}",
            measured=kilograms(room, effort.weight),
            limit=kilograms(room, most),
            remedies=(*ways, "a thinner or lighter sheet, or two smaller leaves"),
        )


RULE = Rule("leaf weight", Severity.CARE, __doc__ or "", "niosh-lifting", _examine)
