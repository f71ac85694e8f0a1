"""`forecast --json`: forecasts and hold points as data. See docs/documents.md."""

from __future__ import annotations

from typing import Any

from casewright.dims import Slack, Unit, length_json, normal_chance
from casewright.job.documents import head_json
from casewright.job.forecasting import Outlook
from casewright.resolve import HoldPoint
from casewright.room.forecast_words import cause_text
from casewright.room.forecasts import Forecast
from casewright.shop import Tool

__all__ = ["forecast_document"]

_Json = dict[str, Any]


def forecast_document(outlook: Outlook) -> _Json:
    """Every fit with its chances and causes, the hold points, and the tools."""
    room = outlook.room
    unit = room.spec.unit
    return {
        **head_json("forecast", room.spec),
        "fits": [_fit(each, unit) for each in outlook.forecasts],
        "hold_points": [_point(each, unit) for each in outlook.points],
        "tools": [_tool(each, unit) for each in room.spec.shop.tools.values()],
    }


def _fit(forecast: Forecast, unit: Unit) -> _Json:
    fit, found = forecast.fit, forecast.slack
    return {
        "path": fit.path,
        "owner": fit.owner,
        "nominal": length_json(fit.gap.value, unit),
        "band": [length_json(fit.low, unit), length_json(fit.high, unit)],
        "worst": [length_json(found.low, unit), length_json(found.high, unit)],
        "rss_mm": found.sigma_mm,
        "systematic_mm": found.bias_mm,
        "simulated": found.decided,
        "chance": forecast.chance,
        "normal_chance": normal_chance(found, fit.low, fit.high),
        "read": [each.dim.path for each in forecast.read],
        "chance_read": forecast.read_chance,
        "causes": _causes(found, unit),
    }


def _causes(found: Slack, unit: Unit) -> list[_Json]:
    return [
        {
            "key": term.cause.key,
            "says": cause_text(term.cause),
            "tool": term.cause.tool,
            "slope": str(term.slope),
            "sigma": length_json(term.cause.sigma, unit),
            "limit": length_json(term.cause.limit, unit),
            "law": term.cause.law,
            "systematic": term.cause.bias,
        }
        for term in found.terms
    ]


def _point(point: HoldPoint, unit: Unit) -> _Json:
    bands = {"go": point.go, "sound": point.sound}
    return {
        "path": point.path,
        "tool": point.reading.tool,
        "planned": length_json(point.planned, unit),
        "read": None if point.read is None else length_json(point.read, unit),
        **{
            name: None if band is None else [length_json(end, unit) for end in band]
            for name, band in bands.items()
        },
        "parts": list(point.parts),
        "saves_minutes": point.saved_minutes,
        "takes_minutes": point.cost_minutes,
        "fits": [
            {
                "path": each.fit.path,
                "mending_minutes": each.minutes,
                "without": each.without,
                "with": each.with_it,
            }
            for each in point.watched
        ],
    }


def _tool(tool: Tool, unit: Unit) -> _Json:
    known = tool.learned
    return {
        "tool": tool.kind,
        "sigma": length_json(tool.strays("").sigma, unit),
        "limit": length_json(tool.strays("").limit, unit),
        "stated": tool.is_stated,
        "learned": None
        if known is None
        else {
            "pairs": known.count,
            "offset": length_json(known.offset, unit),
            "sigma": length_json(known.sigma, unit),
            "limit": length_json(known.limit, unit),
            "by": "things read twice" if known.is_twice else "pieces cut and read",
        },
    }
