"""The tables of a job file: which keys each may have, and what may stand there."""

from casewright.job.tables.appliance import (
    AppliancePanelTable,
    ApplianceTable,
    SecondPanelTable,
)
from casewright.job.tables.boxes import BoxesTable, DoorsTable
from casewright.job.tables.case import CaseTable, FrontTable
from casewright.job.tables.hardware import (
    HardwareTable,
    HingeTable,
    PinTable,
    PullTable,
    ScrewTable,
    SlideTable,
    UndermountTable,
)
from casewright.job.tables.heights import HeightsTable
from casewright.job.tables.island import IslandTable
from casewright.job.tables.job_file import Heading, JobFile
from casewright.job.tables.match import MatchTable
from casewright.job.tables.place import IslandSolvedTable, PlaceTable
from casewright.job.tables.rows import DrawersTable, WrittenRow
from casewright.job.tables.run import RunTable, SolvedTable
from casewright.job.tables.shop import ShopTable, ToolTable
from casewright.job.tables.stock import (
    BandTable,
    BoardTable,
    GlazingTable,
    SheetTable,
    StockTable,
)
from casewright.job.tables.style import StyleTable
from casewright.job.tables.survey import CornerTable, FixedTable, PassageTable, WallTable
from casewright.job.tables.table import Key, Line, Table
from casewright.job.tables.wood import WoodTable

__all__ = [
    "AppliancePanelTable",
    "ApplianceTable",
    "BandTable",
    "BoardTable",
    "BoxesTable",
    "CaseTable",
    "CornerTable",
    "DoorsTable",
    "DrawersTable",
    "FixedTable",
    "FrontTable",
    "GlazingTable",
    "HardwareTable",
    "Heading",
    "HeightsTable",
    "HingeTable",
    "IslandSolvedTable",
    "IslandTable",
    "JobFile",
    "Key",
    "Line",
    "MatchTable",
    "PassageTable",
    "PinTable",
    "PlaceTable",
    "PullTable",
    "RunTable",
    "ScrewTable",
    "SecondPanelTable",
    "SheetTable",
    "ShopTable",
    "SlideTable",
    "SolvedTable",
    "StockTable",
    "StyleTable",
    "Table",
    "ToolTable",
    "UndermountTable",
    "WallTable",
    "WoodTable",
    "WrittenRow",
]
