"""What every test rests on: no display, and the same made-up cases on every run."""

import importlib.util
import os
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from hypothesis import settings

settings.register_profile("studio", deadline=None, derandomize=True, database=None)
settings.load_profile("studio")

_QT = ("PySide6", "paper.pdf", "qtbot", "write_pdf", "write_png", "export(", '"export"')
_TESTS = Path(__file__).parent

collect_ignore: list[str] = []
if importlib.util.find_spec("PySide6") is None:  # the drafting room alone: what paints or opens a window stays out
    collect_ignore = ["window"] + [
        str(p.relative_to(_TESTS))
        for p in _TESTS.rglob("test_*.py")
        if any(word in p.read_text(encoding="utf-8") for word in _QT)
    ]


@pytest.fixture(scope="session", autouse=True)
def _one_application(request: pytest.FixtureRequest) -> None:
    """The first application is the one that can show windows, whichever test comes first."""
    if importlib.util.find_spec("PySide6") is not None:
        request.getfixturevalue("qapp")
