"""Lengths and the chain of dimensions: exact numbers that can say why they are what they are."""

from casewright.dims.causes import Cause, Law, reading_causes
from casewright.dims.chain import Branch, Chain, Fit, Frozen, Place
from casewright.dims.chances import chance_of, even_sum_below, normal_chance
from casewright.dims.dim import (
    Dim,
    DimensionKindError,
    Given,
    Origin,
    OriginKind,
    greatest,
    least,
    root,
    total,
)
from casewright.dims.length_text import (
    LengthJson,
    MixedNumber,
    exact_text,
    format_length,
    is_on_grid,
    length_json,
    reading_text,
    shop_text,
    size_text,
    split_fraction,
)
from casewright.dims.lengths import LONGEST_TEXT, parse_length
from casewright.dims.measure import Measure, as_said, mark_of, measure_of
from casewright.dims.path_reach import PathReach
from casewright.dims.rounding import HAIR, Way, round_to
from casewright.dims.slack import Settled, Slack, Term, nothing, reaching, slack
from casewright.dims.told import Content, Told, joined, parts_of, plain_text, tell
from casewright.dims.trade import TRADE, TRADE_FIGURES, TradeFigure, enter_trade, trade
from casewright.dims.units import FINEST, PRECISION, TAPE_MARK, Unit
from casewright.dims.weight_text import weight_text
from casewright.dims.why import Why, explain, formula_text, why

__all__ = [
    "FINEST",
    "HAIR",
    "LONGEST_TEXT",
    "PRECISION",
    "TAPE_MARK",
    "TRADE",
    "TRADE_FIGURES",
    "Branch",
    "Cause",
    "Chain",
    "Content",
    "Dim",
    "DimensionKindError",
    "Fit",
    "Frozen",
    "Given",
    "Law",
    "LengthJson",
    "Measure",
    "MixedNumber",
    "Origin",
    "OriginKind",
    "PathReach",
    "Place",
    "Settled",
    "Slack",
    "Term",
    "Told",
    "TradeFigure",
    "Unit",
    "Way",
    "Why",
    "as_said",
    "chance_of",
    "enter_trade",
    "even_sum_below",
    "exact_text",
    "explain",
    "format_length",
    "formula_text",
    "greatest",
    "is_on_grid",
    "joined",
    "least",
    "length_json",
    "mark_of",
    "measure_of",
    "normal_chance",
    "nothing",
    "parse_length",
    "parts_of",
    "plain_text",
    "reaching",
    "reading_causes",
    "reading_text",
    "root",
    "round_to",
    "shop_text",
    "size_text",
    "slack",
    "split_fraction",
    "tell",
    "total",
    "trade",
    "weight_text",
    "why",
]
