"""A measured wall filled with cases: widths, fillers and centring, on the grid of the shop."""
