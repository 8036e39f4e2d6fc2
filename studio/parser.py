"""Reads what is said on the command line, and says what is wrong with it in one line."""

import argparse
import math
from collections.abc import Sequence
from typing import Any, NoReturn

from studio.trouble import Trouble, shown

COMMANDS = ("draft", "lay", "export", "save", "sew", "buy")
"""What can be done without a window."""
COMMANDS_HELP = f"Without a window: skirtwright {' | '.join(COMMANDS)}, each with --help."


class Parser(argparse.ArgumentParser):
    """A parser that takes whole words only, and whose errors are one line."""

    def __init__(self, prog: str, **more: Any) -> None:
        """Made as argparse makes one, under its name."""
        super().__init__(prog, allow_abbrev=False, **more)

    def read(self, said: Sequence[str]) -> argparse.Namespace:
        """What was said; raises `Trouble` for words that are not known here."""
        chosen, unknown = self.parse_known_args(said)
        if unknown:
            raise Trouble(f"“{shown(unknown[0])}” is not known here; see {self.prog} --help.")
        return chosen

    def error(self, message: str) -> NoReturn:
        """Say what is wrong, and end with 2."""
        self.exit(2, f"skirtwright: {message}\n")


def unit(said: str) -> str:
    """A unit to speak in."""
    if said not in ("cm", "in"):
        raise Trouble(f"--unit is cm or in, not “{shown(said)}”.")
    return said


def seconds(said: str) -> float:
    """A time to look for something better."""
    try:
        value = float(said)
    except ValueError:
        value = math.nan
    if not 0 <= value < math.inf:
        raise Trouble(f"--seconds is a number from 0 up, not “{shown(said)}”.")
    return value
