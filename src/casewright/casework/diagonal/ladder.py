"""The plinth of a diagonal corner: a ladder along its run's wall, and an arm along the other.

Both are of square pieces. They end where the toe board across touches them: its rear corners lie
d - s - t / sqrt(2) from either wall, with the depth d of the return sides, the setback s of the
toe space and the thickness t of the toe board. Source: plane geometry.
"""

from __future__ import annotations

from casewright.casework.assembly import join_part
from casewright.casework.diagonal.corner import Corner
from casewright.casework.diagonal.mouth import Mouth
from casewright.casework.diagonal.roots import OVER_ROOT_2, onto_grid
from casewright.casework.features import Plane
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.plinths import Plinth, assemble_plinth, cut_plinth, place_plinth
from casewright.casework.pockets import bore_pockets
from casewright.dims import Way

__all__ = ["CornerLadder", "add_corner_ladder", "assemble_corner_ladder"]

_GLUE = "Spread glue thinly on the joint"
_ENDS = ("far end", "near end", "bottom", "top")


class CornerLadder:
    """The ladder, and the pieces of its arm by their names.

    Parameters
    ----------
    main
        Along the run's wall, as long as the leg.
    arm
        From the main one to the end of the other leg: rail at the wall, rail in the room, sleeper.
    """

    __slots__ = ("arm", "main")

    def __init__(self, main: Plinth, arm: tuple[Outline, Outline, Outline]) -> None:
        self.main, self.arm = main, arm


def add_corner_ladder(
    maker: Maker, corner: Corner, mouth: Mouth, board: Outline
) -> CornerLadder | None:
    """Cut and place the plinth of a corner that stands on one.

    Parameters
    ----------
    board
        The toe board across, that both parts end at.
    """
    if maker.spec.toe != "plinth" or not corner.foot.path:
        return None
    place, setback = maker.place.at("plinth"), maker.style("toe_setback")
    rails = 2 * maker.house.thickness(maker.spec.box_stock)
    # From either wall to a rear corner of the toe board as it is cut and set: half of the reach of
    # the face, less what it lies behind that and half of its length, both at 45 degrees.
    back = (mouth.front - maker.parts[board.path].placed.z) / 2 + board.length / 4
    reach = (corner.width + corner.own.width) / 2
    most = place.let("most_sleeper", reach - back * OVER_ROOT_2 - rails)
    deep = place.let("deep", onto_grid(maker, place, "sleeper", most, Way.DOWN) + rails)
    # A sleeper past the arm, clear of the screws of its rail.
    past = deep + 2 * board.thickness
    seam = place.let("past_arm", past if corner.left else corner.width - past)
    main = cut_plinth(maker, corner.width, deep + setback, corner.foot, seams=(seam,))
    place_plinth(maker, main)
    arm = _cut_arm(maker, corner, main)
    _place_arm(maker, corner, main, arm)
    _stand(maker, corner, main, arm)
    return CornerLadder(main, arm)


def _cut_arm(maker: Maker, corner: Corner, main: Plinth) -> tuple[Outline, Outline, Outline]:
    out = main.behind + main.front.thickness
    setting = f"{maker.spec.key} plinth"
    wall, room = (
        maker.outline(f"plinth.arm_{word}", maker.spec.box_stock, corner.depth - out,
                      main.front.width, setting=setting, matched=True)
        for word in ("wall", "room")
    )  # fmt: skip
    sleeper = maker.outline(
        "plinth.arm_sleeper", maker.spec.box_stock,
        out - main.sleepers[0].thickness - wall.thickness - room.thickness, main.front.width,
        setting=setting, matched=True,
    )  # fmt: skip
    return wall, room, sleeper


def _place_arm(
    maker: Maker, corner: Corner, main: Plinth, arm: tuple[Outline, Outline, Outline]
) -> None:
    wall, room, sleeper = arm
    out, zero = main.behind + main.front.thickness, maker.zero
    # Beside the sleeper at the wall, so that the screws of neither meet those of the other.
    place = maker.place.at("plinth")
    place.let("out", out)
    near = place.let("arm_wall_left", corner.low(main.sleepers[0].thickness, wall.thickness))
    far = place.let("arm_room_left", corner.low(out - room.thickness, room.thickness))
    length = maker.house.pocket_screw(maker.spec.box_stock)
    pairs = ((wall, near, "at the wall"), (room, far, "in the room"))
    low, high = pairs if corner.left else (pairs[1], pairs[0])
    for (outline, x, where), hand in ((low, "right"), (high, "left")):
        # Each has its pockets on the face that looks at the other.
        faces_right = hand == "right"
        maker.add(
            outline, role="plinth rail", title=f"plinth arm rail {where}",
            lies="-z +y +x" if faces_right else "-z +y -x",
            at=(x if faces_right else x + outline.thickness, zero, out + outline.length),
            ends=_ENDS, group="plinth", hand="right" if faces_right else "left",
        )  # fmt: skip
        count = bore_pockets(maker, outline.path, "A", ("l1",))
        held = Fastening("pocket screw", count, length, (outline.path,), main.front.path)
        name = outline.path.rpartition(".")[2]
        maker.join(f"joint_{name}", "butt", (outline.path, "l1"), (main.front.path, "t1"),
                   fastenings=(held,))  # fmt: skip
    maker.add(
        sleeper, role="sleeper", title="sleeper of the plinth arm", lies="+x +y +z",
        at=(low[1] + low[0].thickness, zero, out + wall.length - sleeper.thickness),
        ends=("left", "right", "bottom", "top"), group="plinth",
    )  # fmt: skip
    count = bore_pockets(maker, sleeper.path, "B", ("l0", "l1"))
    ends: tuple[tuple[Plane, Outline], ...] = (("l0", low[0]), ("l1", high[0]))
    for end, rail in ends:
        held = Fastening("pocket screw", count, length, (sleeper.path,), rail.path)
        maker.join(f"joint_arm_sleeper_{end}", "butt", (sleeper.path, end), (rail.path, "t1"),
                   fastenings=(held,))  # fmt: skip


def _stand(
    maker: Maker, corner: Corner, main: Plinth, arm: tuple[Outline, Outline, Outline]
) -> None:
    """Each return side stands on both rails of its part."""
    for side, rails in ((corner.own, (main.front, main.back)), (corner.far, arm[:2])):
        for number, rail in enumerate(rails, start=1):
            name = side.path.rpartition(".")[2].replace("side", "stand")
            maker.join(f"{name}_{number}", "loose", (side.path, "l0"), (rail.path, "w1"))


def assemble_corner_ladder(maker: Maker, ladder: CornerLadder) -> None:
    """The ladder first, then its arm, square to it."""
    assemble_plinth(maker, ladder.main, above="the corner is")
    wall, room, sleeper = ladder.arm
    for outline in (wall, room):
        part = maker.parts[outline.path]
        name = outline.path.rpartition(".")[2]
        left = maker.house.chain.nodes[maker.path(f"plinth.{name}_left")]
        join_part(
            maker, outline.path, "+y",
            f"{_GLUE}; set the {part.title} against the front rail of the ladder, edges flush; "
            "clamp, and drive its pocket screws.",
            "clamp_screws", marks=(("left face from the left end of the ladder", left),),
        )  # fmt: skip
    join_part(
        maker, sleeper.path, "+y",
        f"{_GLUE}; set the {maker.parts[sleeper.path].title} between both, flush with their ends; "
        "clamp, and drive its pocket screws. Then the arm must be square to the ladder: three, "
        "four and five of any measure, along both and across.",
        "clamp_screws",
    )  # fmt: skip
