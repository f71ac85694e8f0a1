"""Cutting plans for sheets and boards, in integers; knows saws and pieces, but no cabinets."""
