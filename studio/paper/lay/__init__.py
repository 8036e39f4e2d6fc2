"""The lay plan on paper: the cloth to scale with every piece on it, and the order of cutting beside."""

from .pages import lay_pages
from .plan import LayPlan

__all__ = ["LayPlan", "lay_pages"]
