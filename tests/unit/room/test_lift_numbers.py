"""Weights that are told can be followed to sizes and densities."""

from __future__ import annotations

from pathlib import Path

import pytest

from casewright.casework.lifted import LIFT, lift_path
from casewright.dims import Measure
from casewright.job.numbers import chain_with
from casewright.job.recorded import as_recorded
from casewright.packet.weight_words import case_weighs
from casewright.room.lifting import lifted_weight

EXAMPLES = Path(__file__).parents[3] / "examples"


@pytest.mark.parametrize("name", ["bookcase", "gallery_islands"])
def test_what_a_case_is_said_to_weigh_is_the_number_it_leads_to(name: str) -> None:
    """The sentence, the chain and what is summed part by part agree, to the gram."""
    room = as_recorded(EXAMPLES / f"{name}.toml").worked.room
    chain = chain_with(room, f"{LIFT}.any")
    for case in room.cases:
        told = [part for part in case_weighs(room, case).parts if isinstance(part, Measure)]
        assert told
        assert [chain.nodes[each.path].value for each in told] == [each.value for each in told]
        bare = chain.nodes[lift_path(case.key, "bare_weight")]
        assert (bare.value, bare.power) == (lifted_weight(room, case), 0)
