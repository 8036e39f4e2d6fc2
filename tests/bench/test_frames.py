"""Whether the window stays alive while a plan is bettered beside it."""

import time

from PySide6.QtCore import QEventLoop, QSettings, QTimer
from pytestqt.qtbot import QtBot

from studio.styles import rack
from studio.window.running import bare, furnished
from studio.window.settings import Settings

LONGEST = 0.05
"""The longest that no event may be answered (s): three frames at 60 a second."""


def test_events_while_a_plan_is_bettered(qtbot: QtBot, tmp_path):
    """From the start of a search until its third better plan no event waits longer than three frames."""
    kept = Settings(QSettings(str(tmp_path / "kept.ini"), QSettings.Format.IniFormat))
    kept.unit, kept.started, kept.wish = "cm", True, "light"
    shop = furnished(kept, bare(kept))
    qtbot.addWidget(shop.window)
    shop.open(None)
    shop.desk.take(rack.edit(rack.usual(), {"skirt.style": "gored", "skirt.gores": 8}), None)
    shop.window.resize(1280, 800)
    view = shop.window.table.canvas.lay
    gaps, last, better = [], [time.perf_counter()], []
    loop, beat, stop = QEventLoop(), QTimer(), QTimer()

    def heard() -> None:
        now = time.perf_counter()
        gaps.append(now - last[0])
        last[0] = now

    def took(_docket: object, _lay: object) -> None:
        better.append(1)
        if len(better) == 3:
            loop.quit()

    shop.window.toolbar.heading.choose("lay")
    qtbot.wait(50)
    view.planner.better.connect(took)
    beat.timeout.connect(heard)
    last[0] = time.perf_counter()
    beat.start(2)
    stop.setSingleShot(True)
    stop.timeout.connect(loop.quit)
    stop.start(20_000)
    loop.exec()
    beat.stop()
    view.planner.stop()
    worst = max(gaps)
    print(f"\nlongest gap between events while {len(better)} better plans came: {1000 * worst:.0f} ms (bound 50)")
    shop.window.may_close = True
    shop.window.close()
    assert better
    assert worst <= LONGEST
