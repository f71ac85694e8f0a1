"""The record of a job: what was read, cut, spoiled and noted in the shop; it yields facts."""

from casewright.record.as_facts import NO_MARKS, Marks, facts_of, marks_of, offcuts_of, outer_paths
from casewright.record.codec import entry_json
from casewright.record.entry import HELD_KINDS, KINDS, MARKS, Entry, Kind, Sizes
from casewright.record.errors import DamageError, RecordError
from casewright.record.folder_lock import alone
from casewright.record.lines import entries_of_lines, lines_of
from casewright.record.rescue import Rescue, damaged_files, with_store
from casewright.record.standing import Standing, as_of, held, standing
from casewright.record.store import Store
from casewright.record.table import entries_of_table, table_of

__all__ = [
    "HELD_KINDS",
    "KINDS",
    "MARKS",
    "NO_MARKS",
    "DamageError",
    "Entry",
    "Kind",
    "Marks",
    "RecordError",
    "Rescue",
    "Sizes",
    "Standing",
    "Store",
    "alone",
    "as_of",
    "damaged_files",
    "entries_of_lines",
    "entries_of_table",
    "entry_json",
    "facts_of",
    "held",
    "lines_of",
    "marks_of",
    "offcuts_of",
    "outer_paths",
    "standing",
    "table_of",
    "with_store",
]  # fmt: skip
