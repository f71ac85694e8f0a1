"""Forecasts of real fits against a simulation that knows nothing of chains and slopes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from functools import cache

import numpy as np
import numpy.typing as npt
import pytest
from tests.jobs import example, read

from casewright.room.build import build
from casewright.room.forecast_words import cause_text, chance_text
from casewright.room.forecasts import Forecast, Forecasts
from casewright.room.model import Room
from casewright.room.simulation import chance_outside
from casewright.shop import Shop, Tool, gauge_for

DRAWS = 400_000
SAW, OWN, SHIFT, SHEET = 0.2, 0.1, 0.3, 0.05
"""Standard deviations of the home shop [mm]: a setting, each cut, a joint, within a sheet."""


@cache
def gallery() -> Room:
    """Boxes of drawers, every sheet measured."""
    return build(read(example("gallery")))


def forecast(path: str, room: Room | None = None) -> Forecast:
    """Of one fit."""
    where = room or gallery()
    return Forecasts(where).of(where.chain.fits[path])


def simulated_slides() -> npt.NDArray[np.float64]:
    """How far the air beside a drawer of `trays` is off its number: opening less box.

    The box: a bottom between two sides. The drawer: a front between two sides of one sheet, which
    was read once with a calliper.
    """
    rng = np.random.default_rng(31)

    def strays(sigma: float) -> npt.NDArray[np.float64]:
        return rng.normal(0, sigma, DRAWS)

    opening = strays(SAW) + strays(OWN) + strays(SHIFT)
    drawer = strays(SAW) + strays(OWN) + 2 * strays(SHEET) + strays(SHEET) + strays(SHEET)
    return opening - drawer


def test_a_drawer_in_its_opening_agrees_with_simulation() -> None:
    """Spread and chance of the air beside it, within the error of 400,000 draws."""
    found = forecast("trays.drawer_2.slide_fit")
    off, fit = simulated_slides(), found.fit
    assert found.slack.sigma_mm == pytest.approx(off.std(), rel=0.01)
    values = float(found.slack.nominal) + off
    outside = np.mean((values < float(fit.low)) | (values > float(fit.high)))
    assert found.chance == pytest.approx(outside, abs=0.004)


def _drawn(number: int) -> Callable[[float], npt.NDArray[np.float64]]:
    """Deviations of a seeded generator."""
    rng = np.random.default_rng(number)
    return lambda sigma: rng.normal(0, sigma, DRAWS)


def simulated_door_gap() -> npt.NDArray[np.float64]:
    """A pair of doors over a box: a bottom between two sides of one sheet, two leaves of one saw
    setting; what the leaves leave of the box is between them."""
    strays = _drawn(32)
    sheet, clear = strays(SHEET), strays(SAW) + strays(OWN) + strays(SHIFT)
    box = clear + 2 * sheet + strays(SHEET) + strays(SHEET)
    return box - 2 * strays(SAW) - strays(OWN) - strays(OWN)


def simulated_inset_gap() -> npt.NDArray[np.float64]:
    """A door inside its box: what it leaves of the clear width is beside it."""
    strays = _drawn(33)
    return strays(SAW) + strays(OWN) + strays(SHIFT) - strays(SAW) - strays(OWN)


def simulated_panel() -> npt.NDArray[np.float64]:
    """A panel in the grooves of two stiles: a rail, with a tongue at either end, keeps them apart.

    Grooves are ploughed in one setting and so are tongues: what is off is off at both ends.
    """
    strays = _drawn(34)
    grooves, tongues = 2 * (strays(SAW) + strays(OWN)), 2 * (strays(SAW) + strays(OWN))
    apart = strays(SAW) + strays(OWN) - tongues
    return apart + grooves - strays(SAW) - strays(OWN)


@pytest.mark.parametrize(
    ("job", "path", "simulated"),
    [
        ("gallery", "prep.face.gap_1_fit", simulated_door_gap),
        ("gallery_doors", "inset_base.face.left_fit", simulated_inset_gap),
        ("gallery_doors", "pantry_single.door.panel_room.side_play_fit", simulated_panel),
    ],
)
def test_gaps_and_panels_agree_with_simulation(
    job: str, path: str, simulated: Callable[[], npt.NDArray[np.float64]]
) -> None:
    """As the drawer: spread, and chance of the band, a little narrower so that some miss."""
    found = forecast(path, build(read(example(job))))
    off, half = simulated(), 1.5 * found.slack.sigma_mm
    assert found.slack.sigma_mm == pytest.approx(off.std(), rel=0.01)
    gap = found.fit.gap
    low, high = gap.value - Fraction(half), min(found.fit.high, gap.value + Fraction(half))
    values = float(gap.value) + off
    outside = np.mean((values < float(low)) | (values > float(high)))
    assert outside > 0.1
    assert chance_outside(gap, low, high) == pytest.approx(outside, abs=0.004)


def test_a_run_against_its_walls_agrees_with_simulation() -> None:
    """Three boxes between two walls read at three heights with one tape; half of what is left is
    at either end. Which height is narrowest, and which gap widest, is drawn with the rest."""
    strays = _drawn(35)
    room = build(read(example("garden_room")))
    fit = room.chain.fits["run.window_base.filler_left.scribe_left"]
    hook, sheet = strays(0.3), strays(SHEET)
    heights = [2540 * 1.0025 + strays(0.4), 2540 * 1.00375 + strays(0.4),
               2540 * 1.00625 + strays(0.4)]  # fmt: skip
    walls = np.array(heights) + hook
    run = float(room.chain.nodes["run.window_base.cases_width"].value) + sum(
        strays(SAW) + strays(OWN) + strays(SHIFT) + 2 * sheet + strays(SHEET) + strays(SHEET)
        for _ in range(3)
    )
    narrowest = walls.min(axis=0)
    widest = (narrowest - run) / 2 + walls.max(axis=0) - narrowest
    filler = float(room.chain.nodes["run.window_base.filler_left.width"].value) + strays(OWN)
    values = filler - widest
    assert values.mean() == pytest.approx(float(fit.gap.value), abs=0.1)
    low, high = fit.gap.value - Fraction(1, 2), fit.gap.value + Fraction(3, 4)
    outside = np.mean((values < float(low)) | (values > float(high)))
    assert 0.1 < outside < 0.9
    assert chance_outside(fit.gap, low, high) == pytest.approx(outside, abs=0.04)


def test_reading_first_helps_a_fit_and_names_what_to_read() -> None:
    """The opening strays most, so it stands first."""
    found = forecast("trays.drawer_2.slide_fit")
    assert found.read[0].dim.path == "trays.clear_width"
    assert found.read_chance < found.chance / 3


@pytest.mark.parametrize("name", ["gallery", "garden_room"])
def test_no_reading_is_advised_that_does_not_help(name: str) -> None:
    """Of all fits of a room."""
    for found in Forecasts(build(read(example(name)))).all():
        assert 0 <= found.read_chance <= found.chance <= 1
        assert bool(found.read) == (found.read_chance < found.chance)


def test_a_truer_saw_lowers_the_chance_of_every_fit() -> None:
    """The saw's setting and its cuts at a quarter of what they are: no chance rises."""
    spec = read(example("gallery"))
    saw = spec.shop.tools["table saw"]
    truer = replace(saw, sigma=saw.sigma / 4, limit=saw.limit / 4)
    shop = replace(spec.shop, tools={**spec.shop.tools, "table saw": truer})
    better = build(replace(spec, shop=shop))
    for path in gallery().chain.fits:
        assert forecast(path, better).chance <= forecast(path).chance + 1e-9


def test_every_kind_of_fit_that_matters_has_a_forecast() -> None:
    """Gaps round fronts, slides, backs and bottoms in their grooves, boards in their dadoes."""
    kinds = {path.rpartition(".")[2] for path in gallery().chain.fits}
    assert {"gap_1_fit", "top_fit", "right_fit", "slide_fit", "back_side_play", "width_error",
            "bottom_side_fit", "board_play_fit", "shelf_1_air"} <= kinds  # fmt: skip


@pytest.mark.parametrize(
    ("chance", "says"),
    [(0.0, "none"), (0.5, "50 in 100"), (0.1406, "14 in 100"), (0.011, "11 in 1,000"),
     (0.000_2, "2 in 10,000"), (1e-9, "under 1 in 10,000")],
)  # fmt: skip
def test_chances_are_said_as_counts(chance: float, says: str) -> None:
    assert chance_text(chance) == says


def test_causes_are_told_in_words() -> None:
    """Settings, readings, sheets and single cuts of one drawer."""
    said = [cause_text(term.cause) for term in forecast("trays.drawer_2.slide_fit").slack.terms]
    assert "the setting of trays horizontals length (table saw)" in said
    assert "trays.bottom.length, each by itself (table saw)" in said
    assert "the reading of stock.drawer_plywood (calliper)" in said


def test_a_thing_is_read_with_what_reads_it_best() -> None:
    """A calliper up to its reach, then a rule, then the tape; a rule is in every shop."""
    tools = {
        tool.kind: tool
        for tool in (
            Tool("tape", Fraction(1, 2), Fraction(1)),
            Tool("calliper", Fraction(1, 20), Fraction(1, 10)),
        )
    }
    shop = Shop(tools, (), Fraction(25), gallery().spec.shop.straightedge)
    kinds = [gauge_for(shop, Fraction(length)) for length in (18, 600, 2400)]
    assert [tool.kind for tool in kinds if tool] == ["calliper", "steel rule", "tape"]


def test_the_mitre_of_a_crown_opens_by_how_far_its_corner_is_misread() -> None:
    """By hand: 2 1/4 in out make a joint of 57.15 root 2 long; a quarter of a degree opens it by
    0.353 mm, the saw, 0.15 mm shared and half of that its own, brings it to 0.391. A corner that
    was not read is asked for, and has no forecast yet."""
    room = build(read(example("gallery_trims")))
    mitres = [path for path in room.chain.fits if ".mitre_" in path]
    assert mitres == ["run.round.crown.mitre_right_fit"]
    found = forecast(mitres[0], room)
    opens = 57.15 * 2**0.5 * np.radians(0.25)
    assert found.slack.sigma_mm == pytest.approx(np.hypot(opens, 0.15 * 1.25**0.5), rel=0.01)
    assert found.main is not None
    assert "reading of the corner" in cause_text(found.main.cause)
