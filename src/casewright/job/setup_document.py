"""`setup --json`: a setting, or what a test piece comes to. See docs/documents.md."""

from __future__ import annotations

from typing import Any

from casewright.casework.features import Feature
from casewright.casework.parts import Part
from casewright.dims import Dim, Unit, length_json
from casewright.job.coaching import Coached, Trial, trials
from casewright.job.documents import head_json
from casewright.room.model import Room

__all__ = ["coached_document", "setting_document"]

_Json = dict[str, Any]


def setting_document(room: Room, part: Part, feature: Feature) -> _Json:
    """How a tool is set for a cut, and what can be measured on its test piece."""
    unit, setup = room.spec.unit, feature.setup
    return {
        **head_json("setup", room.spec),
        "path": feature.path,
        "part": part.path,
        "tool": setup.tool,
        "bit": setup.bit,
        "passes": setup.passes,
        "fence": _length(setup.fence, unit),
        "depth": _length(setup.depth, unit),
        "stop": _length(setup.stop, unit),
        "measures": [_trial(each, unit) for each in trials(part, feature)],
    }


def coached_document(room: Room, found: Coached) -> _Json:
    """The move, and what goes by the same setting."""
    unit = room.spec.unit
    return {
        **head_json("setup", room.spec),
        "path": found.entry.path,
        "tool": found.entry.tool,
        "measure": _trial(found.trial, unit),
        "off": length_json(found.off, unit),
        "move": found.move,
        "same_setting": [feature.path for _, feature in found.same],
        "made_before": [feature.path for _, feature in found.done],
        "leaning": [
            {
                "axis": lean.axis,
                "tools": list(lean.tools),
                "settings": lean.count,
                "off": length_json(lean.off, unit),
                "cause": lean.cause,
            }
            for lean in found.leaning
        ],
        "entry": found.entry.id,
    }


def _trial(trial: Trial, unit: Unit) -> _Json:
    return {
        "what": trial.what,
        "axis": trial.axis,
        "wanted": None if trial.wanted is None else length_json(trial.wanted, unit),
        "says": trial.words,
    }


def _length(dim: Dim | None, unit: Unit) -> _Json | None:
    return None if dim is None else dict(length_json(dim.value, unit))
