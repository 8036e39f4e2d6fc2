"""Whether the packing engine is there, asked without loading anything."""

import importlib.util


def engine_installed() -> bool:
    """Whether closer plans than rows can be had."""
    return importlib.util.find_spec("spyrrow") is not None
