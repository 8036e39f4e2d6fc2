"""One file for each skirt on the rack."""
