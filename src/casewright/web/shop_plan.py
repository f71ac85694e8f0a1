"""The plans of cuts in hand: the one that the sheets on the bench were begun by, what followed.

Once a piece is marked cut, it is no longer on the plan of what is left: that plan lays the rest
out on whole sheets. Whoever stands at the saw with half a sheet needs the plan by which it was
begun. So that plan is kept while it holds: while every piece that is still to be cut is on it, at
its size. A piece that was cut by it and spoiled is not: its place on the sheet is gone. It comes
with the next plan, which takes over when nothing else is left; or, when somebody asks for it, the
rest is planned anew at once: sheets that are begun go on by their plan, and what was spoiled is
laid out with all that lies on sheets that are not begun.

The plans are kept beside the job as well, so that a server that is started in the middle of a
sheet goes on with the same cards. Where they are not to be had, it plans once more what was
planned before the first cut: that is the plan in hand if it bears the name that the entries of the
record carry.
"""

from __future__ import annotations

import threading
from collections.abc import Callable
from pathlib import Path
from typing import Literal

from casewright.breakdown import Breakdown
from casewright.errors import CasewrightError
from casewright.job.recorded import read_entries
from casewright.job.rest_plan import plan_rest
from casewright.outputs.apart import apart
from casewright.record import standing
from casewright.web.hand_file import keep_plans, kept_plans
from casewright.web.hand_plan import (
    HandPlan,
    Left,
    lies_in,
    lies_of,
    open_parts,
    plan_name,
    rests_left,
    stale,
)
from casewright.web.shop_anew import anew_told
from casewright.web.shop_notes import last_plan
from casewright.web.shop_schema import ShopAnew
from casewright.web.snapshot import Snapshot

__all__ = ["AnewError", "Hand", "PlansInHand"]

State = Literal["", "pending", "failed"]

_PATIENCE_S = 60.0
_ROUNDS = 5
"""How often the rest is planned anew when somebody begins another sheet meanwhile [-]."""


class AnewError(CasewrightError, ValueError):
    """The rest cannot be planned anew."""


class Hand:
    """What is worked by now.

    Parameters
    ----------
    plans
        In the order in which they were made; none: they are being worked out.
    anew
        What was told when the rest was last planned anew.
    says
        What a person must know of how the plans are kept.
    """

    def __init__(
        self, plans: tuple[HandPlan, ...] = (), anew: ShopAnew | None = None, says: str = ""
    ) -> None:
        self.plans, self.anew, self.says = plans, anew, says

    @property
    def name(self) -> str:
        """Of all its plans; empty where there is none."""
        return " ".join(plan.name for plan in self.plans)

    @property
    def breakdowns(self) -> tuple[Breakdown, ...]:
        """Its plans alone."""
        return tuple(plan.breakdown for plan in self.plans)


class PlansInHand:
    """Keeps the plans that are cut by.

    Parameters
    ----------
    job
        The job file.
    newest
        Gives the job as last worked out.
    told
        Called from any thread when the rest was planned anew, or could not be.
    """

    def __init__(
        self, job: Path, newest: Callable[[], Snapshot | None], told: Callable[[], None]
    ) -> None:
        self._job, self._newest, self._told = job, newest, told
        self._lock, self._asked = threading.Lock(), threading.Lock()
        self._hand = Hand()
        self._ready = threading.Event()
        self.state: State = ""

    def take_up(self, snapshot: Snapshot) -> bool:
        """Go on by what was kept by a server that ran before.

        Returns
        -------
        Whether there is something to go on by.
        """
        if not self._ready.is_set():
            try:
                kept = kept_plans(self._job, snapshot.loaded)
                with self._lock:
                    self._hand = Hand(kept.plans, kept.anew, kept.says)
            finally:
                self._ready.set()
        return bool(self._hand.plans)

    @property
    def last(self) -> Hand:
        """What was worked by when it was last asked for: it is replaced, never changed."""
        return self._hand

    def of(self, snapshot: Snapshot) -> Hand:
        """What to work by now."""
        self._ready.wait(_PATIENCE_S)
        planned = snapshot.purchases.breakdown if snapshot.purchases else snapshot.cuts
        with self._lock:
            if not self._hand.plans and snapshot.begun is not None:
                self._begin_again(snapshot.begun)
            hand = self._hand
            if hand.plans and _holds(hand.plans, snapshot, new=planned):
                return hand
            if planned is None:
                return Hand(says=hand.says)
            entries, before = snapshot.recorded.entries, snapshot.recorded.marks.spoiled
            plan = HandPlan(planned, plan_name(planned), entries, before)
            self._hand = Hand((plan,), says=keep_plans(self._job, (plan,), None))
            return self._hand

    def _begin_again(self, begun: Breakdown) -> None:
        """Go on by what was begun under another server."""
        name = plan_name(begun)
        if name == last_plan(read_entries(self._job)[0]):
            self._hand = Hand((HandPlan(begun, name),), says=self._hand.says)

    def rests(self, snapshot: Snapshot) -> tuple[Left, ...]:
        """What would be planned anew and what goes on by which plans, the least first."""
        notes = [each.entry.note for each in standing(read_entries(self._job)[0])]
        room, spoiled = snapshot.worked.room, snapshot.recorded.marks.spoiled
        return rests_left(self.of(snapshot).plans, room, spoiled, notes)

    def begin_anew(self, snapshot: Snapshot, name: str) -> None:
        """Plan the rest anew, meanwhile.

        Parameters
        ----------
        name
            Of what was worked by when it was asked for.

        Raises
        ------
        AnewError
            When it is worked by another plan by now, or nothing has lost its place.
        """
        hand = self.of(snapshot)
        if hand.name != name or not hand.plans:
            msg = "the plan of cuts is another by now; look at it first"
            raise AnewError(msg)
        if not self.rests(snapshot)[0].rest.lost:
            msg = "nothing has lost its place on the plan of cuts"
            raise AnewError(msg)
        if self._asked.acquire(blocking=False):
            self.state = "pending"
            self._told()
            threading.Thread(target=self._work, args=(hand,), name="anew", daemon=True).start()

    def _work(self, hand: Hand) -> None:
        """Plan until what was planned is what is left: somebody may begin a sheet meanwhile."""
        state: State = "failed"
        try:
            for _ in range(_ROUNDS):
                snapshot = self._newest()
                if snapshot is not None and self._plan(hand, snapshot):
                    state = ""
                    break
        except (CasewrightError, RuntimeError):  # whatever it was, the plan in hand stays
            state = "failed"
        finally:
            self.state = state
            self._asked.release()
            self._told()

    def _plan(self, hand: Hand, snapshot: Snapshot) -> bool:
        """Whether it was planned, and is what is left still."""
        ways = self.rests(snapshot)
        asked = [way.rest for way in ways]
        chosen, made = apart(plan_rest, snapshot.loaded, snapshot.recorded, asked)
        kept, rest = ways[chosen]
        newest = self._newest() or snapshot
        left = self.rests(newest)
        again = left[min(chosen, len(left) - 1)]
        if again.rest != rest or [one.sheets for one in again.kept] != [
            one.sheets for one in kept
        ]:
            return self._hand is not hand
        marks = snapshot.recorded.marks.spoiled
        plan = HandPlan(made, plan_name(made), snapshot.recorded.entries, marks, rest)
        with self._lock:
            if self._hand is hand:
                plans = (*kept, plan)
                anew = anew_told(snapshot.worked.room, hand.plans, plans)
                self._hand = Hand(plans, anew, keep_plans(self._job, plans, anew))
        return True


def _holds(plans: tuple[HandPlan, ...], snapshot: Snapshot, *, new: Breakdown | None) -> bool:
    """Whether what is left can be cut by plans that were kept."""
    room, spoiled = snapshot.worked.room, snapshot.recorded.marks.spoiled
    lies, left = lies_in(plans, spoiled), list(open_parts(room))
    lost = {part.path for part in left if part.path not in lies and part.path in spoiled}
    if stale(left, lies, lost) or (left and len(lost) == len(left)):
        return False
    ever = {path for plan in plans for path, _ in lies_of(plan)}
    begun = any(part.state != "planned" and part.path in ever for part in room.parts)
    return begun or len(plans) > 1 or new is None or plan_name(new) == plans[0].name
