"""The cloth: where each piece is cut from it, and how much to buy."""
