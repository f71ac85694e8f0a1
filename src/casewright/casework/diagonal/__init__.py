"""Diagonal corners: a case with a leg along either wall and a door across its mouth."""

from casewright.casework.diagonal.build import build_diagonal
from casewright.casework.diagonal.roots import OVER_ROOT_2, UNDER_ROOT_2

__all__ = ["OVER_ROOT_2", "UNDER_ROOT_2", "build_diagonal"]
