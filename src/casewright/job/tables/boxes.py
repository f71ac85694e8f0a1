"""How boxes and doors are built unless a case says otherwise."""

from __future__ import annotations

from typing import Literal

from casewright.casework.specs import (
    DoorKind,
    EdgeKind,
    EndKind,
    FaceFixing,
    FaceJoint,
    FaceKind,
    JointKind,
    OverlayKind,
    PocketKind,
)
from casewright.job.tables.table import Key, Table

__all__ = ["BoxesTable", "DoorPartsTable", "DoorsTable"]


class BoxesTable(Table):
    """How boxes are built, unless a case says otherwise."""

    joint: JointKind | None = None
    """How top, bottom and fixed shelves meet the sides. A bookcase has its own in dadoes; so has a
    wall case without doors its bottom, where pockets are to be hidden. Default: pocket
    screws."""

    back: Literal["rabbeted", "grooved", "applied", "inset"] | None = None
    """How the back sits: in rabbets, in grooves, applied over the edges, or as a thick board
    between the sides. Default: rabbeted."""

    edge: EdgeKind | None = None
    """What is done to edges that show: iron-on band, solid lip, or filled and painted. Default: a
    fibreboard sheet is filled and painted, any other banded."""

    pockets: PocketKind | None = None
    """Pocket holes: kept off faces that show, or plugged where they would show. Default:
    hidden."""

    sheet: Key | None = None
    """Stock that boxes are cut from. Default: plywood."""

    back_sheet: Key | None = None
    """Stock of thin backs. Default: thin_plywood."""

    strips: Key | None = None
    """Boards for lips, nosings and other solid strips. Default: board."""

    band: Key | None = None
    """Iron-on band. Default: band."""

    end: EndKind | None = None
    """What is on a finished end: an applied frame like the doors'; a skin of thin sheet behind the
    doors; flush, a board that ends in the plane of the doors' faces, screwed on from inside; or
    plain, the side itself, no metal through it. Default: applied frame."""

    end_sheet: Key | None = None
    """Stock of skins and flush ends. Default: thin_plywood for a skin, plywood for a flush
    end."""

    face: FaceKind | None = None
    """Frameless, its fronts on the edges of the box; with a face frame before it: stiles and rails
    a little wider than the box; or frameless with strips of solid wood over its edges, trimmed
    flush with its inside, one strip for both edges where two cases of a run meet. Width and depth
    of the case are those over its face. Default: frameless."""

    face_boards: Key | None = None
    """Boards that a face frame or face strips are made of. Default: board."""

    face_joint: FaceJoint | None = None
    """How the rails of a face frame meet its stiles: pocket screws from behind, or tenons in
    mortises. Default: pocket screws."""

    face_fixing: FaceFixing | None = None
    """What holds a face frame to its box besides glue: pocket screws out of the sides, or brads
    through its face. Where an end shows or a shelf is fixed it is brads. Default: pocket
    screws."""


class DoorPartsTable(Table):
    """What doors are made from and how they hang."""

    slab: Key | None = None
    """Sheet that slabs are cut from. Default: fibreboard; thin_fibreboard under strips."""

    strip: Key | None = None
    """Thin strips of an applied frame. Default: strip."""

    edge: EdgeKind | None = None
    """What is done to the edges of a slab. Default: a fibreboard slab is filled and painted, any
    other done as the box."""

    frame: Key | None = None
    """Boards of any frame. Default: board."""

    panel: Key | None = None
    """Sheet, or thin boards glued edge to edge, for the panel of a frame. Default:
    thin_plywood."""

    film: bool | None = None
    """Whether a film, frosted or patterned, is laid on the inner face of each pane. Default:
    false."""

    glazing: Key | None = None
    """Glass or plastic in a glass frame. Default: glass."""

    overlay: OverlayKind | None = None
    """How doors lie: over the edges of the box but for a reveal, over part of them only (the
    style's partial_reveal stays bare; on a face frame they lie face_overlay over its edge), or
    inset, flush inside it. Default: full; on a face frame partial."""

    pull: bool | None = None
    """Whether holes for pulls are bored. Default: true."""

    hinge: Literal["left", "right"] | None = None
    """Side of the hinges of a single door, seen from the room. Default: left."""


class DoorsTable(DoorPartsTable):
    """How doors are built, unless a case says otherwise."""

    construction: DoorKind | None = None
    """Slab, strips on a slab, a half-lapped frame with glass, or a frame with its panel in
    grooves: with tongues on the rails, or mitred with splines. Default: slab."""
