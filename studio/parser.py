"""Reads what is said on the command line, and says what is wrong with it in one line."""

import argparse
from typing import NoReturn

COMMANDS = ("draft", "lay", "export", "save")
"""What can be done without a window."""
COMMANDS_HELP = f"Without a window: skirtwright {' | '.join(COMMANDS)}, each with --help."


class Parser(argparse.ArgumentParser):
    """A parser whose errors are one line."""

    def error(self, message: str) -> NoReturn:
        """Say what is wrong, and end with 2."""
        self.exit(2, f"skirtwright: {message}\n")
