"""Ladder plinths: two rails and the sleepers between them, under one case or under a row."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from casewright.casework.assembly import join_part
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.matched import in_one_size
from casewright.casework.pockets import bore_pockets
from casewright.dims import Dim, Place, Way

__all__ = ["Plinth", "assemble_plinth", "cut_plinth", "place_plinth"]


@dataclass(frozen=True, slots=True)
class Plinth:
    """A ladder, cut to outline.

    Parameters
    ----------
    marks
        Left face of each sleeper from the left end of the rails [mm].
    height
        As cut [mm].
    length
        Of the rails [mm].
    """

    front: Outline
    back: Outline
    sleepers: tuple[Outline, ...]
    marks: tuple[Dim, ...]
    height: Dim
    length: Dim

    @property
    def behind(self) -> Dim:
        """From its rear plane to the rear face of its front rail [mm]."""
        return self.back.thickness + self.sleepers[0].length


def cut_plinth(
    maker: Maker,
    length: Dim,
    depth: Dim,
    height: Dim,
    *,
    seams: Sequence[Dim] = (),
    prefix: str = "plinth.",
) -> Plinth:
    """Cut a ladder plinth for a case or a row of cases.

    Sleepers stand at both ends and under each seam, and between them so that none is farther
    from the next than the style's sleeper spacing, middle to middle (common practice).

    Parameters
    ----------
    length
        Of the row [mm].
    depth
        Of the cases [mm]; the ladder stands back from it by the toe setback.
    height
        [mm].
    seams
        Where one case ends and the next begins, from the left end [mm].
    prefix
        Before the parts' names inside the maker's place.
    """
    stock = maker.spec.box_stock
    setting = f"{maker.spec.key} plinth"
    front, back = in_one_size(
        maker, (f"{prefix}front", f"{prefix}back"), (length, height),
        (None if prefix else Way.NEAREST, Way.NEAREST), stock=stock, setting=setting,
    )  # fmt: skip
    place = maker.place.at(prefix.removesuffix(".")) if prefix else maker.place
    stretches = [front.thickness / 2, *seams, front.length - front.thickness / 2]
    bays = tuple(_bays(maker, place, low, high) for low, high in pairwise(stretches))
    between = depth - maker.style("toe_setback") - front.thickness - back.thickness
    sleepers = tuple(
        maker.outline(
            f"{prefix}sleeper.{n}", stock, between, front.width, setting=setting, way=Way.NEAREST
        )
        for n in range(1, sum(bays) + 2)
    )
    marks = tuple(_sleeper_marks(maker, place, sleepers, bays, [*seams, front.length]))
    return Plinth(front, back, sleepers, marks, front.width, front.length)


def _bays(maker: Maker, place: Place, low: Dim, high: Dim) -> int:
    """Bays between two sleepers that must be there, by the middles of these."""
    spacing = maker.style("sleeper_spacing")
    apart = high - low
    whole = place.times(apart, spacing, "sleepers along a box")
    return max(1, whole if apart.value == whole * spacing.value else whole + 1)


def _sleeper_marks(
    maker: Maker,
    place: Place,
    sleepers: Sequence[Outline],
    bays: Sequence[int],
    ends: Sequence[Dim],
) -> Iterator[Dim]:
    """Left faces of the sleepers as cut: flush at both ends, centred under seams, even between."""
    yield maker.zero
    low, number = maker.zero, 1
    for count, end in zip(bays, ends, strict=True):
        last = number + count
        thick = sleepers[last - 1].thickness
        high = end - (thick if end is ends[-1] else thick / 2)
        apart = high if low is maker.zero else high - low
        for bay in range(1, count):
            along = apart * Fraction(bay, count)
            yield _on_tape(maker, place, number + bay, _sum(low, along, maker.zero))
        if end is ends[-1]:
            yield place.let(f"sleeper_{last}_mark", high)
        else:
            low = _on_tape(maker, place, last, high)
            yield low
        number = last


def _on_tape(maker: Maker, place: Place, number: int, mark: Dim) -> Dim:
    """A mark where the tape has a line: a sleeper need not stand finer."""
    step = maker.style("cut_step").value
    return place.rounded(f"sleeper_{number}_mark", mark, step, Way.NEAREST)[0]


def _sum(one: Dim, other: Dim, zero: Dim) -> Dim:
    """Of two lengths; nothing is left out of the formula."""
    return other if one is zero else one + other


def place_plinth(maker: Maker, plinth: Plinth) -> None:
    """Stand the ladder on the floor, its back rail on the rear plane."""
    zero = maker.zero
    behind = plinth.behind
    for outline, title, z in (
        (plinth.front, "plinth front rail", behind),
        (plinth.back, "plinth back rail", zero),
    ):
        maker.add(
            outline, role="plinth rail", title=title, lies="+x +y +z", at=(zero, zero, z),
            ends=("left", "right", "bottom", "top"), group="plinth",
            shows=("t1",) if outline is plinth.front else (),
        )  # fmt: skip
    screws = maker.house.pocket_screw(maker.spec.box_stock)
    for number, (sleeper, x) in enumerate(zip(plinth.sleepers, plinth.marks, strict=True), 1):
        maker.add(
            sleeper, role="sleeper", title=f"sleeper {number}", lies="-z +y +x",
            at=(x, zero, behind), ends=("front", "back", "bottom", "top"), group="plinth",
        )  # fmt: skip
        count = bore_pockets(maker, sleeper.path, "A" if number == 1 else "B", ("l0", "l1"))
        held = (Fastening("pocket screw", count, screws, (sleeper.path,), plinth.front.path),)
        maker.join(
            f"joint_sleeper_{number}_front", "butt",
            (sleeper.path, "l0"), (plinth.front.path, "t0"), fastenings=held,
        )  # fmt: skip
        held = (Fastening("pocket screw", count, screws, (sleeper.path,), plinth.back.path),)
        maker.join(
            f"joint_sleeper_{number}_back", "butt",
            (sleeper.path, "l1"), (plinth.back.path, "t1"), fastenings=held,
        )  # fmt: skip


def assemble_plinth(maker: Maker, plinth: Plinth, *, above: str) -> None:
    """Build the ladder flat on the bench: rail, sleepers, rail, diagonals.

    Parameters
    ----------
    above
        What is set on it at the wall, in words.
    """
    title = {p.path: p.title for p in maker.parts.values()}
    join_part(
        maker, plinth.front.path, "+y",
        "The plinth is a ladder of its own, built flat on the bench: lay its front rail down, "
        "show face under.",
    )  # fmt: skip
    for sleeper in plinth.sleepers:
        join_part(
            maker, sleeper.path, "+y",
            f"Spread glue thinly on the joint; set {title[sleeper.path]} square on its mark, "
            "edges flush; drive its pocket screws.",
            "clamp_screws",
            marks=(
                ("left face from the left end of the rail", maker.parts[sleeper.path].placed.x),
            ),
        )  # fmt: skip
    join_part(
        maker, plinth.back.path, "+y",
        "Set the back rail on the sleepers, ends flush with the front rail; screw it on, both "
        f"diagonals alike. At the wall the plinth is levelled and fastened first, then {above} "
        "set on it.",
        "clamp_screws", "heavy_lift",
    )  # fmt: skip
