"""A room as it would be, were some made pieces of other sizes: each choice is built once."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.dims import Dim, Fit, Origin
from casewright.facts import NO_FACTS, Fact, Facts
from casewright.resolve.broken import Broken, broken
from casewright.resolve.moves import LOOSE, comes_off, sides_of
from casewright.resolve.one_case import case_with
from casewright.resolve.reach import Reach
from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["Sizes", "Trial", "Trials"]

Sizes = Mapping[str, Fraction | None]
"""By path of a number, the size it is cut to then [mm]; None: it is still to be cut."""


@dataclass(frozen=True, slots=True)
class Trial:
    """What was tried.

    Parameters
    ----------
    room
        As it would be, as far as it was built.
    cases
        Those that were built.
    changed
        Keys of those with pieces of other sizes.
    """

    room: Room
    cases: Mapping[str, Case]
    changed: AbstractSet[str]
    _broken: dict[str, Broken]

    @property
    def fits(self) -> Mapping[str, Fit]:
        """All that could have moved, by path."""
        return self.room.chain.fits

    @property
    def parts(self) -> Mapping[str, Part]:
        """Its parts by path, those of the cases that were built as they would be."""
        known = {part.path: part for part in self.room.parts}
        return known | {p.path: p for case in self.cases.values() for p in case.parts}

    def broken(self, key: str) -> Broken:
        """What of a case does not go together then."""
        if key not in self._broken:
            self._broken[key] = broken(self.room, self.cases[key])
        return self._broken[key]


class Trials:
    """Trials on one room.

    Parameters
    ----------
    room
        As things are.
    """

    def __init__(self, room: Room) -> None:
        self.room = room
        self._cases = {case.key: case for case in room.cases}
        self._tried: dict[tuple[object, ...], Trial] = {}
        self._now = Trial(room, self._cases, frozenset(), {})

    @cached_property
    def movable(self) -> tuple[Part, ...]:
        """The made pieces that are loose, or come off again."""
        made = (part for part in self.room.parts if part.state != "planned")
        return tuple(p for p in made if p.state in LOOSE or comes_off(self.room, p))

    @cached_property
    def reach(self) -> Reach:
        """The fits that the sizes of made pieces reach."""
        return Reach(self._sizes.values(), self.room.chain.fits)

    @cached_property
    def _sizes(self) -> dict[str, Dim]:
        made = (part for part in self.room.parts if part.state != "planned")
        return {dim.path: dim for part in made for _, dim in sides_of(part)}

    def keeps_fits(self, trial: Trial) -> bool:
        """Whether every fit that holds now holds then."""
        known = self.room.chain.fits
        fits = trial.fits.items()
        return all(fit.holds or (path in known and not known[path].holds) for path, fit in fits)

    def spoils_nothing(self, trial: Trial) -> bool:
        """Whether every fit that holds now holds then, and what goes together now does then.

        Of cases with no piece of another size the fits alone are looked at.
        """
        now = self._now
        return self.keeps_fits(trial) and all(
            set(trial.broken(key)) <= set(now.broken(key)) for key in trial.changed
        )

    def stands_alone(self, case: Case) -> bool:
        """Whether a case can be built by itself: no plinth, no panel, no island."""
        return any(each.key == case.key for each in self.room.spec.cases)

    def broken(self, case: Case) -> Broken:
        """What of a case does not go together as things are."""
        return self._now.broken(case.key)

    def at(self, sizes: Sizes, fit: Fit) -> Trial:
        """The room with made pieces at these sizes, as far as fits of it may fail by them.

        Parameters
        ----------
        sizes
            What is tried.
        fit
            What is to be mended: it is there in what was built.
        """
        case = self._case_of(sizes)
        if case is not None and self._stays_in(case, sizes, fit):
            return self.alone(case, sizes)
        return self.whole(sizes)

    def whole(self, sizes: Sizes) -> Trial:
        """The whole room with made pieces at these sizes."""
        return self._once("", sizes, self._whole)

    def alone(self, case: Case, sizes: Sizes) -> Trial:
        """A case with made pieces of it at these sizes, what its run decides for it left as it is.

        A case that does not stand by itself is built with the whole room.
        """
        return self._once(
            case.key, sizes, lambda facts: self._of_case(case, facts) or self._whole(facts)
        )

    def _once(self, built_for: str, sizes: Sizes, built: Callable[[Facts], Trial]) -> Trial:
        key = (built_for, *sorted(sizes.items()))
        if key not in self._tried:
            found = built(self._facts(sizes))
            changed = {self._owners.get(path.rpartition(".")[0], "") for path in sizes}
            self._tried[key] = replace(found, changed=found.cases.keys() & changed)
        return self._tried[key]

    @cached_property
    def _owners(self) -> dict[str, str]:
        """Keys of the cases that pieces are of, by path."""
        return {part.path: part.case for part in self.room.parts}

    def _case_of(self, sizes: Sizes) -> Case | None:
        keys = {path.partition(".")[0] for path in sizes}
        return self._cases.get(keys.pop()) if len(keys) == 1 else None

    def _of_case(self, case: Case, facts: Facts) -> Trial | None:
        found = case_with(self.room, case, facts)
        return None if found is None else Trial(found[0], {case.key: found[1]}, frozenset(), {})

    def _whole(self, facts: Facts) -> Trial:
        spec = replace(self.room.spec, file_facts=NO_FACTS)
        room = build(spec, facts, designed=self.room.designed)
        return Trial(room, {each.key: each for each in room.cases}, frozenset(), {})

    def _stays_in(self, case: Case, sizes: Sizes, mended: Fit) -> bool:
        """Whether of the fits that hold now only those of the case may fail by it."""
        own = f"{case.key}."
        if not mended.path.startswith(own):
            return False
        over = {fit.path: fit for path in sizes for fit in self.reach.fits_over(path)}
        outside = (f for p, f in over.items() if f.holds and not p.startswith(own))
        return all(self._holds_at(fit, sizes, -1) for fit in outside)

    def _facts(self, sizes: Sizes) -> dict[str, Fact]:
        held = self.room.chain.facts
        facts = {path: fact for path, fact in held.items() if isinstance(fact, Fact)}
        for path, size in sizes.items():
            if size is None:
                facts.pop(path, None)
            else:
                facts[path] = Fact(Origin("made", "tried"), cut=size)
        return facts

    def may_mend(self, sizes: Sizes, fit: Fit) -> bool:
        """Whether a fit may hold, and none fail that holds now, by the formulas alone.

        A prediction, which saves building what cannot do; what it lets pass is tried.
        """
        over = {each.path: each for path in sizes for each in self.reach.fits_over(path)}
        if fit.path not in over:
            return False
        return all(
            self._holds_at(each, sizes, 1) for each in over.values() if each is fit or each.holds
        )

    def _holds_at(self, fit: Fit, sizes: Sizes, beyond: int) -> bool:
        """Whether a fit holds by its formula, with what the grid may do added or taken off."""
        gap = self.reach.gap(fit, sizes)
        grid = beyond * 2 * self.room.spec.style["cut_step"].value
        return fit.low - grid <= gap <= fit.high + grid
