"""Sheets against work: what one more sheet saves at the saw, and the price at which it pays."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.cutting.easing import ease
from casewright.cutting.engine import Stop
from casewright.cutting.problem import Problem
from casewright.cutting.rates import WorkModel
from casewright.cutting.solution import Solution
from casewright.cutting.steps import plan_cuts
from casewright.cutting.work import Work, work_of

__all__ = ["Choice", "Trade", "break_even", "weigh"]


@dataclass(frozen=True, slots=True)
class Choice:
    """A plan and the work that it asks for."""

    solution: Solution
    work: Work


@dataclass(frozen=True, slots=True)
class Trade:
    """Two plans for the same parts.

    Parameters
    ----------
    fewest
        From the cheapest sheets found, with the least work found for them.
    easiest
        From more of them, with less work; None: more of them save nothing.
    """

    fewest: Choice
    easiest: Choice | None

    @property
    def minutes(self) -> Fraction:
        """What the easier plan saves for each unit that its sheets cost more [min]."""
        if self.easiest is None:
            return Fraction(0)
        more = self.easiest.solution.cost - self.fewest.solution.cost
        return break_even(self.fewest.work.total, self.easiest.work.total, more) / 100


def break_even(work: int, eased: int, more: int) -> Fraction:
    """The price of a sheet at which two plans change places.

    Below it the plan from more sheets costs less in all.

    Parameters
    ----------
    work, eased
        What the plans cost besides their sheets, both in one unit, of money or time.
    more
        Sheets that the easier plan takes more; above 0.

    Raises
    ------
    ValueError
        When it takes no more.
    """
    if more < 1:
        msg = f"the easier plan must take more sheets, not {more}"
        raise ValueError(msg)
    return Fraction(work - eased, more)


def weigh(
    problem: Problem,
    solution: Solution,
    model: WorkModel,
    stop: Stop | None = None,
    seed: int = 0,
) -> Trade:
    """Find what one more sheet would save.

    Parameters
    ----------
    problem, solution
        What is cut, and the plan from the cheapest sheets, with its work already eased.
    model
        What work is reckoned by.
    stop, seed
        As for `ease`.
    """
    fewest = Choice(solution, _work(problem, solution, model))
    step = _cheapest(problem) if solution.bound.measure == "price" else 1
    if step is None:
        return Trade(fewest, None)
    other = ease(problem, solution, model, stop, seed, more=step)
    if other is solution:
        return Trade(fewest, None)
    easiest = Choice(other, _work(problem, other, model))
    is_trade = other.cost > solution.cost and easiest.work.total < fewest.work.total
    if not is_trade and easiest.work.total < fewest.work.total:
        return Trade(easiest, None)
    return Trade(fewest, easiest if is_trade else None)


def _work(problem: Problem, solution: Solution, model: WorkModel) -> Work:
    return work_of(problem, solution, plan_cuts(problem, solution, model.limits), model)


def _cheapest(problem: Problem) -> int | None:
    """Price of the cheapest stock of which there is always more."""
    return min((item.price for item in problem.stock if item.count is None), default=None)
