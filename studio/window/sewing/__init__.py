"""The view of the sewing order."""

from .view import SewingView

__all__ = ["SewingView"]
