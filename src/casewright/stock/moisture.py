"""How moist solid wood is when it is cut, and how moist the room will make it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Given, Origin
from casewright.sources import ROOM_MOISTURE, equilibrium_moisture

__all__ = ["Moisture", "usual_moisture"]

_TENTH = 10


@dataclass(frozen=True, slots=True)
class Moisture:
    """Moisture content of wood [%], three times.

    Parameters
    ----------
    made
        On the day it is cut.
    dry, damp
        What it comes to in the room in the driest and in the dampest month.
    placeholder
        Whether nobody has read `made` with a meter.
    """

    made: Given
    dry: Given
    damp: Given
    placeholder: bool = True

    @classmethod
    def of(cls, low: int, high: int, made: Given | None = None, where: str = "") -> Moisture:
        """Of a room whose air is between two relative humidities [%], at 21 °C (70 °F)."""
        usual = Given(
            Fraction(ROOM_MOISTURE["most of the USA"].percent),
            Origin("cited", "usual for interiors, not read", "wood-handbook"),
        )
        dry, damp = (_at(humidity, where) for humidity in (low, high))
        return cls(made or usual, dry, damp, placeholder=made is None)


def _at(humidity: int, where: str) -> Given:
    """In air that stays at a humidity, to a tenth of a percent as the tables give it."""
    percent = Fraction(round(equilibrium_moisture(Fraction(humidity)) * _TENTH), _TENTH)
    note = f"what wood comes to at {humidity} % relative humidity and 21 °C"
    return Given(percent, Origin("cited", note, "wood-handbook", where))


def usual_moisture() -> Moisture:
    """A room that is heated in winter, not measured: 30 to 60 % relative humidity."""
    return Moisture.of(30, 60)
