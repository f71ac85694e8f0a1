"""Cases that an earlier build left: what would come out the same is taken as it is.

For a drawing that is wanted before all the rest. The law is that a room is the same, numbers and
drawings, as if every case in it had been built anew; only the numbers on labels are the old ones.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import islice

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.specs import CaseSpec, Hand
from casewright.dims import Branch, Dim, Fit

__all__ = ["MadeCase", "MadeCases"]


@dataclass(frozen=True, slots=True)
class MadeCase:
    """A case as it was built, with all that it put on the chain.

    Parameters
    ----------
    spec, own_plinth, seams
        What it was built from.
    """

    case: Case
    spec: CaseSpec
    own_plinth: bool
    seams: tuple[Hand, ...]
    nodes: Mapping[str, Dim]
    fits: Mapping[str, Fit]
    branches: tuple[Branch, ...]

    def is_of(self, spec: CaseSpec, seams: tuple[Hand, ...], *, own_plinth: bool) -> bool:
        """Whether it would be built from the same."""
        return (self.own_plinth, self.seams) == (own_plinth, seams) and self.spec == spec


@dataclass(slots=True)
class MadeCases:
    """Builds cases, or takes them over.

    Parameters
    ----------
    before
        Those that may be taken over, by key.
    made
        All of this build whose sizes no run decides, by key.
    """

    house: House
    before: Mapping[str, MadeCase]
    made: dict[str, MadeCase] = field(default_factory=dict)

    def case(
        self,
        spec: CaseSpec,
        sizes: tuple[Dim | None, Dim | None],
        seams: tuple[Hand, ...],
        *,
        own_plinth: bool,
    ) -> Case:
        """A case as `build_case` makes it.

        Parameters
        ----------
        sizes
            Width and height where its run decides them [mm].
        """
        width, height = sizes
        is_own = width is None and height is None
        known = self.before.get(spec.key) if is_own else None
        if known is not None and known.is_of(spec, seams, own_plinth=own_plinth):
            self._take(known)
            return known.case
        chain = self.house.chain
        begun = len(chain.nodes), len(chain.fits), len(chain.branches)
        case = build_case(
            self.house, spec, width, height=height, own_plinth=own_plinth, seams=seams
        )
        if is_own:
            nodes = islice(chain.nodes.items(), begun[0], None)
            self.made[spec.key] = MadeCase(
                case, spec, own_plinth, seams,
                {path: dim for path, dim in nodes if path.startswith(f"{spec.key}.")},
                dict(islice(chain.fits.items(), begun[1], None)),
                tuple(chain.branches[begun[2] :]),
            )  # fmt: skip
        return case

    def _take(self, known: MadeCase) -> None:
        chain = self.house.chain
        chain.nodes.update(known.nodes)
        chain.fits.update(known.fits)
        chain.branches.extend(known.branches)
        chain.used_facts.update(chain.facts.keys() & known.nodes.keys())
        self.made[known.spec.key] = known
