"""The JSON Schema of job files, for editors and for the reference."""

from __future__ import annotations

import json
from typing import Any

from casewright.job.defaults import usual_tables
from casewright.job.tables import JobFile

__all__ = ["job_schema", "schema_text"]

_Json = dict[str, Any]
_KINDS = {"sheet": "SheetTable", "board": "BoardTable", "band": "BandTable",
          "glazing": "GlazingTable"}  # fmt: skip


def job_schema() -> _Json:
    """JSON Schema (draft 2020-12) of a job file.

    Lengths are text or numbers; their ranges stand under `x-range`, in the words of either unit.
    Goods that are known without a section need not repeat what is known.
    """
    schema = JobFile.model_json_schema()
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    schema["title"] = "Casewright job file"
    tables: dict[str, _Json] = schema["$defs"]
    schema["properties"]["stock"]["properties"] = {
        key: _partly(tables[_KINDS[goods["kind"]]])
        for key, goods in usual_tables("in")["stock"].items()
    }
    tidy: _Json = _tidy(schema)
    return tidy


def _partly(table: _Json) -> _Json:
    """A table of which every key may be left out."""
    return {key: value for key, value in table.items() if key != "required"}


def _tidy(node: Any) -> Any:
    """The schema without the titles and nulls of the classes behind it."""
    if isinstance(node, list):
        return [_tidy(each) for each in node]
    if not isinstance(node, dict):
        return node
    kept = {key: _tidy(value) for key, value in node.items() if not _is_noise(key, value, node)}
    choices = kept.get("anyOf")
    if isinstance(choices, list):
        choices = [each for each in choices if each != {"type": "null"}]
        if len(choices) == 1:
            kept = {**{k: v for k, v in kept.items() if k != "anyOf"}, **choices[0]}
        else:
            kept["anyOf"] = choices
    if isinstance(kept.get("description"), str):
        kept["description"] = " ".join(kept["description"].split())
    return kept


def _is_noise(key: str, value: Any, node: _Json) -> bool:
    if key == "title":
        return isinstance(value, str) and "$schema" not in node
    return key == "default" and value in (None, {}, [])


def schema_text() -> str:
    """The schema as it is written to a file."""
    return json.dumps(job_schema(), indent=2, ensure_ascii=False) + "\n"
