"""What is made later fits what was made before, whatever was cut first."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Any

import pytest
from tests.builders import APPLIED, GLASS, SLAB, case_spec, hardware, house
from tests.jobs import EXAMPLE_NAMES, example

from casewright.casework.build import build_case
from casewright.casework.proof.prove import GRID
from casewright.casework.rails import boards_beside
from casewright.casework.verification import verify
from casewright.dims import Chain, Dim, Origin
from casewright.facts import Fact
from casewright.job.load import read_job
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.proof import prove_run
from casewright.room.specs import JobSpec

_SAW = Origin("made", "as cut")
_FEW = 6
"""So many cases are built at every ninth of their order."""
_ROW = """
format = 1
unit = "in"
[case.left]
kind = "base"
toe = "plinth"
[case.middle]
kind = "base"
width = 24
toe = "plinth"
[case.right]
kind = "base"
toe = "plinth"
[run.counter]
cases = ["left", "middle", "right"]
wall = ["88 1/4", "88 3/8"]
right = "open"
"""
_KINDS: dict[str, dict[str, Any]] = {
    "plain upper": {"front": APPLIED},
    "stacked, dressed end": {
        "joint": "dado", "divider": "24", "front": APPLIED, "upper_front": GLASS,
        "finished": ("left",),
    },
    "rabbeted ends": {"joint": "rabbet", "front": SLAB},
    "captured back": {"back": "grooved", "front": SLAB},
    "applied back": {"back": "applied"},
    "thick back": {"back": "inset"},
    "skirt and crown": {"skirt": "1 1/2", "crown": "3/4", "front": SLAB},
    "base with notch": {
        "kind": "base", "toe": "notch", "height": "34 1/2", "depth": "23 1/4", "front": SLAB,
    },
    "base on plinth": {
        "kind": "base", "toe": "plinth", "height": "34 1/2", "depth": "23 1/4", "front": SLAB,
    },
    "bookcase": {
        "kind": "bookcase", "shelves": 4, "height": "84", "depth": "12", "joint": "dado",
        "edge": "band", "nosing": "1 1/2",
    },
}  # fmt: skip


def _made(chain: Chain) -> list[tuple[str, Fraction]]:
    """Every size of a real thing, in the order of making."""
    return [
        (path, node.value)
        for path, node in chain.nodes.items()
        if node.origin is not None and node.origin.kind == "made"
    ]


def _frozen(sizes: list[tuple[str, Fraction]], stock: str, thickness: Fraction) -> dict[str, Fact]:
    facts = {path: Fact(_SAW, cut=value) for path, value in sizes}
    facts[f"stock.{stock}.thickness"] = Fact(_SAW, built=thickness)
    return facts


@pytest.mark.parametrize("change", [Fraction(1, 2), Fraction(-7, 10)])
@pytest.mark.parametrize("kind", _KINDS)
def test_any_prefix_cut_from_another_sheet_still_goes_together(
    kind: str, change: Fraction
) -> None:
    """Freeze what is made so far as cut, let the next sheets be 0.5 mm thicker or 0.7 thinner.

    Each is tried after every other fortieth of the sizes.
    """
    plain = house()
    build_case(plain, case_spec(**_KINDS[kind]))
    made = _made(plain.chain)
    thickness = plain.chain.nodes["stock.ply18.thickness"].value + change
    step = max(1, len(made) // 40)
    for count in range(0 if change > 0 else step, len(made) + 1, 2 * step):
        later = house(facts=_frozen(made[:count], "ply18", thickness))
        case = build_case(later, case_spec(**_KINDS[kind]))
        assert verify(case, hardware=hardware()).failures == (), made[count - 1][0]
        loose = [fit.path for fit in later.chain.fits.values() if not fit.holds]
        assert loose == [], made[count - 1][0]


@pytest.mark.parametrize("kind", _KINDS)
def test_whatever_is_cut_first_the_rest_is_cut_to_it(kind: str) -> None:
    """One board or side is cut, in no order at all; then the sheet measures 0.4 mm thinner.

    The box comes out by that much narrower, which its fits allow.
    """
    plain = house()
    parts = build_case(plain, case_spec(**_KINDS[kind])).parts
    thickness = plain.chain.nodes["stock.ply18.thickness"].value - Fraction(2, 5)
    beside = [p for p in parts if p.group in ("sides", "horizontals") and p.role != "divider"]
    assert len(beside) >= 4
    for part in beside:
        sizes = [(dim.path, dim.value) for dim in (part.blank.length, part.blank.width)]
        later = house(facts=_frozen(sizes, "ply18", thickness))
        case = build_case(later, case_spec(**_KINDS[kind]))
        failures = verify(case, hardware=hardware()).failures
        assert [each for each in failures if each.check != "size"] == [], part.path
        assert [fit.path for fit in later.chain.fits.values() if not fit.holds] == [], part.path


def _text(name: str) -> str:
    return _ROW if name == "row" else example(name)


@cache
def _job(name: str) -> tuple[JobSpec, Room]:
    """A whole job, and its room with nothing made."""
    spec = read_job(_text(name), name)
    return spec, build(spec)


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_every_board_that_a_bottom_may_be_cut_to_is_a_piece_of_its_case(name: str) -> None:
    """A board that is named and never cut would leave the bottom cut to nothing."""
    for case in _job(name)[1].boxes:
        if case.spec.diagonal is None:
            toe = any(part.path == f"{case.key}.toe_board" for part in case.parts)
            named = {f"{case.key}.{board}" for board, _ in boards_beside(case.spec, toe=toe)}
            flat = {part.path for part in case.parts if part.group == "horizontals"}
            own = {f"{case.key}.bottom", f"{case.key}.floor_cleat"}
            assert named <= flat
            assert flat - named <= own


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_every_chain_ends_in_an_origin(name: str) -> None:
    """Of every number and every gap: what is worked out from nothing says who chose it."""
    chain = _job(name)[1].chain
    stack = [*chain.nodes.values(), *(fit.gap for fit in chain.fits.values())]
    seen: set[int] = set()
    while stack:
        dim = stack.pop()
        if id(dim) not in seen:
            seen.add(id(dim))
            behind = [arg for arg in dim.args if isinstance(arg, Dim)]
            assert behind or dim.origin is not None, (dim.path, dim.op)
            stack.extend(behind)
    assert len(seen) > len(chain.nodes)


@pytest.mark.parametrize("name", [*EXAMPLE_NAMES, "row"])
def test_any_prefix_of_a_whole_job_still_goes_together(name: str) -> None:
    """Every example job and a row on one plinth, at each third of its order, or each ninth."""
    spec, plain = _job(name)
    made = _made(plain.chain)
    sheet = spec.cases[0].box_stock
    thickness = plain.chain.nodes[f"stock.{sheet}.thickness"].value + Fraction(2, 5)
    for ninth in range(0, 10, 1 if len(spec.cases) <= _FEW else 3):
        frozen = _frozen(made[: len(made) * ninth // 9], sheet, thickness)
        room = build(spec, frozen)
        for case in room.cases:
            assert verify(case, hardware=spec.hardware).failures == (), (ninth, case.key)
        for run in room.runs:
            reach = spec.style["sleeper_spacing"].value
            assert prove_run(run, spacing=reach, grid=GRID).failures == (), (ninth, run.spec.key)
        loose = [f.path for f in room.chain.fits.values() if not f.holds]
        assert loose == [], ninth
