"""Lettering: the one typeface of all drawings and pages, and how wide its letters are.

Drawings are laid out without reading a font file, so that a scene depends on nothing but its
elements; a test holds these widths against the font that is embedded.
"""
# ruff: noqa: RUF001 (letters that look alike are meant)

from __future__ import annotations

from functools import lru_cache

__all__ = ["CAP_HEIGHT", "FAMILIES", "STRETCH", "font_size", "text_width"]

FAMILIES = ("IBM Plex Sans Condensed", "IBM Plex Sans")
"""Names under which readers know the typeface. Its figures are all of one width."""

STRETCH = "condensed"
"""Which of the widths of the typeface."""

CAP_HEIGHT = 0.698
"""Height of capitals and figures per unit of font size [-]."""

# Widest of the regular, medium and semi-bold cut, in thousandths of the font size, rounded up.
_GROUPS = {
    220: " ",
    240: "'′",
    260: "ijìíîïĩīĭįıĵ",
    270: "lĺļł‘’",
    280: ",.ſ",
    290: "!:;¡",
    300: "[]ľ",
    310: "()",
    320: "²³·¹",
    330: "f{}",
    340: "tţťŧ",
    350: "|¦",
    360: "rŕŗř",
    370: "-",
    380: "ŀ•",
    390: "IºÌÍÎÏĨĪĬĮİ",
    400: "ª",
    410: "/\\",
    430: '"®°″',
    440: "¿",
    450: "?sśŝşš",
    460: "zźżž",
    470: "cçćĉċč",
    480: "LvĹĻĽĿ“”",
    490: "xyýÿŁŷ",
    500: "Jg¢«»ĝğġģĴ",
    510: "_aeoàáâãäåèéêëòóôõöāăąēĕėęěĳōŏő",
    520: "*køķĸ",
    530: "FT§ŢŤŦ–",
    540: "$+0123456789<=>Z^`hnu~£¨¬¯±´µ¸×ðñ÷ùúûüĥħńņňŋũūŭůűųŹŻŽ−≤≥√",
    550: "ESbdpqÈÉÊËþđĒĔĖĘĚŚŜŠ",
    560: "¤Ş",
    570: "YÝŶŸ",
    580: "¥ď",
    590: "CPVÇÞĆĈĊČĲ",
    600: "BX",
    610: "AR¶ÀÁÂÃÄÅĀĂĄŔŖŘ",
    620: "KßĶ",
    630: "DUÐÙÚÛÜĎĐŨŪŬŮŰŲ",
    640: "#",
    650: "&GOQÒÓÔÕÖØĜĞĠĢŊŌŎŐ",
    660: "HNÑĤĦŃŅŇ",
    710: "—",
    720: "©",
    730: "¾",
    740: "Mw¼ŵ",
    760: "½",
    780: "✓",
    790: "æ…",
    810: "mŉ←↑→↓",
    820: "@",
    840: "œ",
    860: "Æ",
    870: "%WŴ",
    900: "Œ",
}
_ADVANCE = {letter: width for width, letters in _GROUPS.items() for letter in letters}
_UNKNOWN = 900


def font_size(height: float) -> float:
    """Font size whose capitals and figures are `height` tall [same unit]."""
    return height / CAP_HEIGHT


@lru_cache(maxsize=16384)
def text_width(text: str, height: float) -> float:
    """Room a line of lettering needs, for capitals `height` tall [same unit]; never too little."""
    thousandths = sum(_ADVANCE.get(letter, _UNKNOWN) for letter in text)
    return thousandths / 1000 * font_size(height)
