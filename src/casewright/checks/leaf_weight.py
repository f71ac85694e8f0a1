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

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import HELPER, Lifts, kilograms, reckoning
from casewright.findings import Severity
from casewright.room.lifting import Effort, leaf_effort, lid_effort
from casewright.room.model import Room
from casewright.sources import POUND

__all__ = ["RULE"]

_LIGHT = 15 * POUND


def _examine(room: Room) -> Iterator[Breach]:
    lifts = Lifts(room)
    for case in room.boxes:
        for door in case.doors:
            node = room.chain.nodes.get(f"{door.path}.weight")
            if node is not None and node.value > _LIGHT:
                effort = leaf_effort(room, case, door, node.value)
                ways = (HELPER, "blocks or a jack under it while the hinges go in")
                yield from _judge(lifts, room, (door.path, f"the {door.title}"), effort, ways)
        shared = (p for run in room.runs if run.spec.one_lid and run.cases[0] is case
                  for p in run.own_parts)  # fmt: skip
        for lid in (*case.parts, *shared) if case.spec.lid is not None else ():
            if lid.role == "lid":
                density = getattr(room.spec.stock[lid.stock], "density", Fraction(0))
                effort = lid_effort(room, case, lid, lid.weight(density))
                ways = HELPER, "lower it onto its box end by end"
                yield from _judge(lifts, room, (lid.path, "the lid"), effort, ways)


def _judge(
    lifts: Lifts, room: Room, named: tuple[str, str], effort: Effort, ways: tuple[str, ...]
) -> Iterator[Breach]:
    path, name = named
    most = room.spec.shop.lift
    over = effort.weight > most
    if effort.weight > _LIGHT and (over or effort.is_strenuous):
        yield Breach(
            path,
            f"{name} weighs about {kilograms(room, effort.weight)}"
            + (f", over the {kilograms(room, most)} one person lifts here" if over else "")
            + f"; {lifts.words(effort, name, reckoning(room, 'leaf weight', path))}",
            measured=kilograms(room, effort.weight),
            limit=kilograms(room, most),
            remedies=(*ways, *_lighter(room, effort)),
        )


def _lighter(room: Room, effort: Effort) -> tuple[str, ...]:
    """What brings the weight down to what one person lifts here, or what the equation allows."""
    most = min(room.spec.shop.lift, effort.limit or room.spec.shop.lift)
    return (
        f"a thinner or lighter sheet, {kilograms(room, effort.weight - most)} less in all",
        f"two smaller ones, about {kilograms(room, effort.weight / 2)} each",
    )


RULE = Rule("leaf weight", Severity.CARE, __doc__ or "", "niosh-lifting", _examine)
