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
from typing import NamedTuple

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import HELPER, Lifts, lift_of, reckoning, weight_of
from casewright.dims import Dim, Told, joined, least, tell
from casewright.findings import Reckoning, Severity
from casewright.room.lifting import Effort, leaf_effort, lid_effort
from casewright.room.model import Room
from casewright.sources import POUND

__all__ = ["RULE"]

_NAME = "leaf weight"
_LIGHT = 15 * POUND


def _examine(room: Room) -> Iterator[Breach]:
    lifts = Lifts(room)
    for case in room.boxes:
        for door in case.doors:
            node = room.chain.nodes.get(f"{door.path}.weight")
            if node is not None and node.value > _LIGHT:
                effort = leaf_effort(room, case, door, node.value)
                if _is_heavy(room, effort):
                    leaf = _Leaf(door.path, f"the {door.title}", (door.width, door.height), node)
                    ways = (HELPER, "blocks or a jack under it while the hinges go in")
                    yield _breach(lifts, room, leaf, effort, ways)
        shared = (p for run in room.runs if run.spec.one_lid and run.cases[0] is case
                  for p in run.own_parts)  # fmt: skip
        for lid in (*case.parts, *shared) if case.spec.lid is not None else ():
            if lid.role == "lid":
                density = getattr(room.spec.stock[lid.stock], "density", Fraction(0))
                effort = lid_effort(room, case, lid, lid.weight(density))
                if _is_heavy(room, effort):
                    ways = HELPER, "lower it onto its box end by end"
                    yield _breach(lifts, room, lid, effort, ways)


class _Leaf(NamedTuple):
    """A door: what it is called, its width and height [mm], what it weighs [kg]."""

    path: str
    name: str
    sizes: tuple[Dim, Dim]
    weight: Dim


def _is_heavy(room: Room, effort: Effort) -> bool:
    return effort.weight > _LIGHT and (effort.weight > room.spec.shop.lift or effort.is_strenuous)


def _breach(
    lifts: Lifts, room: Room, leaf: _Leaf | Part, effort: Effort, ways: tuple[str, ...]
) -> Breach:
    own = reckoning(room, _NAME, leaf.path)
    if isinstance(leaf, Part):
        weight = own.let("weight", weight_of(room, own, (leaf,)))
        leaf = _Leaf(leaf.path, "the lid", (leaf.finished.width, leaf.finished.length), weight)
    weighs, most = own.weight(leaf.weight), own.weight(lift_of(room, own))
    over = effort.weight > room.spec.shop.lift
    says = (
        tell("{} weighs about {}", leaf.name, weighs),
        tell(", over the {} one person lifts here", most) if over else "",
        tell("; {}", lifts.words(effort, leaf.name, own, *leaf.sizes)),
    )
    return Breach(
        leaf.path,
        joined("", says),
        measured=weighs.text,
        limit=most.text,
        remedies=(*ways, *_lighter(room, own, leaf.weight, effort)),
        own=own,
    )


def _lighter(room: Room, own: Reckoning, weight: Dim, effort: Effort) -> tuple[Told, ...]:
    """What brings the weight down to what one person lifts here, or what the equation allows."""
    most = [lift_of(room, own)]
    most += [dim for dim in own.numbers if effort.limit and dim.path.endswith(".limit_weight")]
    less = own.weight(weight - least(*most), "less_weight")
    half = own.weight(weight / 2, "half_weight")
    return (
        tell("a thinner or lighter sheet, {} less in all", less),
        tell("two smaller ones, about {} each", half),
    )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "niosh-lifting", _examine)
