"""The lay plan: pieces on their cloth, its print at full strength inside them, and the hand that moves them."""

from .view import LayPlan

__all__ = ["LayPlan"]
