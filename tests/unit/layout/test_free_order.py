"""A wall whose order is left open: against brute force over every order, and by hand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import permutations

from hypothesis import given as examples
from hypothesis import settings
from tests.unit.layout.walls import FILLER, USUAL, case, free_tasks, inches, said

from casewright.layout.answers import answers
from casewright.layout.conflicts import conflicts
from casewright.layout.demands import LayoutDemand
from casewright.layout.one_wall import lay_out
from casewright.layout.tasks import RunPlace, WallTask

DISHWASHER = RunPlace("dishwasher", inches("24"), inches("24"), opening=True)


def _orders(task: WallTask) -> Iterator[WallTask]:
    """Every order that keeps neighbours together and has a case beside every filler."""
    for places in permutations(task.places):
        at = {place.key: n for n, place in enumerate(places)}
        bare = (places[0].opening and task.left) or (places[-1].opening and task.right)
        held = all(
            p.at_end is None or places[0 if p.at_end == "left" else -1] is p for p in places
        )
        if held and not bare and all(abs(at[one] - at[other]) == 1 for one, other in task.beside):
            yield replace(task, places=places, is_free=False, beside=())


@settings(max_examples=40, deadline=None)
@examples(free_tasks())
def test_no_order_gives_a_better_answer(task: WallTask) -> None:
    """Each order laid out by itself, whose answers other tests prove the best by brute force."""
    found = lay_out(task)
    each = [lay_out(order) for order in _orders(task)]
    costs = [layout.cost for layout in each if layout is not None]
    if not costs:
        assert found is None
        assert conflicts(task) or not each
        return
    assert not conflicts(task)
    assert found is not None
    assert found.cost == min(costs)
    assert found.is_proved
    assert sorted(found.order) == list(range(len(task.places)))
    assert found.task in list(_orders(task))


def test_other_orders_are_told_and_a_swap_of_equals_is_none() -> None:
    """Three cases, a sink and a dishwasher beside it; by hand."""
    sink = RunPlace("sink", inches("36"), inches("36"))
    places = (case("a"), case("b"), case("c"), sink, DISHWASHER)
    task = WallTask(
        inches("140 1/4"), places, FILLER, FILLER, USUAL, is_free=True,
        beside=(("dishwasher", "sink"),),
    )  # fmt: skip
    found = answers(task, said)
    orders = {answer.layout.order for answer in found}
    assert len(orders) > 1
    for answer in found:
        keys = [place.key for place in answer.layout.task.places]
        assert abs(keys.index("sink") - keys.index("dishwasher")) == 1
        assert keys.index("a") < keys.index("b") < keys.index("c")


def test_seams_of_cases_above_stand_on_those_below() -> None:
    """Three bases of 30, and a wall run over them that would else be two of 45; by hand."""
    alone = WallTask(inches("90"), (case("a", "9", "60"), case("b", "9", "60")), None, None, USUAL)
    free = lay_out(alone)
    assert free is not None
    assert free.widths == (inches("45"), inches("45"))
    above = lay_out(replace(alone, seams=(inches("44 1/2"),)), LayoutDemand(on_seams=True))
    assert above is not None
    assert above.starts[1] == inches("44 1/2")
    told = [answer.trade for answer in answers(replace(alone, seams=(inches("44 1/2"),)), said)]
    assert any("every seam on one below" in trade for trade in told)
    assert any("1 seam stands over no seam below" in trade for trade in told)
