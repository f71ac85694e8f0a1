"""`verify`: sound plans pass, and whatever was changed in one is found and told."""

from __future__ import annotations

import copy
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from tests.cut_files import json_of, part, problem, run, write

PROBLEM = problem(part("side", 876, 590, 4), part("shelf", 835, 295, 3))
Change = Callable[[Any], object]


@pytest.fixture(scope="module")
def plan(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """A plan with its order of work."""
    from casewright.job.bare_cutting import cut
    from casewright.job.cut_documents import answer_document
    from casewright.job.cut_file import read_problem
    from casewright.job.patience import Patience

    task = read_problem(write(tmp_path_factory.mktemp("plan"), PROBLEM))
    return answer_document(cut(task, Patience(500), lambda _: None))


def _verified(folder: Path, plan: Any, *options: str) -> int:
    return run("verify", write(folder, PROBLEM), write(folder, plan, "plan.json"), *options)


def test_a_sound_plan(plan: Any, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Says what was checked, and what was not."""
    assert _verified(tmp_path, plan) == 0
    told = capsys.readouterr().out
    assert told.startswith("sound: 7 pieces on 2 sheets, every cut made in thought in its order")
    assert "was not proved anew" in told


def test_a_plan_of_another_hand_needs_no_steps(plan: Any, tmp_path: Path) -> None:
    """Where each part lies, how the sheets are divided, and what it claims."""
    keys = ("placements", "tree", "cost", "bound", "status", "unplaced")
    assert _verified(tmp_path, {key: plan[key] for key in keys}) == 0


def _step_gone(plan: Any) -> None:
    gone = plan["steps"].pop()["number"]
    for card in plan["cards"]:
        card["steps"] = [step for step in card["steps"] if step != gone]


CHANGES: list[tuple[Change, str]] = [
    (lambda p: p["placements"][0].update(x=5), "the cut tree and the placements differ"),
    (lambda p: p["placements"].pop(), "neither placed nor listed as unplaced"),
    (lambda p: p["tree"].pop(), "there is no sheet 1"),
    (lambda p: p["tree"][0]["root"].update(cuts=[5]), "the cuts do not give the pieces"),
    (lambda p: p.update(cost=1), "the cost is not that of the sheets"),
    (lambda p: p["bound"].update(value=9), "at least 9 is claimed"),
    (lambda p: p["steps"][0].update(setting=7), "step 1"),
    (_step_gone, "the steps make"),
    (lambda p: p["steps"].reverse(), "the piece to cut is not in hand"),
    (lambda p: p["cards"][0].update(setting=7), "the card is set otherwise"),
    (lambda p: p["cards"].pop(), "the step is not on its card"),
    (lambda p: p.update(kerf=4), "kerf is 4, it must be 3"),
    (lambda p: p.update(stages=True), "stages is True, it must be 3"),
    (lambda p: p.update(unit="in"), "unit is 'in'"),
    (lambda p: p.update(gap=1), "gap is 1, it must be 0"),
    (lambda p: p.update(verdict="the best there is"), "verdict is 'the best there is'"),
    (lambda p: p["bound"].update(scope="my cutting"), '"my cutting" is no scope'),
    (lambda p: p["bound"].update(scope="two-stage cutting"), "the problem allows 3 stages"),
    (lambda p: p["work"].update(cuts=1), "work: cuts is 1"),
    (lambda p: p["work"].update(minutes=0), "work: minutes is 0"),
    (lambda p: p.update(work=3), "work is 3, it must be an object"),
    (lambda p: p["steps"][0].update(cautions=["heavy"]), "heavy is not so"),
    (lambda p: p.pop("steps"), "the setting cards do not count the pieces"),
]  # fmt: skip


@pytest.mark.parametrize(("change", "word"), CHANGES)
def test_a_change_is_found(
    change: Change, word: str, plan: Any, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Exit code 2, and in words which rule is broken."""
    changed = copy.deepcopy(plan)
    change(changed)
    assert _verified(tmp_path, changed) == 2
    assert word in capsys.readouterr().out


def test_a_placement_names_the_stock_of_its_sheet(
    plan: Any, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    changed = copy.deepcopy(plan)
    changed["placements"][1]["stock"] = "oak"
    assert _verified(tmp_path, changed) == 2
    told = capsys.readouterr().err
    assert 'plan.placements[1]: stock is "oak"; it must be that of its sheet, "ply"' in told


def test_breaches_are_told_as_data(
    plan: Any, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Sheet, part and rule, for other programs."""
    changed = copy.deepcopy(plan)
    changed["placements"][0]["x"] += 1
    files = write(tmp_path, PROBLEM), write(tmp_path, changed, "plan.json")
    document = json_of(capsys, "verify", *files, codes=(2,))
    assert document["schema"] == "casewright/verify/1"
    assert (document["sound"], document["same_problem"]) == (False, True)
    placed = changed["placements"][0]
    assert {(b["sheet"], b["part"]) for b in document["breaches"]} >= {
        (placed["sheet"], placed["part"])
    }


def test_a_plan_for_another_problem_is_told_as_such(
    plan: Any, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Before its breaches."""
    other = problem(part("side", 876, 590, 5), part("shelf", 835, 295, 3))
    code = run("verify", write(tmp_path, other), write(tmp_path, plan, "plan.json"))
    assert code == 2
    assert capsys.readouterr().out.startswith("the plan was made for another problem")


def test_the_limits_of_the_shop_are_looked_at(
    plan: Any, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A plan made for any saw is refused where the saws reach less far."""
    limits = {"rip_capacity": 300, "crosscut_capacity": 300, "straightedge": 300}
    small = write(tmp_path, PROBLEM | {"shop": {"limits": limits}})
    assert run("verify", small, write(tmp_path, plan, "plan.json")) == 2
    assert "beyond the reach of the saw" in capsys.readouterr().out


def test_a_caution_that_a_cut_needs_must_be_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A sheet of 2440 x 1220 mm, where one person handles half of it."""
    shop = {"limits": {"lift_area": 1220 * 1220, "narrowest_rip": 80}}
    given = write(tmp_path, PROBLEM | {"shop": shop})
    plan = json_of(capsys, "cut", "--problem", given, "--work", "500")
    heavy = [step for step in plan["steps"] if "heavy" in step["cautions"]]
    assert heavy
    heavy[0]["cautions"] = [each for each in heavy[0]["cautions"] if each != "heavy"]
    assert run("verify", given, write(tmp_path, plan, "plan.json")) == 2
    assert f"step {heavy[0]['number']}: lacks heavy" in capsys.readouterr().out


def test_what_follows_from_the_area_is_said_to(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Two of 1500 x 1200 mm take more than a sheet of 2440 x 1220 by their area alone."""
    given = write(tmp_path, problem(part("top", 1500, 1200, 2)))
    plan = json_of(capsys, "cut", "--problem", given, "--work", "500")
    assert run("verify", given, write(tmp_path, plan, "plan.json")) == 0
    assert "follows from the area of the parts" in capsys.readouterr().out


def _deep(plan: Any) -> None:
    node = plan["tree"][0]["root"]
    for _ in range(300):
        node = {"x": 0, "y": 0, "l": 9, "w": 9, "direction": "rip", "cuts": [3], "pieces": [node]}
    plan["tree"][0]["root"] = node


@pytest.mark.parametrize(
    ("change", "word"),
    [
        (_deep, "at most 100 deep"),
        (lambda p: p.update(placements=3), "placements is 3"),
        (lambda p: p["steps"][0].update(datum="north"), 'datum is "north"'),
        (lambda p: p["steps"][0].update(leaves=[]), "leaves is []"),
        (lambda p: p["steps"][0].pop("piece"), "piece is missing"),
        (lambda p: p["cards"][0].update(steps="1"), 'steps is "1"'),
        (lambda p: p.update(steps=None), "steps is missing"),
    ],
)
def test_what_has_no_plan_s_shape_is_refused(
    change: Change, word: str, plan: Any, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """With its place in the file."""
    changed = copy.deepcopy(plan)
    change(changed)
    assert _verified(tmp_path, changed) == 2
    told = capsys.readouterr().err
    assert told.startswith("plan.json, ")
    assert word in told
