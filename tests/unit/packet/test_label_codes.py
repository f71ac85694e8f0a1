"""Codes of labels, read back by a reader that is not the one they are drawn with."""

from __future__ import annotations

import io

import numpy as np
import pytest
import typst
import zxingcpp
from PIL import Image
from tests.builders import case_spec, job

from casewright.breakdown import break_down
from casewright.cutting.engine import Stop
from casewright.outputs.blocks import Labels
from casewright.outputs.document import LABELS_LETTER
from casewright.outputs.scan_code import scan_code_svg
from casewright.packet.labels import labels_section
from casewright.room.build import build


def read_code(address: str, side_mm: float, dots_per_inch: float) -> list[str]:
    """What a camera makes of it, printed so large and seen so sharp."""
    picture = f'image(bytes(sys.inputs.code), format: "svg", width: {side_mm}mm)'
    png = typst.compile(
        f"#set page(width: auto, height: auto)\n#{picture}".encode(),
        format="png", ppi=dots_per_inch, sys_inputs={"code": scan_code_svg(address)},
    )  # fmt: skip
    seen = np.array(Image.open(io.BytesIO(png)).convert("L"))
    return [each.text for each in zxingcpp.read_barcodes(seen)]


@pytest.mark.parametrize("host", ["192.168.1.20:8417", "10.0.0.7:80", "WORKSHOP-DESK.LOCAL:8417"])
def test_a_phone_reads_it_at_the_size_of_the_label(host: str) -> None:
    """At 100 dots to the inch, far fewer than a phone's camera sees."""
    address = f"HTTP://{host}/P/412"
    assert read_code(address, 17.5, 100) == [address]


def test_each_label_opens_its_own_part() -> None:
    room = build(job(case_spec()))
    breakdown = break_down(room, stop=Stop(3_000))

    def opened(pages: str) -> list[str]:
        (block,) = labels_section(room, breakdown, LABELS_LETTER, pages=pages).blocks
        assert isinstance(block, Labels)
        return [label.opens for label in block.labels]

    marks = [part.mark for part in room.parts]
    assert opened("http://192.168.7.2:8417/") == [
        f"HTTP://192.168.7.2:8417/P/{mark}" for mark in marks
    ]
    assert set(opened("")) == {""}
