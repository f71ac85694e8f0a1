"""The room in three dimensions: parts as solids, less all that is cut out of them."""
