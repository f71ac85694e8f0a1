"""Cuts and holes of single boards: what lies in wood, what does not."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.builders import one_case
from tests.pieces import board, bores, cut, dim

from casewright.casework.features import Bores, Cut
from casewright.casework.parts import Part
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.bores import check_bores
from casewright.casework.proof.cuts import check_cuts
from casewright.casework.proof.failure import Failure


def _alone(part: Part) -> Assembled:
    case = replace(one_case(), parts=(part,), joints=(), assembly=())
    return Assembled.of(case)


def _cuts(*features: Cut) -> list[Failure]:
    return list(check_cuts(_alone(board(200, 100, 18, *features))))


def _bores(*features: Cut | Bores) -> list[Failure]:
    return list(check_bores(_alone(board(200, 100, 18, *features))))


def test_a_dado_in_its_board_is_a_cut() -> None:
    """A dado across the board, less deep than the board is thick, gives nothing to say."""
    assert _cuts(cut()) == []


@pytest.mark.parametrize(
    ("wrong", "says", "amount"),
    [
        ({"at": 195}, "runs out of the part", 5),
        ({"datum": "l1", "at": 193}, "runs out of the part", 3),
        ({"end": 104}, "runs out of the part", 4),
        ({"depth": 18}, "cuts the part in two", 0),
        ({"depth": 20}, "cuts the part in two", 2),
        ({"width": 0}, "takes no wood away", 0),
        ({"start": 60, "end": 50}, "takes no wood away", 0),
    ],
)
def test_a_cut_that_is_no_cut_of_its_part(
    wrong: dict[str, object], says: str, amount: int
) -> None:
    """A dado past the end, through the board or of no size is found, with by how much."""
    found = [f for f in _cuts(cut(**wrong)) if says in f.says]
    assert [f.amount for f in found] == [amount]
    assert found[0].paths == ("board.dado", "board")


def test_a_cut_where_another_took_the_wood() -> None:
    """A second dado inside a deeper and wider one takes nothing away."""
    second = cut(path="board.second", at=22, width=4, depth=3)
    found = _cuts(cut(), second)
    assert [(f.paths[0], f.says) for f in found] == [
        ("board.second", "the dado takes no wood away")
    ]


def test_a_notch_goes_right_through() -> None:
    """A notch as deep as the part is thick is right; one that stops short is not."""
    corner = cut(kind="notch", at=0, start=0, end=30, depth=18)
    assert _cuts(corner) == []
    assert [f.amount for f in _cuts(replace(corner, depth=dim(16)))] == [2]


def test_a_part_without_a_size() -> None:
    """A part whose width came out at nothing is named."""
    found = list(check_cuts(_alone(board(200, 0, 18))))
    assert [(f.check, f.paths) for f in found] == [("parts", ("board",))]


def test_holes_in_wood() -> None:
    """Blind holes clear of edges, cuts and each other give nothing to say."""
    assert _bores(bores((50, 37), (82, 37)), cut(at=100)) == []


@pytest.mark.parametrize(
    ("place", "amount"), [((50, 2), "1/2"), ((199, 50), "3/2"), ((50, 103), "11/2")]
)
def test_a_hole_that_breaks_an_edge(place: tuple[int, int], amount: str) -> None:
    """A hole nearer to an edge than its radius is found, with how far it reaches out."""
    found = _bores(bores(place))
    assert [(f.says, f.amount) for f in found] == [
        ("a hole for the shelf pins breaks the edge of the part", Fraction(amount))
    ]


def test_a_hole_keeps_wood_for_the_bits_point() -> None:
    """In 18 mm a hole 17 mm deep just keeps the 1 mm a bit's point takes, one of 17.5 does not."""
    assert _bores(bores((50, 37), depth=17)) == []
    found = _bores(bores((50, 37), depth=Fraction(35, 2)))
    assert [(f.says, f.amount) for f in found] == [
        ("a hole for the shelf pins comes through the far face", Fraction(1, 2))
    ]


def test_a_hole_in_a_dado_and_one_just_beside_it() -> None:
    """A round hole may pass a dado's corner where the box round the hole would not."""
    stopped = cut(at=100, width=10, end=40)
    assert [f.says for f in _bores(stopped, bores((98, 30)))] == [
        "a hole for the shelf pins runs into a cut of the part"
    ]
    assert _bores(stopped, bores((98, 42))) == []
    assert _bores(cut(face="B", at=100, width=10), bores((105, 30), depth=10)) == []


@pytest.mark.parametrize(("apart", "crowded"), [(5, False), (4, True)])
def test_two_holes_that_run_into_each_other(apart: int, crowded: bool) -> None:
    """Holes of 5 mm may touch at 5 mm between centres; nearer they meet, in one row or two."""
    assert bool(_bores(bores((50, 37), (50 + apart, 37)))) is crowded
    other = bores((50 + apart, 37), path="board.more", kind="hinge plate")
    assert bool(_bores(bores((50, 37)), other)) is crowded


def test_holes_from_both_faces_meet_in_the_middle() -> None:
    """Two blind holes from opposite faces meet when their depths add up to the thickness."""
    front = bores((50, 37), depth=9)
    assert _bores(front, bores((50, 37), path="board.back", face="B", depth=9)) == []
    assert len(_bores(front, bores((50, 37), path="board.back", face="B", depth=10))) == 1
