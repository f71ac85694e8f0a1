"""How a transcribed figure was come by."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = ["How", "Provenance"]

How = Literal["definition", "secondary copy", "from memory", "shaky", "computed"]


@dataclass(frozen=True, slots=True)
class Provenance:
    """Source of a row and how well it is known.

    Parameters
    ----------
    source
        Key in `SOURCES`.
    how
        definition: exact by agreement. secondary copy: read in a copy, not in the publication
        itself. from memory: not seen while transcribing. shaky: a placeholder. computed:
        follows from other rows.
    note
        What else a reader should know.
    """

    source: str
    how: How
    note: str = ""

    @property
    def confirmed(self) -> bool:
        """Whether the figure was read somewhere, or is exact by definition."""
        return self.how in ("definition", "secondary copy", "computed")
