"""Work that another process does."""

from __future__ import annotations

import os
import time

import pytest

from casewright.outputs.apart import StoppedError, apart, in_two, meanwhile


def test_what_is_worked_out_meanwhile_is_waited_for() -> None:
    with meanwhile(divmod, 17, 5) as answer:
        assert answer() == (3, 2)


def test_what_goes_wrong_there_is_raised_here() -> None:
    with pytest.raises(ValueError, match="seven"):
        apart(int, "seven")
    with pytest.raises(StoppedError, match="ended before its time"):
        apart(os._exit, 3)


def test_a_process_ends_with_its_block() -> None:
    """Whoever stops meanwhile, as Ctrl-C does, waits for nothing."""
    begun = time.monotonic()
    with pytest.raises(KeyboardInterrupt), meanwhile(time.sleep, 600):
        raise KeyboardInterrupt
    assert time.monotonic() - begun < 300


def test_several_things_keep_their_order() -> None:
    """Half of them are done elsewhere."""
    words = ["1", "22222", "333", "44"]
    assert in_two(int, words) == [1, 22222, 333, 44]
    assert in_two(int, words[:1]) == [1]
    assert in_two(int, []) == []
    with pytest.raises(ValueError, match="x"):
        in_two(int, ["12", "x"])
