"""Trims of runs: long pieces fitted to what stands, cut once its length has been read."""
