"""The pane of a glass door, ordered or cut to the rebate as routed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from casewright.casework.brads import fastener_row, row_marks
from casewright.casework.features import Plane
from casewright.casework.fronts.constructions import Corner
from casewright.casework.fronts.frames import Frame
from casewright.casework.fronts.glass_rebate import Rebate
from casewright.casework.fronts.leaves import LeafPlan, report
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Film
from casewright.dims import Dim, Unit, Way, tell
from casewright.findings import Finding, Severity
from casewright.sources import INCH

__all__ = ["add_pane"]

_LAID = (
    "Lay the film on the pane's inner face first, on the bench: both washed and wet, its liner "
    "pulled off, smoothed from the middle out, its corners cut round as the pane's are; leave it "
    "to dry. "
)

_REACH = Fraction(3414, 1000)
"""Greatest radius over the lap behind which its corner still ends: 2 + the root of 2, down."""

_TOLD: dict[Unit, Fraction] = {"in": INCH / 32, "mm": Fraction(1, 2)}


def add_pane(maker: Maker, leaf: LeafPlan, frame: Frame, rebate: Rebate, at: Corner) -> None:
    """Cut the pane to the sight size and its lap behind the frame, less clearance; set it in."""
    air = maker.style("glass_clearance")
    tall = frame.left.length - frame.bottom.width - frame.top.width + 2 * rebate.width
    wide = frame.bottom.length - frame.left.width - frame.right.width + 2 * rebate.width
    pane = maker.outline(
        f"{leaf.name}.pane", leaf.front.glazing, tall - 2 * air, wide - 2 * air,
        setting=f"{maker.spec.key} {leaf.opening.name} panes",
    )  # fmt: skip
    side = pane.place.let("air_side", (wide - pane.width) / 2)
    end = pane.place.let("air_end", (tall - pane.length) / 2)
    maker.add(
        pane, role="pane", title=f"pane of the {leaf.title}", lies="+y -x +z",
        at=(
            at.x + frame.left.width - rebate.width + side + pane.width,
            at.y + frame.bottom.width - rebate.width + end,
            at.z + rebate.depth - pane.thickness,
        ),
        ends=("bottom", "top", "right", "left"), shows=("t0", "t1"),
        group=f"{leaf.opening.name} panes", front=maker.path(leaf.name),
    )  # fmt: skip
    rounded = pane.place.let("corner_radius", rebate.radius)
    maker.parts[pane.path] = replace(maker.parts[pane.path], corner_radius=rounded)
    _check_corner(maker, leaf, rebate, air)
    joints = _join(maker, leaf, pane, frame, side, end)
    film = _cut_film(maker, leaf, pane, rebate, air) if leaf.front.film else None
    if film is not None:
        maker.parts[pane.path] = replace(maker.parts[pane.path], film=film)
    maker.step(
        "fit", pane.path, "+z",
        f"{_LAID if film else ''}After finishing, lay the pane of the {leaf.title} into the "
        "rebate, its corners rounded to the rebate's; fasten the retainers finger-tight, never "
        "forcing the pane.",
        joints=joints, marks=(*_film_marks(film), *row_marks(maker, joints)),
        cautions=("glass_edges", "film_knife") if film else ("glass_edges",),
    )  # fmt: skip


def _film_marks(film: Film | None) -> tuple[tuple[str, Dim], ...]:
    """What is set on the rule to cut it."""
    if film is None:
        return ()
    return (
        ("film cut high", film.length),
        ("and wide", film.width),
        ("its edges in from the pane's", film.margin),
    )


def _cut_film(maker: Maker, leaf: LeafPlan, pane: Outline, rebate: Rebate, air: Dim) -> Film:
    """The film on a pane: smaller than that all round, its edge behind the frame."""
    margin = maker.style("film_margin")
    tall = pane.place.let("film_height", pane.length - 2 * margin)
    wide = pane.place.let("film_width", pane.width - 2 * margin)
    hidden = rebate.width - air - margin
    if hidden.value <= 0:
        report(maker, _film_in_sight(maker, leaf, margin, hidden))
    return Film(tall, wide, margin)


def _film_in_sight(maker: Maker, leaf: LeafPlan, margin: Dim, hidden: Dim) -> Finding:
    path = maker.path(f"{leaf.name}.pane")
    own = maker.reckoning("film in sight", path)
    inside, most = own.text(margin), own.text(margin + hidden, "covered")
    return Finding(
        rule="film in sight",
        severity=Severity.CARE,
        path=path,
        says=tell(
            "a film that ends {} inside its pane shows its edge beside the frame, which covers {} "
            "of the pane",
            inside, most,
        ),
        measured=inside.text,
        limit=most.text,
        source="common practice",
        remedies=(
            tell("film_margin under {} in [style]", most),
            tell("rebate_width {} greater and more", own.text(maker.zero - hidden, "greater")),
        ),
        numbers=own.numbers,
    )  # fmt: skip


def _join(
    maker: Maker, leaf: LeafPlan, pane: Outline, frame: Frame, side: Dim, end: Dim
) -> tuple[str, ...]:
    """The pane rests on the rebate's floor under retainers, with air at its edges."""
    joints = []
    edges: tuple[tuple[str, Outline, Plane, Dim], ...] = (
        ("left", frame.left, "w1", side),
        ("right", frame.right, "w0", side),
        ("bottom", frame.bottom, "l0", end),
        ("top", frame.top, "l1", end),
    )
    for word, member, edge, air in edges:
        cut = f"{member.path}.rebate"
        name = f"{leaf.name}.seat_{word}"
        held = fastener_row(
            maker, name, pane.width if edge in ("l0", "l1") else pane.length,
            f"retainers at the {word}", through=pane.path, into=member.path, screw=None,
            kind="retainer", spacing="retainer_spacing",
        )  # fmt: skip
        joints.append(
            maker.join(name, "face", (pane.path, "t1"), (member.path, "t1", cut),
                       fastenings=(held,))
        )  # fmt: skip
        joints.append(
            maker.join(f"{name}_air", "loose", (pane.path, edge), (member.path, "w0", cut),
                       gap=air)
        )  # fmt: skip
    return tuple(joints)


def _check_corner(maker: Maker, leaf: LeafPlan, rebate: Rebate, air: Dim) -> None:
    """A rounded corner must still lie behind the frame's square inner corner."""
    lap = rebate.width.value - air.value
    short = rebate.radius.value - lap
    if short <= 0 or 2 * short**2 < rebate.radius.value**2:
        return
    step, path = _TOLD[maker.house.unit], maker.path(f"{leaf.name}.pane")
    own = maker.reckoning("pane corner", path)
    bit = own.rounded("bit", (rebate.width - air) * (2 * _REACH), step, Way.DOWN)
    wide = own.rounded("rebate", rebate.radius / _REACH + air, step, Way.UP)
    radius = own.text(rebate.radius)
    report(
        maker,
        Finding(
            rule="pane corner",
            severity=Severity.STOP,
            path=path,
            says=tell(
                "rounded to {}, the pane's corners would not reach behind the frame", radius
            ),
            measured=radius.text,
            limit=own.length(bit / 2, "limit").text,
            source="common practice",
            remedies=(
                tell("a rebate bit of {} or less: rebate_bit in [style]", own.length(bit)),
                tell("rebate_width {} or more in [style]", own.length(wide)),
                "chisel the rebate's corners square",
            ),
            numbers=own.numbers,
        ),
    )
