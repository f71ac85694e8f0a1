"""What a crown stands on: the case under it, and the face that it is nailed to."""

from __future__ import annotations

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.dims import Dim
from casewright.room.model import Run

__all__ = ["crown_case", "crown_plane", "frieze_stock", "hood_alone"]


def crown_case(run: Run) -> Case:
    """A case that the crown of a run stands on: no hood."""
    return next((case for case in run.cases if case.spec.hood is None), run.cases[0])


def hood_alone(run: Run) -> str:
    """Key of the hood where a part of a run is that alone; empty: it is the run, or others too."""
    alone = len(run.cases) == 1 < len(run.spec.cases) and run.cases[0].spec.hood is not None
    return run.cases[0].key if alone else ""


def frieze_stock(run: Run) -> str:
    """What the frieze board is cut from: the doors' sheet, so that it is flush with them."""
    fronts = [case.spec.front for case in run.cases if case.spec.front is not None]
    spec = crown_case(run).spec
    behind = spec.box_stock if spec.hood is None else spec.hood.face_stock
    return fronts[0].slab if fronts else behind


def crown_plane(house: House, run: Run) -> Dim:
    """From the wall to the face that the crown of a run is nailed to: case and frieze board."""
    hood = hood_alone(run)
    path = f"run.{run.spec.key}.{f'crown_at_{hood}' if hood else 'crown'}.plane"
    known = house.chain.nodes.get(path)
    if known is not None:
        return known
    plane = crown_case(run).face_plane + house.thickness(frieze_stock(run))
    return house.chain.register(path, plane)
