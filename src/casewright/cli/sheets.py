"""`sheets`: sheets of several thicknesses sorted by case."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from casewright.cli.commands import tell_rescue
from casewright.cli.exits import BAD_INPUT, CLEAN, OPEN
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.dims import length_json, size_text
from casewright.dims.count_text import counted
from casewright.job.documents import head_json
from casewright.job.load import LoadedJob, load_job
from casewright.job.recorded import read_record
from casewright.job.saving import save
from casewright.job.sheet_sorting import SheetSorting, sorted_sheets

__all__ = ["run_sheets"]

_NONE = "No stock has sheets that differ too much for one case."


def run_sheets(job: Path, *, accepts: bool, as_json: bool) -> int:
    """`sheets`: which sheets go together and to which cases; `--accept` writes it."""
    loaded, recorded = load_job(job), read_record(job)
    tell_rescue(recorded.rescue)
    with working("sorting the sheets"):
        found = list(sorted_sheets(loaded.file.text, loaded.file.name, recorded.facts))
    if accepts:
        return _accept(loaded, found)
    if as_json:
        unit = loaded.spec.unit
        document = {**head_json("sheets", loaded.spec), "stocks": [_json(e, unit) for e in found]}
        print_json(document)
    elif not found:
        print(_NONE)
    else:
        print_lines(line for each in found for line in _lines(loaded, each))
    return OPEN if found else CLEAN


def _accept(loaded: LoadedJob, found: list[SheetSorting]) -> int:
    """Write the first stock's groups into the file; those of another are told then."""
    done = next((each for each in found if each.text), None)
    if done is None:
        print(_NONE if not found else _too_few(found[0]), file=sys.stderr)
        return CLEAN if not found else BAD_INPUT
    save(loaded, done.text)
    print(f"The groups of {done.stock} are written into {loaded.path}.")
    return CLEAN


def _lines(loaded: LoadedJob, sorting: SheetSorting) -> Iterator[str]:
    unit, goods = loaded.spec.unit, loaded.spec.stock[sorting.stock]
    yield f"{goods.title}:"
    if not sorting.text:
        yield f"  STOP  {_too_few(sorting)}"
    for number, group in enumerate(sorting.groups):
        names = ", ".join(group.names)
        thick = size_text(group.thickness, unit, calliper=True)
        if not sorting.text:
            yield f"  {names}  {thick}"
            continue
        cases = ", ".join(sorting.cases[number]) or "no case"
        taken = f"{sorting.sheets[number]} of {counted(len(group.names), 'sheet')}"
        yield f"  {names}  {thick}  {cases}; takes {taken}"
    if sorting.text:
        yield "  --accept writes each group as a stock of its own, and its cases to it"


def _too_few(sorting: SheetSorting) -> str:
    return (
        f"the sheets of {sorting.stock} that were read do not suffice with each case out of one "
        "group; read in another sheet, or let sheet_spread be greater"
    )


def _json(sorting: SheetSorting, unit: Any) -> dict[str, Any]:
    groups = []
    for number, group in enumerate(sorting.groups):
        groups.append(
            {
                "stock": sorting.keys[number],
                "sheets": list(group.names),
                "thickness": length_json(group.thickness, unit),
                "cases": list(sorting.cases[number]) if sorting.text else [],
                "takes": sorting.sheets[number] if sorting.text else None,
            }
        )
    return {"stock": sorting.stock, "suffice": bool(sorting.text), "groups": groups}
