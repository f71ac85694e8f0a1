"""Citations, and figures transcribed from publications with how well each is known."""

from casewright.sources.board_foot import BOARD_FOOT, HardwoodTally, board_feet, hardwood_tally
from casewright.sources.citations import (
    SOURCES,
    Source,
    SourceKind,
    UnknownSourceError,
    source,
    source_words,
)
from casewright.sources.densities import (
    DENSITIES,
    SPECIFIC_GRAVITY,
    Density,
    SpecificGravity,
    wood_density,
)
from casewright.sources.fibreboard import FIBREBOARD, FibreboardTolerance
from casewright.sources.hardwood import QUARTERS, QuarterSize
from casewright.sources.inch import FOOT, INCH
from casewright.sources.lifting import (
    LiftingTask,
    hands_from_ankles,
    lifting_multipliers,
    weight_limit,
)
from casewright.sources.plywood import (
    PLYWOOD_PANEL,
    PLYWOOD_THICKNESS,
    Band,
    PanelTolerance,
    PlywoodFace,
    ThicknessRule,
    plywood_band,
)
from casewright.sources.pound import POUND
from casewright.sources.provenance import How, Provenance
from casewright.sources.softwood import (
    BOARD_THICKNESS,
    DIMENSION_THICKNESS,
    LUMBER_WIDTH,
    DressedSize,
    dressed_section,
)
from casewright.sources.system_holes import SYSTEM_HOLES, SystemHoles
from casewright.sources.wood_movement import (
    MOVEMENT,
    ROOM_MOISTURE,
    Movement,
    RoomMoisture,
    equilibrium_moisture,
)
from casewright.sources.wood_screws import WOOD_SCREWS, WoodScrew

__all__ = [
    "BOARD_FOOT",
    "BOARD_THICKNESS",
    "DENSITIES",
    "DIMENSION_THICKNESS",
    "FIBREBOARD",
    "FOOT",
    "INCH",
    "LUMBER_WIDTH",
    "MOVEMENT",
    "PLYWOOD_PANEL",
    "PLYWOOD_THICKNESS",
    "POUND",
    "QUARTERS",
    "ROOM_MOISTURE",
    "SOURCES",
    "SPECIFIC_GRAVITY",
    "SYSTEM_HOLES",
    "WOOD_SCREWS",
    "Band",
    "Density",
    "DressedSize",
    "FibreboardTolerance",
    "HardwoodTally",
    "How",
    "LiftingTask",
    "Movement",
    "PanelTolerance",
    "PlywoodFace",
    "Provenance",
    "QuarterSize",
    "RoomMoisture",
    "Source",
    "SourceKind",
    "SpecificGravity",
    "SystemHoles",
    "ThicknessRule",
    "UnknownSourceError",
    "WoodScrew",
    "board_feet",
    "dressed_section",
    "equilibrium_moisture",
    "hands_from_ankles",
    "hardwood_tally",
    "lifting_multipliers",
    "plywood_band",
    "source",
    "source_words",
    "weight_limit",
    "wood_density",
]
