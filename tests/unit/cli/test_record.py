"""The record from the command line: what is written, what is asked, what goes by it."""

from __future__ import annotations

import json
from pathlib import Path

from tests.record_shop import KITCHEN, Shop, run

from casewright.job.recorded import record_path


def test_looking_makes_no_record(shop: Shop) -> None:
    for command in ("check", "parts", "record"):
        run(command, shop.job)
    assert [file.name for file in shop.job.parent.iterdir()] == ["kitchen.toml"]


def test_a_reading_is_in_every_number_from_then_on(shop: Shop) -> None:
    """The sheet measures thinner: the bottom between the sides gets longer by as much, twice."""
    before = shop.part("upper.bottom")
    code, text = shop.says("reading", "stock.plywood.thickness", "0.700")
    assert code == 0
    assert "reading stock.plywood.thickness 0.7" in text
    assert "upper.bottom" in text
    after = shop.part("upper.bottom")
    assert after["blank"]["length"]["text"] == "31 19/32"  # 33 - 2 x 0.700, down to 1/32
    assert before["blank"]["length"]["text"] == "31 9/16"  # 33 - 2 x 0.720 = 31.56
    assert shop.part("upper.bottom", "--without-record") == before
    node = shop.node("stock.plywood.thickness")
    assert node["built"]["text"] == "0.7"
    assert node["origin"]["where"] == "kitchen.record"
    assert "calliper" in node["origin"]["note"]


def test_why_shows_designed_wanted_cut_and_built(shop: Shop) -> None:
    shop.says("cut", "upper.bottom", "--size", "31 17/32 x 11 3/4")
    shop.says("reading", "upper.bottom.length", "31 1/2")
    node = shop.node("upper.bottom.length")
    values = [node[name]["text"] for name in ("designed", "wanted", "cut", "built")]
    assert values == ["31 9/16", "31 9/16", "31 17/32", "31 1/2"]


def test_marks_are_shown_and_keep_the_piece_off_the_saw(shop: Shop) -> None:
    shop.says("assembled", "upper")
    shop.says("cut", "upper.door_left")
    shop.says("spoiled", "upper.bottom", "upper.top")
    mark = shop.part("upper.bottom")["mark"]
    code, text = shop.says("cut", mark)
    assert code == 0
    assert f"{mark}, bottom: cut upper.bottom 31 9/16 x" in text
    assert shop.part("upper.bottom")["state"] == "cut"
    plans = shop.data("cut")["plans"]
    on_sheets = json.dumps([plan["placements"] for plan in plans])
    assert "upper.bottom" not in on_sheets
    assert "upper.top" in on_sheets


def test_what_is_cut_stays_as_it_was_cut(shop: Shop) -> None:
    shop.says("machined", "upper.bottom")
    shop.says("reading", "stock.plywood.thickness", "0.700")
    assert shop.part("upper.bottom")["blank"]["length"]["text"] == "31 9/16"
    wanted = shop.node("upper.bottom.length")["wanted"]["text"]
    assert wanted == "31 19/32"


def test_what_is_assembled_was_cut_and_machined(shop: Shop) -> None:
    shop.says("cut", "upper.top")
    _, text = shop.says("assembled", "upper")
    assert "once done, record assembled upper.door_left upper.door_right" in text
    states = {p["path"]: p["state"] for p in shop.data("parts")["parts"]}
    assert states["upper.top"] == states["upper.side_left"] == "assembled"
    assert states["upper.door_left.slab"] == "planned"
    machined = {e["path"] for e in shop.entries() if e["kind"] == "machined"}
    assert {"upper.top", "upper.side_left"} <= machined
    shop.says("hung", "upper.door_left")
    assert shop.part("upper.door_left.slab")["state"] == "hung"
    _, text = shop.says("hung", "upper", "upper.door_right")
    assert "to be made" not in text


def test_a_spoiled_piece_is_to_be_made_again(shop: Shop) -> None:
    shop.says("assembled", "upper")
    shop.says("reading", "upper.shelf.1.length", "31 7/16")
    shop.says("spoiled", "upper.shelf.1", "--note", "dropped")
    shelf = shop.part("upper.shelf.1")
    assert shelf["state"] == "planned"
    assert shop.node("upper.shelf.1.length")["built"] is None
    assert shop.part("upper.shelf.2")["state"] == "assembled"
    shop.says("cut", "upper.shelf.1")
    assert shop.part("upper.shelf.1")["state"] == "cut"


def test_a_reading_that_is_hard_to_believe_is_asked_about(shop: Shop) -> None:
    code, text = shop.says("reading", "upper.width", "33 3/4")
    assert code == 1
    assert 'upper.width 33 3/4 is 3/4" over ~33, which follows from side_left.thickness' in text
    assert "--sure" in text
    assert "Then it is" not in text
    _, text = shop.says("reading", "upper.width", "34")
    assert "the tape was held at its first inch? Then it is 33" in text
    assert shop.entries() == []
    assert shop.says("reading", "upper.width", "33 3/4", "--sure")[0] == 0
    assert len(shop.entries()) == 1


def test_the_second_reading_is_not_compared_with_the_first(shop: Shop) -> None:
    shop.says("reading", "upper.width", "33 3/4", "--sure")
    assert shop.says("reading", "upper.width", "33 1/32")[0] == 0
    assert shop.node("upper.width")["built"]["text"] == "33 1/32"


def test_a_correction_takes_the_place_of_an_entry_and_can_be_withdrawn(shop: Shop) -> None:
    shop.says("reading", "upper.width", "33 1/16")
    first = shop.entries()[0]["id"]
    shop.says("reading", "upper.width", "33 1/32", "--corrects", first[:8])
    assert shop.node("upper.width")["built"]["text"] == "33 1/32"
    code, text = shop.says("list", "reading")
    assert code == 0
    assert text.count("no longer stands") == 1
    second = shop.entries()[1]["id"]
    shop.says("withdrawn", second[:8])
    assert shop.node("upper.width")["built"]["text"] == "33 1/16"
    shop.says("withdrawn", first)
    assert shop.node("upper.width")["built"] is None
    assert len(shop.entries()) == 4


def test_a_correction_is_about_what_it_corrects(shop: Shop) -> None:
    shop.says("reading", "upper.width", "33 1/16")
    first = shop.entries()[0]["id"]
    code, text = shop.says("reading", "upper.depth", "12", "--corrects", first)
    assert code == 2
    assert "about another thing (reading upper.width)" in text


BAD_WORDS: tuple[tuple[tuple[str, ...], str], ...] = (
    (("reading", "upper.widht", "33"), "did you mean upper.width"),
    (("reading", "upper", "33"), "did you mean upper.width, or upper.height, or upper.depth"),
    (("reading", "upper.width"), "there is no size for upper.width"),
    (("reading", "upper.width", "33", "1/"), "33 1/"),
    (("reading", "upper.wanted_width", "33"), "upper.wanted_width is chosen, not measured"),
    (("reading", "style.gap", "1/8"), "chosen, not measured"),
    (("reading", "upper.bottom.length_to_cut", "33"), "nothing real has this size"),
    (("cut", "99"), "no part has the mark 99; they go from 1 to "),
    (("cut",), "it does not say what it is about"),
    (("cut", "upper.bottom", "--size", "31"), "no length and width"),
    (("cut", "upper.botom"), "did you mean upper.bottom"),
    (("assembled", "uper"), "did you mean upper"),
    (("offcut", "plywod", "24 x 18"), "there is no stock called plywod"),
    (("offcut", "plywood", "24"), "no length and width"),
    (("offcut", "plywood", "24 x 0"), "an offcut has a stock, a length and a width"),
    (("minutes", "long"), '"long" is no number of minutes'),
    (("minutes", "45", "uper"), "did you mean upper"),
    (("note",), "it does not say what it is about"),
    (("withdrawn", "3f2a91c0"), "there is no entry 3f2a91c0"),
    (("sawn", "12"), "sawn is nothing that can be recorded"),
    (("cutt", "12"), "did you mean cut?"),
    (("cut", "1", "--as-of", "2026-05-12"), "nothing can be written into the past"),
    (("--import", "no.jsonl"), "no such file"),
    (("--import", "a", "--export", "b"), "two things at once"),
    (("list", "--as-of", "yesterday"), "this is no date and no entry"),
)


def test_what_has_no_meaning_is_told_and_nothing_is_written(shop: Shop) -> None:
    shop.says("note", "first")
    before = shop.entries()
    for words, told in BAD_WORDS:
        code, text = shop.says(*words)
        assert code == 2, words
        assert told in text, words
    assert shop.entries() == before


def test_the_other_kinds_are_kept(shop: Shop) -> None:
    shop.says("offcut", "plywood", "24 x 18 1/2", "--note", "behind the door")
    shop.says("minutes", "45", "upper", "gluing")
    shop.says("minutes", "90")
    shop.says("note", "upper", "left", "side", "is", "the", "better", "face")
    shop.says("note", "buy more glue")
    offcut, first, second, note, other = shop.entries()
    assert offcut["stock"] == "plywood"
    assert {name: size["text"] for name, size in offcut["sizes"].items()} == {
        "length": "24", "width": "18 1/2",
    }  # fmt: skip
    assert (first["minutes"], first["path"], first["note"]) == ("45", "upper", "gluing")
    assert second["path"] == ""
    assert (note["path"], note["note"]) == ("upper", "left side is the better face")
    assert (other["path"], other["note"]) == ("", "buy more glue")
    assert "2 h 15 min spent" in shop.says()[1]


def test_how_well_it_was_read_is_kept(shop: Shop) -> None:
    shop.says("reading", "upper.width", "33", "--within", "1/32", "--tool", "steel rule")
    shop.says("reading", "upper.depth", "12")
    rule, tape = shop.entries()
    assert (rule["tool"], rule["u"]["mm"]) == ("steel rule", "127/320")  # half of 1/32 in
    assert (tape["tool"], tape["u"]["mm"]) == ("tape", "1/2")
    assert "reading of upper.width" in shop.node("upper.width")["causes"]


def test_an_entry_dated_later_is_told_of(shop: Shop, tmp_path: Path) -> None:
    """A clock that ran ahead would hide every later reading without a word."""
    file = tmp_path / "phone.jsonl"
    file.write_text(
        '{"id": "ahead-of-time", "device": "phone", "seq": 1, "path": "upper.width",'
        ' "kind": "reading", "sizes": "33 1/16", "at": "2998-05-12T09:30:00Z"}'
    )
    shop.says("--import", file)
    code, text = shop.says("reading", "upper.width", "33 1/32")
    assert code == 0
    assert "LOOK: ahead-of goes before it for upper.width, it is dated 12 May 2998" in text
    shop.says("reading", "upper.width", "33 1/32", "--corrects", "ahead-of")
    assert shop.node("upper.width")["built"]["text"] == "33 1/32"


def test_any_earlier_state_is_shown(shop: Shop) -> None:
    sizes = ("33 1/32", "33 1/16", "32 31/32")
    for size in sizes:
        shop.says("reading", "upper.width", size)
    for number, entry in enumerate(shop.entries()):
        moment = ("--as-of", entry["id"])
        assert (
            shop.data("why", "upper.width", *moment)["nodes"][0]["built"]["text"] == sizes[number]
        )
        assert len(shop.data("record", *moment)["entries"]) == number + 1
    assert shop.data("why", "upper.width", "--as-of", "2020-01-01")["nodes"][0]["built"] is None
    assert (
        shop.data("why", "upper.width", "--as-of", "2999-01-01")["nodes"][0]["built"] is not None
    )


def test_a_size_for_what_is_gone_is_a_finding(shop: Shop) -> None:
    shop.says("assembled", "upper")
    shop.job.write_text(KITCHEN.replace("case.upper", "case.high"))
    findings = shop.data("check")["findings"]
    lost = {f["path"] for f in findings if f["rule"] == "lost reading"}
    assert "upper.bottom.length" in lost
    unmarked = {f["path"]: f["says"] for f in findings if f["rule"] == "lost mark"}
    assert unmarked["upper"].startswith("upper was marked assembled")


def test_a_reading_of_what_was_designed_changes_nothing(shop: Shop) -> None:
    parts = shop.data("parts")
    for path, size in (("upper.bottom.length", "31 9/16"), ("upper.depth", "12")):
        code, text = shop.says("reading", path, size)
        assert code == 0
        assert "What follows" not in text
    assert shop.data("parts") == parts


def test_damage_is_said_and_the_job_goes_on(shop: Shop) -> None:
    shop.says("reading", "upper.width", "33 1/32")
    shop.says("note", "x" * 60)
    record = record_path(shop.job)
    record.write_bytes(record.read_bytes().replace(b"xxxxxx", b"xxYxxx", 1))
    code = run("why", shop.job, "upper.width")
    out, error = shop.capsys.readouterr()
    assert code == 0
    assert "built 33 1/32" in out
    assert "kitchen.record was damaged" in error
    assert "1 entries were whole and are kept, 1 lost" in error
    assert "damaged-1" in shop.says()[1]


def test_a_sheet_answers_what_was_open(shop: Shop) -> None:
    shop.job.write_text(KITCHEN.replace('[stock.plywood]\nmeasured = "0.720"\n', ""))
    assert any(q["path"] == "stock.plywood.thickness" for q in shop.data("check")["questions"])
    shop.says("reading", "stock.plywood.thickness", "0.720")
    assert not any(q["path"] == "stock.plywood.thickness" for q in shop.data("check")["questions"])


def test_a_size_under_zero_is_refused_as_a_size(shop: Shop) -> None:
    """It is no option, and nothing fails over it, behind -- either."""
    for words in (("-5",), ("--", "-5"), ("-1/4",), ("--", "-1/4")):
        code, text = shop.says("reading", "stock.plywood.thickness", *words)
        assert code == 2
        assert f"{words[-1]} is under 0" in text
    assert not shop.entries()
