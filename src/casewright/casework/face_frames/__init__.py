"""Face frames: stiles and rails before a box, a little wider than it; pads for its hardware."""

from casewright.casework.face_frames.frame import add_face_frame
from casewright.casework.face_frames.members import FrameParts, cut_members, planes_of
from casewright.casework.face_frames.plan import FramePlan, bottom_rise, plan_frame
from casewright.casework.face_frames.rows import frame_openings

__all__ = [
    "FrameParts",
    "FramePlan",
    "add_face_frame",
    "bottom_rise",
    "cut_members",
    "frame_openings",
    "plan_frame",
    "planes_of",
]
