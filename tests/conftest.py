"""What every test rests on: no display, and the same made-up cases on every run."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from hypothesis import settings

settings.register_profile("studio", deadline=None, derandomize=True, database=None)
settings.load_profile("studio")
