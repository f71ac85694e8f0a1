"""What can stay as planned: the optimum of the model against every choice, ties and all."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from types import SimpleNamespace
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from casewright.dims import Chain, Dim, Origin
from casewright.resolve.staying_model import Resize, StayingModel

Q = Fraction
READ = Origin("measured", "calliper")
MOVES = st.sampled_from([sign * Q(n, 8) for n in (4, 5, 6) for sign in (1, -1)])
BANDS = st.sampled_from([Q(7, 8), Q(11, 16)])
"""One of two pieces that moved apart may stay, both may not: which one is a matter of the ties."""


@dataclass(frozen=True)
class Shop:
    """Pieces that rest on a reading or on one another, as they are and as they were planned."""

    room: Any
    pieces: tuple[Resize, ...]
    rests_on: tuple[int | None, ...]
    planned_settings: frozenset[tuple[str, object]]


@st.composite
def shops(draw: st.DrawFn) -> Shop:
    """Two to five pieces of one size each, and gaps between them."""
    chain = Chain()
    place = chain.place("")
    sheet = place.enter("sheet", Q(18), READ)
    longer = [place.enter(f"longer_{by}", Q(by), READ) for by in (0, 1, 2)]
    pieces: list[Resize] = []
    rests_on: list[int | None] = []
    for number in range(draw(st.integers(2, 5))):
        on = draw(st.none() | st.integers(0, number - 1)) if number > 1 else None
        below: Dim = sheet if on is None else pieces[on].sizes[0][0]
        more = longer[draw(st.integers(0, 2))]  # few sizes, so that there are ties
        dim = place.at(f"p{number}").made("length", below + more)
        part: Any = SimpleNamespace(path=f"p{number}", stock="plywood")
        pieces.append(Resize(part, ((dim, dim.value + draw(MOVES)),)))
        rests_on.append(on)
    for number in range(draw(st.integers(1, 5))):
        one, two = (draw(st.sampled_from(pieces)).sizes[0][0] for _ in range(2))
        gap = one - (sheet if one is two else two)
        low, high = (draw(BANDS) for _ in range(2))
        place.fit(f"fit_{number}", gap, gap.value - low, gap.value + high, "p0")
    known = draw(st.frozensets(st.sampled_from([each.sizes[0][0].value for each in pieces])))
    room: Any = SimpleNamespace(chain=chain)
    return Shop(room, tuple(pieces), tuple(rests_on), frozenset(("plywood", v) for v in known))


def offs(shop: Shop, keeps: tuple[bool, ...]) -> list[Fraction]:
    """By how much each piece is off its size of now: kept as planned, or as what it rests on."""
    found: list[Fraction] = []
    for keep, piece, on in zip(keeps, shop.pieces, shop.rests_on, strict=True):
        dim, planned = piece.sizes[0]
        follows = Q(0) if on is None else found[on]
        found.append(planned - dim.value if keep else follows)
    return found


def holds(shop: Shop, off: list[Fraction]) -> bool:
    """Whether every gap keeps its band with these sizes."""
    by = {piece.sizes[0][0].path: each for piece, each in zip(shop.pieces, off, strict=True)}
    for fit in shop.room.chain.fits.values():
        one, two = (by.get(arg.path, Q(0)) for arg in fit.gap.args)
        if not fit.low <= fit.gap.value + one - two <= fit.high:
            return False
    return True


def cost(shop: Shop, keeps: tuple[bool, ...], off: list[Fraction]) -> tuple[int, int, Fraction]:
    """Pieces that change, settings that nobody planned, and how far sizes move."""
    settings_, moved = set(), Q(0)
    for keep, piece, each in zip(keeps, shop.pieces, off, strict=True):
        dim, planned = piece.sizes[0]
        if not keep:
            settings_.add(("plywood", dim.value))
            moved += abs(dim.value + each - planned)
    return keeps.count(False), len(settings_ - shop.planned_settings), moved


@settings(max_examples=100, deadline=None)
@given(shops())
def test_the_best_choice_is_the_best_of_all_choices(shop: Shop) -> None:
    """Fewest changes, then fewest new settings, then the least movement; to the thousandth."""
    choices = list(product((True, False), repeat=len(shop.pieces)))
    found = {keeps: offs(shop, keeps) for keeps in choices}
    best = min(cost(shop, keeps, off) for keeps, off in found.items() if holds(shop, off))
    model = StayingModel(shop.room, shop.pieces, shop.planned_settings)
    kept = {each.part.path for each in model.best()}
    mine = tuple(piece.part.path in kept for piece in shop.pieces)
    assert holds(shop, found[mine])
    changes, new, moved = cost(shop, mine, found[mine])
    assert (changes, new) == best[:2]
    assert abs(moved - best[2]) < Q(1, 50)


def test_a_setting_that_is_there_goes_before_a_smaller_move() -> None:
    """One of two has to follow: the one that moves by 3/4 to a known setting, not by 1/2."""
    place = Chain().place("")
    pieces = []
    for name, size, move in (("p0", Q(18), Q(3, 4)), ("p1", Q(20), Q(-1, 2))):
        dim = place.at(name).made("length", place.enter(f"{name}_asked", size, READ))
        part: Any = SimpleNamespace(path=name, stock="plywood")
        pieces.append(Resize(part, ((dim, size + move),)))
    one, two = (each.sizes[0][0] for each in pieces)
    place.fit("fit", two - one, Q(2) - Q(7, 8), Q(2) + Q(7, 8), "p0")
    room: Any = SimpleNamespace(chain=place.chain)
    kept = StayingModel(room, pieces, frozenset({("plywood", Q(18))})).best()
    assert [each.part.path for each in kept] == ["p1"]
    kept = StayingModel(room, pieces, frozenset()).best()
    assert [each.part.path for each in kept] == ["p0"]
