"""The board: the pieces to scale, with rulers, measured lines and handles."""

from .board import Board

__all__ = ["Board"]
