"""The shop packet: which pages, in which order, with which tables."""
