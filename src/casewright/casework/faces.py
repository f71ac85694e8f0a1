"""What covers the front of a box: a face frame, strips over its edges, or nothing."""

from __future__ import annotations

from casewright.casework.box import Box
from casewright.casework.carcase import Carcase
from casewright.casework.cases import FaceFrame
from casewright.casework.face_frames import FrameParts, add_face_frame
from casewright.casework.face_panels import add_face_panel
from casewright.casework.face_strips import add_face_strips
from casewright.casework.maker import Maker
from casewright.casework.specs import Hand

__all__ = ["add_face"]


def add_face(
    maker: Maker,
    box: Box,
    carcase: Carcase,
    members: FrameParts | None,
    seams: tuple[Hand, ...],
) -> FaceFrame | None:
    """Put it on the box; None where fronts lie on the box's own edges.

    Parameters
    ----------
    members
        Of a face frame, cut but not placed; None without one.
    seams
        Sides whose edges get a strip of the run's.
    """
    if maker.spec.hood is not None:
        return add_face_panel(maker, box, carcase)
    if members is None:
        return add_face_strips(maker, box, carcase, seams)
    return add_face_frame(maker, box, carcase, members)
