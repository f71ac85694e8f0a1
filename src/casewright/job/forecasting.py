"""What is to be expected of the fits of a job, and the hold points in its order of work."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from casewright.job.collector import collector_at_rest
from casewright.job.reasons import NoSuchPathError, nearest_paths
from casewright.job.worked import WorkedJob
from casewright.resolve import HoldPoint, hold_points
from casewright.room.forecasts import Forecast, Forecasts
from casewright.room.model import Room

__all__ = ["Outlook", "forecast_job"]


@dataclass(frozen=True, slots=True)
class Outlook:
    """What is to be expected of a job.

    Parameters
    ----------
    room
        The job as it is now.
    forecasts
        Of every fit that was asked for, the likeliest to miss first.
    points
        The hold points that look after any of them, in the order of making.
    """

    room: Room
    forecasts: tuple[Forecast, ...]
    points: tuple[HoldPoint, ...]


def forecast_job(worked: WorkedJob, path: str = "") -> Outlook:
    """What is to be expected of the fits of a job.

    Parameters
    ----------
    path
        Only of the fits of this path and under it, or of what is made at it; empty: of all.

    Raises
    ------
    NoSuchPathError
        With the nearest ones, when no fit is there.
    """
    room = worked.room
    with collector_at_rest():
        found = [each for each in Forecasts(room).all() if _is_at(each, path)]
        if path and not found:
            raise NoSuchPathError(path, nearest_paths(path, tuple(_places(room))))
        found.sort(key=lambda each: -each.chance)
        known = {each.fit.path for each in found}
        points = tuple(
            point
            for point in hold_points(room)
            if any(watched.fit.path in known for watched in point.watched)
        )
    return Outlook(room, tuple(found), points)


def _is_at(forecast: Forecast, path: str) -> bool:
    fit = forecast.fit
    if not path or path in (fit.path, fit.owner):
        return True
    return any(name.startswith(f"{path}.") for name in (fit.path, fit.owner))


def _places(room: Room) -> Iterable[str]:
    fits = room.chain.fits.values()
    return dict.fromkeys([*(fit.path for fit in fits), *(fit.owner for fit in fits)])
