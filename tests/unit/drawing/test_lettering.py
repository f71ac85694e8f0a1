"""Widths of letters against the font that is embedded."""

from __future__ import annotations

import json
from importlib.resources import files

import pytest
import typst

from casewright.drawing.lettering import FAMILIES, font_size, text_width

LETTERS = (
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789"
    " .,:;!?()[]/\\+-=<>@#%&*'\"°×Ø±½éäßñ–—…~_"
)


def _measured(weight: int) -> dict[str, float]:
    """Width of each letter at size 1000, as the typesetter measures it."""
    folder = files("fontpkg_ibm_plex_sans_condensed") / "files"
    fonts = typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(folder)]
    )
    source = """
    #let letters = json(bytes(sys.inputs.letters)).clusters()
    #set text(font: sys.inputs.family, stretch: 75%, size: 1000pt, weight: int(sys.inputs.weight))
    #context [#metadata(letters.map(x => measure(text(x + "")).width.pt())) <widths>]
    """
    found = typst.query(
        source.encode(),
        "<widths>",
        field="value",
        one=True,
        font_paths=fonts,
        sys_inputs={
            "letters": json.dumps(LETTERS),
            "family": FAMILIES[-1],
            "weight": str(weight),
        },
    )
    return dict(zip(LETTERS, json.loads(found), strict=True))


@pytest.mark.parametrize("weight", [400, 500, 600])
def test_no_letter_is_wider_than_the_layout_thinks(weight: int) -> None:
    """Room laid out for lettering is never too small, and at most a tenth too large."""
    for letter, real in _measured(weight).items():
        thought = text_width(letter, 1000 * 0.698)
        assert real <= thought + 1e-6, letter
        assert thought <= real * 1.25 + 30, letter


def test_figures_are_all_of_one_width() -> None:
    """Columns of numbers line up."""
    widths = {width for letter, width in _measured(400).items() if letter.isdigit()}
    assert len(widths) == 1


def test_height_of_lettering_is_the_height_of_its_capitals() -> None:
    """ISO 3098 counts the height of capitals; the font counts more."""
    assert font_size(3.5) == pytest.approx(3.5 / 0.698)
