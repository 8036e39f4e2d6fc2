"""What every test rests on: no display, and the same made-up cases on every run."""

import importlib.util
import os
import re
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from hypothesis import settings

settings.register_profile("studio", deadline=None, derandomize=True, database=None)
settings.load_profile("studio")

_TESTS = Path(__file__).parent
_BARE = importlib.util.find_spec("PySide6") is None
_PAINTS = re.compile(r"^(from|import) (PySide6|studio\.window|studio\.paper\.(pdf|png))\b", re.MULTILINE)
"""A test module that stands on Qt imports it, or one of the places that may."""

collect_ignore: list[str] = []
if _BARE:  # the drafting room alone: what paints or opens a window stays out
    collect_ignore = ["window"] + [
        str(p.relative_to(_TESTS))
        for p in _TESTS.rglob("test_*.py")
        if _PAINTS.search(p.read_text(encoding="utf-8"))
    ]  # fmt: skip


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Without Qt, tests marked as painting are left out."""
    painting = [i for i in items if i.get_closest_marker("paints")] if _BARE else []
    config.hook.pytest_deselected(items=painting)
    items[:] = [i for i in items if i not in painting]


@pytest.fixture(scope="session", autouse=True)
def _one_application(request: pytest.FixtureRequest) -> None:
    """The first application is the one that can show windows, whichever test comes first."""
    if not _BARE:
        request.getfixturevalue("qapp")
