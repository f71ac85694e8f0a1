"""The order a diagonal corner goes together in: from the bottom up, shelves before the top."""

from __future__ import annotations

from casewright.casework.assembly import closed_joints, join_part
from casewright.casework.brads import row_marks
from casewright.casework.diagonal.corner import Corner
from casewright.casework.maker import Maker
from casewright.dims import Dim, tell

__all__ = ["assemble_corner"]

_GLUE = "Spread glue thinly on the joint"
_NO_MARKS: tuple[tuple[str, Dim], ...] = ()


def assemble_corner(maker: Maker, corner: Corner) -> None:
    """Bottom, sides, post, nailers, shelves, strips, top; square; toe board; both backs."""
    bottom = maker.path("bottom")
    maker.step("lay", bottom, None, "Lay the bottom on the bench, show face up, its slant to you.")
    for hand in ("right", "left") if corner.left else ("left", "right"):
        _side(maker, corner, hand)
    join_part(
        maker, maker.path("post"), "-y",
        f"{_GLUE}; stand the corner post in the corner of the rear edges, flush with both; two "
        "screws up through the bottom.",
        "clamp_screws",
    )  # fmt: skip
    for level in ("bottom", "top"):
        for hand in (corner.own_hand, corner.far_hand):
            _nailer(maker, level, hand)
    _shelves(maker)
    _strips(maker)
    if corner.top is None:
        _ties(maker, corner)
        _square(maker)
    else:
        join_part(
            maker, maker.path("top"), "-y",
            f"{_GLUE}; lower the top between the sides, its slant over that of the bottom; screws "
            "through the sides, then two each down into post and strips.",
            "clamp_screws",
        )  # fmt: skip
    if maker.path("toe_board") in maker.parts:
        join_part(
            maker, maker.path("toe_board"), "-z",
            f"{_GLUE}; set the toe board under the bottom, {_toe_words(maker)}; screws down "
            "through the bottom.",
            "clamp_screws",
        )  # fmt: skip
    if corner.top is not None:
        _square(maker)
        _backs(maker, corner)


def _backs(maker: Maker, corner: Corner) -> None:
    for hand in (corner.far_hand, corner.own_hand):
        enters = "+z" if hand == corner.own_hand else ("+x" if corner.left else "-x")
        join_part(
            maker, maker.path(f"back_{hand}"), enters,
            f"Lay the {hand} back in its rabbet, show face in, tight to the wall of the rabbet; "
            "brads from the middle out, into the corner post last.",
            "brad_points",
        )  # fmt: skip


def _toe_words(maker: Maker) -> str:
    if maker.spec.toe == "plinth":
        return "its ends in line with the outsides of both return sides"
    return "as far from either side, tight to the inner edges of their notches"


def _side(maker: Maker, corner: Corner, hand: str) -> None:
    path = maker.path(f"side_{hand}")
    if maker.spec.under:
        words = (
            f"{_GLUE}; stand the {hand} return side on the bottom, flush with its edge, its front "
            "where the slant begins; screws up through the bottom, their heads sunk for filler."
        )
        join_part(maker, path, "-y", words, "clamp_screws")
        return
    own = hand == corner.own_hand
    enters = ("-x" if corner.left else "+x") if own else "-z"
    words = (
        f"{_GLUE}; bring the {hand} return side to the edge of the bottom, "
        f"{'its rear edge' if maker.spec.sink else 'the wall of its rabbet'} flush with the "
        "bottom's rear edge; clamp, and drive the screws through the side."
    )
    join_part(maker, path, enters, words, "clamp_screws")


def _ties(maker: Maker, corner: Corner) -> None:
    """Rail and corner blocks, in place of a top; under an inset false front a rail more."""
    between, nodes = maker.path("row_board.1"), maker.house.chain.nodes
    where = "flush with their front edges and"
    if between in maker.parts:
        under = maker.place.let(
            "row_1_over_bottom", nodes[maker.path("row_1_board")] - corner.floor
        )
        join_part(
            maker, between, "-y",
            f"{_GLUE}; set the {maker.parts[between].title} between the strips, flush with their "
            "front edges; clamp, and drive its pocket screws from below.",
            "clamp_screws", marks=(("underside above the show face of the bottom", under),),
        )  # fmt: skip
        where = "as far behind their front edges as the false front and its bumpers take,"
    join_part(
        maker, maker.path("front_rail"), "-y",
        f"{_GLUE}; lower the front rail on edge between the strips, {where} flush with the upper "
        "ends of the sides; clamp, and drive its pocket screws from behind.",
        "clamp_screws",
    )  # fmt: skip
    for hand in (corner.own_hand, corner.far_hand):
        join_part(
            maker, maker.path(f"block_{hand}"), "-y",
            f"{_GLUE}; lay the {hand} corner block on its strip, its slant against the rail, its "
            "end tight to the return side and flush with that above; screws through the side, "
            "then two down into the strip.",
            "clamp_screws",
        )  # fmt: skip


def _nailer(maker: Maker, level: str, hand: str) -> None:
    path = maker.path(f"nailer_{level}_{hand}")
    if path not in maker.parts:
        return
    join_part(
        maker, path, "-y",
        f"{_GLUE}; set the {maker.parts[path].title} between post and side, flush with their "
        f"rear edges, {_where(maker, level)}; clamp, and drive its pocket screws from behind.",
        "clamp_screws",
    )  # fmt: skip


def _where(maker: Maker, level: str) -> str:
    if level == "bottom":
        return "tight to the bottom"
    if maker.spec.sink:
        return "flush with the upper ends"
    return "tight under a scrap as thick as the top, flush with the upper ends"


def _shelves(maker: Maker) -> None:
    """A shelf does not pass the mouth lying flat."""
    for part in list(maker.parts.values()):
        if part.role == "shelf":
            maker.step(
                "fit", part.path, "-y",
                f"Set six pins and lower {part.title} on them before the top closes the box: it "
                "does not come in through the mouth lying flat. Later it is tipped on edge.",
                joints=closed_joints(maker, part.path),
            )  # fmt: skip


def _strips(maker: Maker) -> None:
    nodes = maker.house.chain.nodes
    span = nodes[maker.path("mouth.span")]
    where, marks = "its outer face against the inner front edge of the return side", _NO_MARKS
    if maker.spec.framed:
        half = maker.place.at("mouth").let("half_span", span / 2)
        where = (
            "behind where the inner edge of its stile comes: mark the middle of the slant first"
        )
        marks = (("from the middle of the slant to its outer face", half),)
    for hand in ("left", "right"):
        path = maker.path(f"strip_{hand}")
        joints = closed_joints(maker, path)
        maker.step(
            "join", path, "-y",
            f"{_GLUE}; stand the {hand} hinge strip square to the slant, its front edge flush "
            f"with it, {where}; two screws up through the bottom.",
            joints=joints, marks=(*marks, *_span(hand, span), *row_marks(maker, joints)),
            cautions=("clamp_screws",),
        )  # fmt: skip


def _span(hand: str, span: Dim) -> tuple[tuple[str, Dim], ...]:
    return (("outside to outside of both strips", span),) if hand == "right" else ()


def _square(maker: Maker) -> None:
    maker.step(
        "check square", "", None,
        tell(
            "Measure from the corner of the rear edges to the front edge of either side, at "
            "bottom and top. Both must agree within {}; then the face, from outside to outside of "
            "the sides.",
            maker.house.trade("box_diagonals"),
        ),
        check=maker.house.chain.nodes[maker.path("mouth.face")], check_words="face",
    )  # fmt: skip
