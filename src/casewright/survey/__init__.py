"""The room as measured: readings, what they agree on, and the worst of them in its direction."""
