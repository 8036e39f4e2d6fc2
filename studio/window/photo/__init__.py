"""A photograph of the cloth: its corners put right, read for its print, and what was read put right by hand."""
