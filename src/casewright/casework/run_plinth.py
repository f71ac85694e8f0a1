"""A plinth that several cases of a run share: a work of its own, with its card and its proof."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.maker import Maker
from casewright.casework.outside import hold_outside
from casewright.casework.plinths import assemble_plinth, cut_plinth, place_plinth
from casewright.casework.specs import CaseSpec
from casewright.dims import Dim

__all__ = ["build_plinth", "plinth_spec"]


def plinth_spec(first: CaseSpec, key: str, title: str) -> CaseSpec:
    """What is asked for by a plinth under several cases, after the first of them."""
    return replace(
        first, key=key, title=title, kind="plinth", toe="none", joint="pocket screws", shelves=0,
        fixed_shelves=(), divider=None, finished=(), skirt=None, crown=None, nosing=None,
        front=None, upper_front=None, lid=None,
    )  # fmt: skip


def build_plinth(
    house: House, spec: CaseSpec, *, length: Dim, depth: Dim, height: Dim, seams: Sequence[Dim]
) -> Case:
    """Build the model of a plinth under a row of cases.

    Parameters
    ----------
    length
        Of the row, as the cases make it [mm].
    depth
        Of the cases [mm].
    height
        From the floor to what the cases stand on, as their sides leave it [mm].
    seams
        Where one case ends and the next begins, from the left end [mm].
    """
    maker = Maker(spec, house, house.chain.place(spec.key))
    place = maker.place
    width = place.let("wanted_width", length)
    tall = place.let("wanted_height", height)
    deep = place.let("wanted_depth", depth - maker.style("toe_setback"))
    ladder = cut_plinth(maker, width, depth, tall, seams=seams, prefix="")
    place_plinth(maker, ladder)
    assemble_plinth(maker, ladder, above="its cases are")
    sizes = (
        place.follows("width", ladder.length),
        place.follows("height", ladder.height),
        place.follows("depth", ladder.behind + ladder.front.thickness),
    )
    wanted = (width, tall, deep)
    return Case(
        spec=spec,
        width=sizes[0],
        height=sizes[1],
        depth=sizes[2],
        wanted=wanted,
        standing=maker.zero,
        overall_width=sizes[0],
        left_frame=maker.zero,
        overall_depth=sizes[2],
        tolerance=hold_outside(maker, sizes, wanted),
        levels=(),
        clear_heights=(),
        parts=tuple(maker.parts.values()),
        joints=tuple(maker.joints),
        fronts=(),
        faces=(),
        assembly=tuple(maker.steps),
        findings=tuple(maker.findings),
        questions=tuple(maker.questions),
    )
