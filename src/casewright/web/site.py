"""What all requests share."""

from __future__ import annotations

from dataclasses import dataclass, field

from casewright.errors import CasewrightError, Location, Problem
from casewright.web.announcer import Announcer
from casewright.web.built_page import BuiltPage
from casewright.web.devices import Devices
from casewright.web.editing import Editor
from casewright.web.layout_answers import LayoutAnswers
from casewright.web.live_job import LiveJob
from casewright.web.packet_maker import PacketMaker
from casewright.web.snapshot import Snapshot

__all__ = ["NothingYetError", "Site"]

_PATIENCE_S = 60.0


class NothingYetError(CasewrightError):
    """The job file has had no meaning since the server was started."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__(problems)
        self._problems = problems

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What is wrong in the file."""
        return self._problems

    def __str__(self) -> str:
        return "\n".join(map(str, self._problems))


@dataclass(frozen=True, slots=True)
class Site:
    """One job as it is served.

    Parameters
    ----------
    addresses
        Where other devices find it; empty when it serves this machine alone.
    answers
        Of layouts, as long as the job stays as it is.
    """

    live: LiveJob
    editor: Editor
    news: Announcer
    devices: Devices
    page: BuiltPage
    packets: PacketMaker
    addresses: tuple[str, ...]
    answers: LayoutAnswers = field(default_factory=LayoutAnswers)

    def snapshot(self, *, at_least: int | None = None) -> Snapshot:
        """The job worked out.

        Parameters
        ----------
        at_least
            A version that is new enough; None: what stands in the files now, whoever wrote it.
            One that is not there yet was told by a server that ran before, and what was written
            last answers it.

        Raises
        ------
        NothingYetError
            When the file never had a meaning.
        """
        if at_least is None:
            self.live.look()
        last = self.live.version
        version = last if at_least is None else min(max(at_least, 1), last)
        standing = self.live.wait_for(version, _PATIENCE_S)
        if standing.snapshot is None:
            wait = Problem(Location(self.live.path.name), "it is still being worked out", "wait")
            raise NothingYetError(standing.problems or (wait,))
        return standing.snapshot
