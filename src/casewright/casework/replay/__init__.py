"""Replay of the assembly: whether a case can be put together in the order its steps give."""

from casewright.casework.replay.replay import Replay, replay

__all__ = ["Replay", "replay"]
