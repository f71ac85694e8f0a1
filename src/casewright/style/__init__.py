"""Defaults of the house, each with its meaning and its origin; a job may change any of them."""

from casewright.style.defaults import STYLE_KEYS, StyleKey
from casewright.style.sheet import Style, default_style

__all__ = ["STYLE_KEYS", "Style", "StyleKey", "default_style"]
