"""The reference of the job file, written from its schema: `python -m casewright.job.reference`."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from typing import Any

from casewright.dims import Unit
from casewright.job.defaults import usual_tables
from casewright.job.editor_schema import job_schema
from casewright.job.references import RESERVED

__all__ = ["reference_text"]

_Json = dict[str, Any]

_INTRODUCTION = """\
# The job file

A job file is a text file in [TOML](https://toml.io): lines of `key = value` under `[section]`
headers, and notes behind `#`. Type it in any editor, save it as UTF-8. This page is written from
the same tables that read the file.

The shortest one:

```toml
format = 1
unit = "in"
[case.upper]
kind = "wall"
width = "33"
```

**Lengths** are text in quotes or plain numbers. A bare number counts in the job's unit:
`36`, `"11 7/8"`, `"11-7/8"`, `"14 3/8 + 1/16"`, `30.5`; another unit is written out: `"302 mm"`,
`"30.2 cm"`, `"3' 6"`. A fraction always stands in quotes. In inches `33 1/2"` may keep its mark in
single quotes: `'33 1/2"'`.

**Names** of cases, runs and stock hold letters, digits, `-` and `_`. A case's name is permanent:
numbers, readings and labels hang on it. Give it a `title` to call it otherwise. These names are
taken: {reserved}.

**Defaults**: what is left out is filled in, and `casewright why JOB PATH` says with what, and who
decided it. **Errors** are told all at once, each with line, column and word.

`casewright new JOB --schema job.schema.json` writes a JSON Schema, with which many editors
complete keys and check values as you type.
"""

_SECTIONS = (
    ("", "Top of the file", "Heading"),
    ("case.NAME", "A case", "CaseTable"),
    ("case.NAME.front", "Doors of a case", "FrontTable"),
    ("run.NAME", "A run", "RunTable"),
    ("run.NAME.solved", "A run as laid out", "SolvedTable"),
    ("appliance.NAME", "An appliance in a run", "ApplianceTable"),
    ("appliance.NAME.panel", "The panel on its front", "AppliancePanelTable"),
    ("appliance.NAME.second_panel", "The panel on its second door", "SecondPanelTable"),
    ("island.NAME", "An island", "IslandTable"),
    ("island.NAME.place", "Its place, or that of a case in no run", "PlaceTable"),
    ("island.NAME.solved", "An island as laid out", "IslandSolvedTable"),
    ("run.NAME.toe_skin", "Its toe skin", "ToeSkinTable"),
    ("run.NAME.light_rail", "Its light rail", "LightRailTable"),
    ("run.NAME.light_rail.at.NAME", "Its light rail at a hood", "RailAtHoodTable"),
    ("run.NAME.scribe_moulding", "Its scribe mouldings", "ScribeMouldingTable"),
    ("run.NAME.crown", "Its crown", "CrownTable"),
    ("run.NAME.crown.at.NAME", "Its crown round a hood", "CrownAtHoodTable"),
    ("heights", "Heights as laid out", "HeightsTable"),
    ("match.NAME", "Fronts that match", "MatchTable"),
    ("wall.NAME", "A wall as measured", "WallTable"),
    ("wall.NAME", "Its widths", "WidthTable"),
    ("wall.NAME", "Its floor and ceiling", "StationTable"),
    ("wall.NAME", "How it leans", "PlumbTable"),
    ("wall.NAME", "Its studs", "StudTable"),
    ("wall.NAME", "How flat it is", "HollowTable"),
    ("wall.NAME.baseboard", "Its baseboard", "BaseboardTable"),
    ("wall.NAME.fixed.NAME", "What is on it", "FixedTable"),
    ("wall.NAME.fixed.NAME", "Heights of a counter", "TopTable"),
    ("corner.NAME", "A corner as measured", "CornerTable"),
    ("corner.NAME.triangle", "Its triangle", "TriangleTable"),
    ("way_in.NAME", "The way in", "PassageTable"),
    ("wall.NAME", "Any reading", "ReadingTable"),
    ("boxes", "All boxes", "BoxesTable"),
    ("doors", "All doors", "DoorsTable"),
    ("drawers", "All drawers", "DrawersTable"),
    ("stock.NAME", "Stock: a sheet", "SheetTable"),
    ("stock.NAME", "Stock: boards", "BoardTable"),
    ("stock.NAME", "Stock: edge band", "BandTable"),
    ("stock.NAME", "Stock: glass or plastic", "GlazingTable"),
    ("hardware.hinge", "Hinges", "HingeTable"),
    ("hardware.pull", "Pulls", "PullTable"),
    ("hardware.pin", "Shelf pins", "PinTable"),
    ("hardware.slide", "Drawer slides", "SlideTable"),
    ("hardware.undermount", "Concealed drawer slides", "UndermountTable"),
    ("hardware.pocket_screw", "Screws and brads", "ScrewTable"),
    ("shop", "The shop", "ShopTable"),
    ('shop.tool."table saw"', "A tool", "ToolTable"),
    ("shop.minutes", "What mending takes", "MendingTable"),
    ("style", "House style", "StyleTable"),
)
_ALSO = {
    "FrontTable": "Also `[case.NAME.upper_front]`. In one line: "
    '`front = { construction = "slab", hinge = "right" }`, or just `front = "slab"`.',
    "DrawersTable": "Also `[case.NAME.drawer]`, for the drawers of one case.",
    "CaseTable": "Every key of `[boxes]` may stand here as well, for this case alone.",
    "ScrewTable": "Also `[hardware.wall_screw]`, `[hardware.brad]`, `[hardware.back_brad]`, "
    "`[hardware.front_screw]`, `[hardware.drawer_screw]`.",
    "WallTable": "A whole wall is shown by `casewright survey`, with blanks for what is missing.",
    "WidthTable": 'In a list: `width = [{ read = "100 1/4", height = 36 }, "100 3/8"]`.',
    "StationTable": 'In a list: `stations = [{ along = 20, down = "40 1/8", up = "66 1/4" }]`.',
    "PlumbTable": 'In a list: `plumb = [{ of = "left", over = 48, off = "1/8", leans = "in" }]`.',
    "StudTable": 'In a list: `studs = ["14 1/2", { read = "30 1/2", probed = true }]`.',
    "HollowTable": 'In a list: `hollows = [{ along = "25 1/2", height = 81, off = "1/8" }]`.',
    "TopTable": 'In a list: `tops = [{ along = 2, down = "4 1/8" }]`.',
    "ReadingTable": "Wherever a reading stands, in place of the bare length: "
    '`left = { read = "30 1/4", tool = "laser" }`.',
    "StyleTable": "The same keys may stand under `[case.NAME.style]`, for one case alone.",
}


def reference_text() -> str:
    """The whole reference in Markdown."""
    schema = job_schema()
    lines = [_INTRODUCTION.format(reserved=", ".join(f"`{name}`" for name in RESERVED)).rstrip()]
    for header, title, table in _SECTIONS:
        lines += ["", f"## {title}", ""]
        lines += _section(header, table, schema)
    lines += ["", "## What is there without a section", "", *_usual()]
    return "\n".join(lines) + "\n"


def _section(header: str, name: str, schema: _Json) -> Iterator[str]:
    table = schema if name == "Heading" else schema["$defs"][name]
    if header:
        yield f"`[{header}]`"
        yield ""
    if name != "Heading":
        yield table["description"]
        yield ""
    if name in _ALSO:
        yield _ALSO[name]
        yield ""
    yield "| key | what stands there | meaning |"
    yield "|---|---|---|"
    needed = table.get("required", ())
    for key, field in table["properties"].items():
        if name == "Heading" and _is_section(field):
            continue
        if name == "CaseTable" and key in schema["$defs"]["BoxesTable"]["properties"]:
            continue
        must = " (needed)" if key in needed else ""
        yield f"| `{key}`{must} | {_kind(field, schema)} | {field.get('description', '')} |"


def _is_section(field: _Json) -> bool:
    return "$ref" in field or "additionalProperties" in field


def _kind(field: _Json, schema: _Json) -> str:
    """What may stand in a field, in words."""
    if "anyOf" in field:
        return _either(field["anyOf"], schema)
    if "$ref" in field:
        return "a table"
    values = field.get("enum") or ([field["const"]] if "const" in field else [])
    if values:
        return ", ".join(f"`{_toml(value)}`" for value in values)
    if field.get("x-kind") == "length":
        return _length(field)
    if field.get("x-kind") == "weight":
        return 'a weight: `"25 kg"`, `"55 lb"`'
    return _plain(field, schema)


def _either(choices: list[_Json], schema: _Json) -> str:
    words = [_kind(choice, schema) for choice in choices]
    if len(words) == 2 and words[1] == f"a list, each {words[0]}":
        return f"{words[0]}; or a list of such"
    return " or ".join(dict.fromkeys(words))


def _plain(field: _Json, schema: _Json) -> str:
    match field.get("type"):
        case "array":
            return f"a list, each {_kind(field.get('items', {}), schema)}"
        case "integer":
            low, high = field.get("minimum"), field.get("maximum")
            return "a whole number" + (f", {low} to {high}" if high is not None else "")
        case "boolean":
            return "`true` or `false`"
        case "object":
            return "tables"
        case _:
            return "text"


def _length(field: _Json) -> str:
    told = field.get("x-range")
    return f"a length, {told['in']} in or {told['mm']} mm" if told else "a length"


def _toml(value: Any) -> str:
    return f'"{value}"' if isinstance(value, str) else str(value)


def _usual() -> Iterator[str]:
    yield "These goods are known by name; a section of that name changes what it mentions."
    yield ""
    yield "| stock | in an inch job | in a metric job |"
    yield "|---|---|---|"
    inches, metric = usual_tables("in")["stock"], usual_tables("mm")["stock"]
    for key in inches:
        yield f"| `{key}` | {_goods(inches[key], 'in')} | {_goods(metric[key], 'mm')} |"


def _goods(goods: _Json, unit: Unit) -> str:
    text = f"{goods['title']}, {goods['thickness']} {unit} thick by its label"
    if "size" in goods:
        text += f", {' x '.join(goods['size'])} {unit}"
    if "lengths" in goods:
        text += f", {goods['width']} wide, {', '.join(goods['lengths'])} {unit} long"
    return text


if __name__ == "__main__":
    sys.stdout.write(reference_text())
