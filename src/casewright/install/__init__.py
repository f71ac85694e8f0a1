"""The day of hanging: marks, studs and screws, shims, and the order of lifts."""
