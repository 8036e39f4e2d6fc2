"""What the window remembers from one day to the next."""

from collections.abc import Iterable
from pathlib import Path
from typing import Any, Final, get_args

from PySide6.QtCore import QByteArray, QLocale, QSettings

from studio.units import Unit

from .theme import Wish

RECENT: Final = 8
"""How many skirts the menu remembers."""
TICKED: Final = 40
"""How many skirts keep the ticks of their sewing order."""


class Settings:
    """Kept by the desktop for this maker; what cannot be read is as if it had never been kept."""

    def __init__(self, kept: QSettings | None = None) -> None:
        self._kept = kept or QSettings()

    @property
    def started(self) -> bool:
        """Whether a skirt was ever made here."""
        return self._kept.value("started", "") == "yes"

    @started.setter
    def started(self, on: bool) -> None:
        self._kept.setValue("started", "yes" if on else "")

    @property
    def unit(self) -> Unit:
        """Centimetres or inches; at first as the desktop measures."""
        imperial = QLocale.system().measurementSystem() == QLocale.MeasurementSystem.ImperialUSSystem
        kept: Unit = self._one_of("unit", get_args(Unit), "in" if imperial else "cm")
        return kept

    @unit.setter
    def unit(self, unit: Unit) -> None:
        self._kept.setValue("unit", unit)

    @property
    def wish(self) -> Wish:
        """Light, dark, or as the system."""
        kept: Wish = self._one_of("theme", get_args(Wish), "system")
        return kept

    @wish.setter
    def wish(self, wish: Wish) -> None:
        self._kept.setValue("theme", wish)

    @property
    def legend(self) -> bool:
        """Whether the lines are explained on the board."""
        return self._kept.value("legend", "yes") != "no"

    @legend.setter
    def legend(self, on: bool) -> None:
        self._kept.setValue("legend", "yes" if on else "no")

    @property
    def geometry(self) -> QByteArray | None:
        """Where the window stood."""
        kept = self._kept.value("geometry")
        return kept if isinstance(kept, QByteArray) else None

    @geometry.setter
    def geometry(self, geometry: QByteArray) -> None:
        self._kept.setValue("geometry", geometry)

    @property
    def sections(self) -> list[str] | None:
        """The sections that stood open; None before the first time."""
        return self._list("sections") if self._kept.contains("sections") else None

    @sections.setter
    def sections(self, names: list[str]) -> None:
        self._kept.setValue("sections", names or [""])

    @property
    def file(self) -> Path | None:
        """The skirt that was on the table last; None for one that was never saved."""
        kept = self._list("file")
        return Path(kept[0]) if kept else None

    @file.setter
    def file(self, path: Path | None) -> None:
        self._kept.setValue("file", str(path) if path else "")

    @property
    def recent(self) -> list[Path]:
        """Skirts opened or saved of late, the last first."""
        return [Path(name) for name in self._list("recent")][:RECENT]

    def remember(self, path: Path) -> None:
        """Put a skirt at the head of the recent ones."""
        self._set_recent([path, *(p for p in self.recent if p != path)])

    def forget(self, gone: Path) -> None:
        """Take a skirt off the recent ones."""
        self._set_recent([p for p in self.recent if p != gone])

    def ticks(self, path: Path) -> set[str]:
        """The steps of the sewing order that are done of the skirt in a file, by key."""
        return next((keys for file, keys in self._ticked() if file == str(path)), set())

    def keep_ticks(self, path: Path, keys: Iterable[str]) -> None:
        """Keep which steps are done of the skirt in a file; those of skirts not ticked for long are forgotten."""
        others = [(file, done) for file, done in self._ticked() if file != str(path)]
        kept = [(file, done) for file, done in ((str(path), set(keys)), *others) if done][:TICKED]
        self._kept.setValue("ticks", [f"{';'.join(sorted(done))}\t{file}" for file, done in kept] or [""])

    def _ticked(self) -> list[tuple[str, set[str]]]:
        """Files with the keys of what is done, the latest first."""
        found = (one.partition("\t") for one in self._list("ticks"))
        return [(file, set(keys.split(";"))) for keys, _, file in found if file]

    def _set_recent(self, paths: list[Path]) -> None:
        self._kept.setValue("recent", [str(p) for p in paths[:RECENT]] or [""])

    def _list(self, key: str) -> list[str]:
        kept: Any = self._kept.value(key)
        found = [kept] if isinstance(kept, str) else kept if isinstance(kept, list) else []
        return [one for one in found if isinstance(one, str) and one]

    def _one_of(self, key: str, known: tuple[str, ...], usual: str) -> Any:
        kept = self._kept.value(key)
        return kept if kept in known else usual
