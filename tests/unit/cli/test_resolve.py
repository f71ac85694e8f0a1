"""`resolve` shows what follows from the record until it is accepted."""

from __future__ import annotations

from typing import Any

from tests.record_shop import Shop, run


def _proposal(shop: Shop, *words: object) -> Any:
    return shop.data("resolve", *words)


def test_without_a_record_there_is_nothing_to_accept(shop: Shop) -> None:
    assert run("resolve", shop.job) == 0
    assert run("resolve", shop.job, "--accept") == 0
    assert not shop.job.with_suffix(".record").exists()


def test_a_change_is_told_with_its_reading_until_it_is_accepted(shop: Shop) -> None:
    shop.says("reading", "stock.plywood.thickness", "0.700")
    assert run("resolve", shop.job) == 1
    shop.capsys.readouterr()
    told = _proposal(shop)
    assert [fact["path"] for fact in told["facts"]] == ["stock.plywood.thickness"]
    assert told["changes"]
    assert all(each["because"] == ["stock.plywood.thickness"] for each in told["changes"])
    assert _proposal(shop, "--accept")["accepted"]
    assert not _proposal(shop)["changes"]


def test_an_acceptance_is_taken_back(shop: Shop) -> None:
    shop.says("reading", "stock.plywood.thickness", "0.700")
    before = _proposal(shop)["changes"]
    entry = _proposal(shop, "--accept")["accepted"]
    assert not _proposal(shop)["changes"]
    shop.says("withdrawn", entry)
    assert _proposal(shop)["changes"] == before


def test_what_was_accepted_is_told_anew_when_it_is_corrected(shop: Shop) -> None:
    shop.says("reading", "stock.plywood.thickness", "0.700")
    reading = shop.entries()[0]["id"]
    _proposal(shop, "--accept")
    shop.says("reading", "stock.plywood.thickness", "0.710", "--corrects", reading)
    fact = _proposal(shop)["facts"][0]
    assert fact["old"] != fact["new"]
    assert _proposal(shop)["changes"]


def test_an_entry_that_comes_late_is_not_taken_as_accepted(shop: Shop) -> None:
    """Another device read something before the acceptance, and sends it afterwards."""
    shop.says("reading", "stock.plywood.thickness", "0.700")
    _proposal(shop, "--accept")
    late = shop.job.with_name("late.jsonl")
    late.write_text(
        '{"id": "p-1", "device": "phone", "seq": 1, "kind": "reading", "path": "upper.depth", '
        '"sizes": "12 1/16", "tool": "tape", "at": "2020-01-01T09:00:00+02:00"}\n'
    )
    run("record", shop.job, "--import", late)
    shop.capsys.readouterr()
    told = _proposal(shop)
    assert told["since"] is None
    assert "upper.depth" in [fact["path"] for fact in told["facts"]]


def test_a_spoiled_piece_comes_out_of_the_least_offcut(shop: Shop) -> None:
    shop.says("cut", "upper.bottom")
    shop.says("spoiled", "upper.bottom")
    again = _proposal(shop)["again"][0]
    assert (again["offcut"], again["more_sheets"]) == (None, 0)
    for size in ("48 x 24", "32 x 12", "31 x 40"):
        shop.says("offcut", "plywood", size)
    paths = [e["path"] for e in shop.entries() if e["kind"] == "offcut"]
    assert _proposal(shop)["again"][0]["offcut"] == paths[1]
    shop.says("cut", "upper.bottom")
    assert not _proposal(shop)["again"]


def test_a_proposal_is_accepted_where_it_is_shown(shop: Shop) -> None:
    code, says = shop.says("accepted", "upper")
    assert code == 2
    assert "casewright resolve" in says


def test_as_few_pieces_change_as_can_be_until_it_is_taken_back(shop: Shop) -> None:
    """Sizes stay as planned; a spoiled board is cut to those beside it."""
    planned = shop.part("upper.bottom")["blank"]["length"]
    shop.says("reading", "stock.plywood.thickness", "0.700")
    best = shop.part("upper.bottom")["blank"]["length"]
    assert best != planned
    told = _proposal(shop, "--fewest", "--accept")
    assert "upper.bottom" in told["as_planned"]["kept"]
    assert not [each for each in told["changes"] if each["path"] in told["as_planned"]["kept"]
                and each["old"]]  # fmt: skip
    assert shop.part("upper.bottom")["blank"]["length"] == planned
    shop.says("spoiled", "upper.bottom")
    assert shop.part("upper.bottom")["blank"]["length"]["mm"] == planned["mm"]
    shop.says("withdrawn", told["accepted"])
    assert shop.part("upper.top")["blank"]["length"]["mm"] == best["mm"]
    assert shop.part("upper.bottom")["blank"]["length"] == best


def test_an_earlier_state_is_shown_and_not_accepted(shop: Shop) -> None:
    shop.says("reading", "stock.plywood.thickness", "0.700")
    first = shop.entries()[0]["id"]
    before = _proposal(shop)["changes"]
    assert _proposal(shop, "--accept")["accepted"]
    assert not _proposal(shop)["changes"]
    assert _proposal(shop, "--as-of", first)["changes"] == before
    assert run("resolve", shop.job, "--as-of", first, "--accept") == 2
