"""Pages for the desk and for the phone in the shop: a local server over the same core."""
