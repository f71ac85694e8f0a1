"""Who writes into a record, and when: where the machine's clock and name are read."""

from __future__ import annotations

import os
import platform
import uuid
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

__all__ = ["Writer", "this_writer"]

_DEVICE = "CASEWRIGHT_DEVICE"
_LONGEST_DEVICE = 60


@dataclass(frozen=True, slots=True)
class Writer:
    """Who writes, and when.

    Parameters
    ----------
    device
        Name of the device.
    now
        With its time zone.
    new_id
        Gives a fresh id at each call.
    """

    device: str
    now: datetime
    new_id: Callable[[], str]


def this_writer() -> Writer:
    """The machine it runs on, now: by the name in CASEWRIGHT_DEVICE, else by its own."""
    named = os.environ.get(_DEVICE, "").strip() or platform.node()
    device = "".join(c for c in named if c.isprintable()).strip()[:_LONGEST_DEVICE] or "desk"
    now = datetime.now().astimezone()
    at = now.replace(microsecond=now.microsecond // 1000 * 1000)
    return Writer(device, at, lambda: uuid.uuid4().hex)
