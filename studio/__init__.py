"""Skirtwright: from a waist, a length and one piece of cloth to a skirt that can be cut and sewn."""
