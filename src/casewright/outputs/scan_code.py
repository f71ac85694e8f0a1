"""Codes that a phone's camera reads: an address as a square of dots."""

from __future__ import annotations

import segno

__all__ = ["scan_code_svg"]

_QUIET = 4  # white dots round it that ISO/IEC 18004 asks for


def scan_code_svg(address: str) -> str:
    """A QR code (ISO/IEC 18004) as SVG, with the white border that readers need.

    Parameters
    ----------
    address
        In capitals and figures it takes the fewest dots, each of them larger.
    """
    code = segno.make(address, micro=False)
    return str(code.svg_inline(border=_QUIET, omitsize=True))
