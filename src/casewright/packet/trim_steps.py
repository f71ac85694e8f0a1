"""How trims are put on, step by step, each caution at the step where it belongs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.casework.cautions import CAUTIONS
from casewright.casework.lifted import lift_path
from casewright.dims import Measure, as_said, measure_of, tell
from casewright.outputs.blocks import Step
from casewright.outputs.inlines import Rich, Strong
from casewright.packet.weight_words import weight_of
from casewright.room.model import Room, Run
from casewright.room.style_numbers import told_style
from casewright.room.trims.model import EndCut, Trim
from casewright.sources import FOOT

__all__ = ["trim_steps"]

_READ = Fraction(25)
"""What a length that was read may differ from the plan here, about 1 in [mm]."""

_HIGH = (
    "Work from a platform or two steps with a plank, not from a chair; long pieces are held up by "
    "a helper or a prop until they are nailed. Look for cables before nailing into the wall."
)
_COPE = "A coping saw or a file on a clamped piece: cut away from the hand that holds it."
_OVERHEAD = (
    "Clamps or a helper hold the rail while you drive screws over your head: chips fall into "
    "eyes, so goggles on, and nothing stands on the counter under you."
)
_NAILER = (
    "A nailer's point turns in the wood: keep the other hand a nail's length away. Eyes protected."
)

_BEND = (
    "At a diagonal face both pieces are mitred alike: the strip on edge against the fence, its "
    "rear to the fence, the table at 22.5°, no bevel; or flat on the saw, bevel 22.5°. The long "
    "points are at the rear. Try both hands on test pieces first; a gap is halved on either one."
)


def trim_steps(room: Room, run: Run, trim: Trim) -> Iterator[Step]:
    """The steps of one trim."""
    match trim.kind:
        case "crown":
            yield from _crown(room, run, trim)
        case "light rail":
            yield from _light_rail(trim)
        case "scribe moulding":
            yield Step(
                "Hold each strip upright against the case end, scribe the wall onto its edge, "
                "plane to the line with the back of the edge a little under, and pin it on.",
                (), (CAUTIONS["scribe_plane"], _NAILER),
            )  # fmt: skip
        case "seam strip":
            yield Step(
                "When the boxes are screwed together, their fronts flush: glue each strip over "
                "both edges of its seam, as far proud of the inside of one box as of the other, "
                "brads in the middle of either edge. When the glue is dry, trim it flush with the "
                "inside of both, the bearing on the box and the brads out of the bit's way.",
                (), (_NAILER, CAUTIONS["router_trim"]),
            )  # fmt: skip
        case "seat lid":
            yield from _seat_lid(room, run, trim)
        case _:
            yield from _toe_skin(room, run, trim)


def _seat_lid(room: Room, run: Run, lid: Trim) -> Iterator[Step]:
    """Laid on when the boxes stand joined, and hinged at their backs or screwed up from below."""
    over = room.chain.nodes.get(f"{lid.path}.piece.front_air")
    yield Step(
        tell(
            "With the boxes screwed together and to the wall, their upper edges in one plane, lay "
            "the lid on, its rear edge flush with their backs, as far from either end. It weighs "
            "about {}: two people lift it.",
            weight_of(room, lid.parts, lift_path(lid.path), fine=True),
        ),
        (), (CAUTIONS["heavy_lift"],),
    )  # fmt: skip
    if run.cases[0].spec.lid != "hinged":
        yield Step(
            "Clamp it, and drive screws from below through the stretchers of every box.",
            tuple(_lid_screws(room, lid)), (CAUTIONS["clamp_screws"],),
        )  # fmt: skip
        return
    notes = () if over is None else (
        ("The fronts end ", Strong(measure_of(over, room.spec.unit)),
         " below it, so that no finger is caught."),
    )  # fmt: skip
    yield Step(
        "Screw its hinges to it and to the backs or nailers of the boxes while the other holds "
        "it, or propped open with a stick cut to length; then the stays, chosen for its weight, "
        "by their makers' sheets. Open, it must stay wherever the hand leaves it.",
        notes, (CAUTIONS["lid_falls"], CAUTIONS["clamp_screws"]),
    )  # fmt: skip


def _lid_screws(room: Room, lid: Trim) -> Iterator[Rich]:
    """How many of which length through each kind of stretcher."""
    titles = {part.path: part.title for part in room.parts}
    unit = room.spec.unit
    found = Counter(
        (tell("{} of {}", each.count, as_said(each.length, unit)), titles[each.through])
        for each in lid.screws
    )
    for (how, title), boxes in found.items():
        of = f", in each of {boxes} boxes" if boxes > 1 else ""
        yield how + f" through the {title}{of}"


def _crown(room: Room, run: Run, crown: Trim) -> Iterator[Step]:
    unit = room.spec.unit
    nodes = room.chain.nodes
    foot = nodes.get(f"{crown.path}.frieze") or nodes.get(f"run.{run.spec.key}.crown.frieze")
    ends = [cut for piece in crown.pieces for cut in (piece.left, piece.right)]
    bends = any(cut.is_bend for cut in ends)
    yield Step(
        "Screw the backing down onto the cases, its face flush with their front edges, along the "
        "whole run without a gap; glue and pin the frieze board on it. Shim to a straight line.",
        (_BEND,) if bends else (), (CAUTIONS["mitre_saw"], _HIGH) if bends else (_HIGH,),
    )  # fmt: skip
    if foot is not None:
        words = (
            " over the cases, level all along. Where the ceiling waves, the moulding is bent or "
            "scribed to it, or the line is lowered: never follow a wave with the foot."
        )
        line = "Draw the line of the crown's foot on the frieze board, "
        yield Step((line, Strong(measure_of(foot, unit)), words))
    yield Step("Read the lengths and corners above and write them in the job file. A corner: set "
               "a sliding bevel to it, or read a triangle in it.")  # fmt: skip
    if any(cut.turns for cut in ends):
        yield _test_pair(room)
    yield Step(
        "Cut the pieces, longest first, each end by the table; a long piece supported level with "
        "the saw's table at its far end.",
        (), (CAUTIONS["mitre_saw"],),
    )  # fmt: skip
    yield from _joined(crown, ends)
    yield from _turned(crown)
    if hoods := list(_died_into(run, crown)):
        yield Step(f"Beside {' and '.join(hoods)} backing, frieze board and crown end square: set "
                   "those ends tight against the side first, then the other ends. No nail goes "
                   "into the hood: its liner and duct are behind it.")  # fmt: skip
    yield Step("Nail it through the foot into the backing and through the head into the ceiling's "
               "framing, from a corner outward. Glue outside mitres. Caulk last.",
               (), (_HIGH, _NAILER))  # fmt: skip


def _test_pair(room: Room) -> Step:
    words = (
        "Cut both hands of every corner on test pieces {} long, and try them in place. Do not cut "
        "the crown before a test pair closes at front and back."
    )
    mark = "Mark foot and head on the back of every piece."
    return Step(tell(words, _test_piece(room)), (mark,), (CAUTIONS["mitre_saw"],))


def _test_piece(room: Room) -> Measure:
    """How long a test piece is: a foot, where the house has chosen no other length."""
    long = told_style(room, "test_piece_length")
    is_foot = long.value in (FOOT, 300)
    return as_said(long, room.spec.unit, "a foot (300 mm)" if is_foot else "")


def _died_into(run: Run, crown: Trim) -> Iterator[str]:
    """Hoods of its run in whose sides a crown ends: no crown goes over them."""
    crowns = (trim for trim in run.trims if trim.kind == "crown")
    reach = {
        trim.path: (trim.start.value, trim.start.value + trim.open_lengths[0].value)
        for trim in crowns if trim.start is not None
    }  # fmt: skip
    own = reach.get(crown.path, (Fraction(0), Fraction(0)))
    for case, start in zip(run.cases, run.starts, strict=True):
        ends = (start.value, start.value + case.overall_width.value)
        middle = sum(ends) / 2
        over = any(low < middle < high for low, high in reach.values())
        near = min(abs(ends[0] - own[1]), abs(ends[1] - own[0])) < _READ
        if case.spec.hood is not None and not over and near:
            yield case.spec.title


def _joined(crown: Trim, ends: Sequence[EndCut]) -> Iterator[Step]:
    """Copes and scarfs."""
    if any(cut.kind == "cope" for cut in ends):
        yield Step("Cope: saw along the edge of the mitre that shows, the back undercut; file "
                   "until it sits on the other crown. It is cut first, while it can be cut again.",
                   (), (_COPE,))  # fmt: skip
    if any(piece.right.kind == "scarf" for piece in crown.pieces):
        yield Step("Scarf: both ends at 45 degrees, glued and pinned over a stud or a seam of the "
                   "backing; the upper piece points away from the door.",
                   (), (CAUTIONS["mitre_saw"],))  # fmt: skip


def _turned(crown: Trim) -> Iterator[Step]:
    """Returns that go back to a crown beside them, not to the wall."""
    for piece in crown.pieces:
        if piece.rear is None:
            continue
        rear = piece.left if piece.left.kind != "outside mitre" else piece.right
        how = "the crown beside it is coped against it" if rear.kind == "square" else (
            "the two close in an inside mitre"
        )  # fmt: skip
        yield Step(f"The {piece.part.title} begins at the frieze board of the cases beside it, "
                   f"not at the wall. Nail it on before the crown there: {how}.")  # fmt: skip


def _light_rail(rail: Trim) -> Iterator[Step]:
    cuts = {cut for piece in rail.pieces for cut in (piece.left, piece.right) if cut.turns}
    turns = any(not cut.is_bend for cut in cuts)
    how = ": outside corners mitred, 45.0° at square ones, no bevel" if turns else ""
    bends = any(cut.is_bend for cut in cuts)
    order = ", the piece across a diagonal face before those beside it" if bends else ""
    yield Step(
        f"Cut it to what was read{how}. Screw it up from inside the cases through their bottoms, "
        f"flush with the front edges{order}; returns last.",
        (_BEND,) if bends else (), (CAUTIONS["mitre_saw"], _OVERHEAD),
    )  # fmt: skip


def _toe_skin(room: Room, run: Run, skin: Trim) -> Iterator[Step]:
    wall = room.survey.walls.get(run.spec.on)
    fall = wall.fall if wall is not None else None
    notes = () if fall is None or not fall.value else (
        ("The floor falls ", Strong(measure_of(fall, room.spec.unit)),
         " here: the skin is that much higher than the toe space."),
    )  # fmt: skip
    bends = any(cut.is_bend for each in skin.pieces for cut in (each.left, each.right))
    if bends:
        notes = (*notes, _BEND)
    saw = (CAUTIONS["mitre_saw"],) if bends else ()
    sprung = " It is a little long: bow it, set both ends, and press it flat." if (
        skin.sprung is not None) else ""  # fmt: skip
    yield Step(
        "After the floor is laid: scribe the lower edge to it, cut to length, glue and pin the "
        f"skin to the toe boards.{sprung}",
        notes, (*saw, CAUTIONS["scribe_plane"], _NAILER),
    )  # fmt: skip
