"""How many hinges a door gets: by its height and by its weight, the greater of the two."""

from __future__ import annotations

from casewright.casework.fronts.leaves import LeafPlan, part_remedy, report
from casewright.casework.fronts.weights import leaf_weight, pounds
from casewright.casework.house import House
from casewright.casework.maker import Maker
from casewright.dims import Dim, Given, Origin, tell, weight_text
from casewright.findings import Finding, Severity
from casewright.sources import INCH

__all__ = ["hinge_count"]

_WORDS = {2: "a third hinge", 3: "a fourth hinge", 4: "a fifth hinge"}

# Common practice, as hinge makers' charts give it: tallest and heaviest door for 2, 3 and 4
# hinges. A fifth carries up to 100 in and 60 lb.
_TALLEST = {2: 40, 3: 60, 4: 80, 5: 100}
_HEAVIEST = {2: 15, 3: 30, 4: 45, 5: 60}


def hinge_count(maker: Maker, leaf: LeafPlan) -> int:
    """Number of hinges of a leaf, with the reasons kept for `why` [-]."""
    place = maker.place.at(leaf.name)
    weight = leaf_weight(maker, leaf)
    by_height = by_weight = 2
    for count, words in _WORDS.items():
        tallest = _tallest(maker.house, count)
        if not place.over(leaf.height, tallest, f"{words}, the door is too tall for {count}"):
            break
        by_height = count + 1
    for count, words in _WORDS.items():
        heaviest = _heaviest(maker.house, count)
        if not place.over(weight, heaviest, f"{words}, the door is too heavy for {count}"):
            break
        by_weight = count + 1
    _beyond(maker, leaf, weight)
    return max(by_height, by_weight)


def _tallest(house: House, count: int) -> Dim:
    origin = Origin("cited", f"tallest door on {count} hinges", "common practice")
    return house.enter(f"rule.hinges_{count}.tallest", Given(_TALLEST[count] * INCH, origin))


def _heaviest(house: House, count: int) -> Dim:
    note = f"heaviest door on {count} hinges"
    return pounds(house, f"rule.hinges_{count}.heaviest", _HEAVIEST[count], note)


def _beyond(maker: Maker, leaf: LeafPlan, weight: Dim) -> None:
    """A finding for a door that five hinges are not made for."""
    tallest, heaviest = _tallest(maker.house, 5), _heaviest(maker.house, 5)
    if leaf.height.value <= tallest.value and weight.value <= heaviest.value:
        return
    path, unit = maker.path(leaf.name), maker.house.unit
    sums = maker.reckoning("hinge load", path)
    tall, (heavy, own) = sums.text(tallest), (
        sums.said(each, weight_text(each.value, unit), "weight") for each in (heaviest, weight)
    )  # fmt: skip
    report(
        maker,
        Finding(
            rule="hinge load",
            severity=Severity.STOP,
            path=path,
            says=tell(
                "too heavy or too tall for five hinges: the {}, about {} and {} high",
                leaf.called, own, sums.text(leaf.height, "height"),
            ),
            measured=own.text,
            limit=f"{heavy.text}, {tall.text}",
            source="common practice",
            remedies=(part_remedy(leaf),
                      tell("part the front with a divider: doors at most {} tall", tall),
                      tell("a stock for the doors that leaves them at most {}", heavy)),
            numbers=sums.numbers,
        ),
    )  # fmt: skip
