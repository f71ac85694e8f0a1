"""Prove that a case, as its parts are cut, machined and placed, is the case that was meant."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.proof.appliance_panels import check_appliance_panel
from casewright.casework.proof.appliances import check_appliances
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.blind_corners import check_blind_corner
from casewright.casework.proof.bores import check_bores
from casewright.casework.proof.contacts import check_joints
from casewright.casework.proof.cuts import check_cuts
from casewright.casework.proof.drawers import check_drawers
from casewright.casework.proof.edges import check_edges
from casewright.casework.proof.ends import check_ends
from casewright.casework.proof.extents import check_extents
from casewright.casework.proof.face_frames import check_face_frame
from casewright.casework.proof.face_strips import check_face_strips
from casewright.casework.proof.failure import Failure, Proof
from casewright.casework.proof.fasteners import check_fasteners
from casewright.casework.proof.fronts import check_fronts
from casewright.casework.proof.hands import check_hands
from casewright.casework.proof.hinges import check_hinges
from casewright.casework.proof.hoods import check_hood
from casewright.casework.proof.housings import check_housings
from casewright.casework.proof.lids import check_lid
from casewright.casework.proof.mitres import check_mitres
from casewright.casework.proof.mouths import check_mouth
from casewright.casework.proof.overlaps import check_overlaps
from casewright.casework.proof.panels import check_panels
from casewright.casework.proof.panes import check_panes
from casewright.casework.proof.pins import check_pins
from casewright.casework.proof.pocket_screws import PocketScrew, pocket_screws
from casewright.casework.proof.pockets import check_pockets
from casewright.casework.proof.pulls import check_pulls
from casewright.casework.proof.setups import check_setups
from casewright.casework.proof.strips import check_strips
from casewright.hardware import HardwareList

__all__ = [
    "GRID", "fit_failures", "making_failures", "odd_parts", "proof_failures", "prove",
    "prove_assembled",
]  # fmt: skip

GRID = Fraction(127, 160)
"""Coarsest grid that sizes are rounded to by default [mm]: 1/32 in."""


def prove(case: Case, *, hardware: HardwareList | None = None, grid: Fraction = GRID) -> Proof:
    """Check a case from its sizes, features and placements alone.

    A failure on designed values is a defect of the program; on built values it is a finding
    about the real thing (`as_findings`). Every decision is made in whole numbers.

    Parameters
    ----------
    hardware
        Data sheets. Without them holes are held against one another only.
    grid
        How far rounding may move the outside of a case off what was asked for [mm].
    """
    assembled = Assembled.of(case)
    screws = tuple(pocket_screws(assembled))
    return prove_assembled(assembled, screws, hardware=hardware, grid=grid)


def prove_assembled(
    case: Assembled,
    screws: tuple[PocketScrew, ...],
    *,
    hardware: HardwareList | None = None,
    grid: Fraction = GRID,
) -> Proof:
    """`prove` for a case already in whole units."""
    return Proof(tuple(proof_failures(case, screws, hardware=hardware, grid=grid)))


def proof_failures(
    case: Assembled,
    screws: tuple[PocketScrew, ...],
    *,
    hardware: HardwareList | None = None,
    grid: Fraction = GRID,
) -> Iterator[Failure]:
    """What `prove_assembled` finds, one by one: whoever asks for the first pays for no more."""
    odd = odd_parts(case)
    yield from odd
    if any(failure.check == "parts" for failure in odd):
        return
    yield from fit_failures(case, screws, hardware=hardware, grid=grid)
    yield from making_failures(case)


def odd_parts(case: Assembled) -> tuple[Failure, ...]:
    """Parts that are none, or whose cuts are none: after one of "parts" nothing can be said."""
    model = case.model
    if not model.parts:
        return (Failure("parts", (model.key,), "the case has no parts"),)
    if len(case.solids) != len(model.parts):
        same = Failure("parts", (model.key,), "two parts have the same name")
        return (same, *check_cuts(case))
    return tuple(check_cuts(case))


def making_failures(case: Assembled) -> Iterator[Failure]:
    """Hands, edges and set-ups: what each part says for itself, soon looked through."""
    yield from check_hands(case)
    yield from check_edges(case)
    yield from check_setups(case)


def fit_failures(
    case: Assembled,
    screws: tuple[PocketScrew, ...],
    *,
    hardware: HardwareList | None = None,
    grid: Fraction = GRID,
) -> Iterator[Failure]:
    """What does not go together, one by one."""
    model = case.model
    yield from check_overlaps(case)
    yield from check_bores(case)
    yield from check_joints(case)
    if model.spec.is_box or model.is_plinth:
        yield from check_extents(case, grid)
    yield from check_appliance_panel(case)
    yield from check_fronts(case)
    yield from check_appliances(case)
    yield from check_face_frame(case, grid)
    yield from check_face_strips(case, grid)
    yield from check_ends(case, grid)
    yield from check_blind_corner(case, grid)
    yield from check_hood(case, case.units.up(grid))
    yield from check_lid(case, grid)
    yield from check_mouth(case, grid)
    yield from check_strips(case, grid)
    yield from check_housings(case)
    yield from check_mitres(case)
    yield from check_panes(case)
    yield from check_pins(case, None if hardware is None else hardware.pin)
    yield from check_pulls(case, None if hardware is None else hardware.pull)
    yield from check_panels(case)
    yield from check_drawers(case, hardware)
    yield from check_hinges(case, None if hardware is None else hardware.hinge)
    yield from check_pockets(case, screws)
    yield from check_fasteners(case)
