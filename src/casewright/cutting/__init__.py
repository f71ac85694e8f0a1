"""Cutting plans for sheets and boards, in integers; knows sizes, saws and pieces, but no cabinets."""
