"""The numbers that matter now, and what to buy: a caption, a figure, its unit."""

from collections.abc import Callable, Sequence
from typing import Final, TypeAlias

from PySide6.QtWidgets import QGridLayout, QWidget

from studio.draft import Fact, Notion
from studio.units import Unit, spell, write_count, write_length, write_metres, write_ratio
from studio.words import tr
from studio.workroom import Docket

from .tokens import SPACE
from .widgets.choice import opened
from .widgets.fact import Fact as Shown

Told: TypeAlias = tuple[str, str, str, str]
"""Caption, figure, unit, and how it comes about."""

_FACTS: Final = (
    "cloth_needed", "gather_ratio", "pleat_ratio", "radius", "hip_girth", "closed_girth", "hem_sweep",
)  # fmt: skip
"""What matters most, as far as a style has it; how full it is comes once, by the first of these that it states."""
_FULL: Final = ("gather_ratio", "pleat_ratio", "radius", "hip_girth")
_NOTIONS: Final = ("zip", "interfacing", "button", "hook and bar", "thread")
_HINTS: Final = {
    "cloth_needed": "The pieces laid on this width, shrinkage and all, rounded up; press for all there is to buy.",
    "gather_ratio": "Gathered cloth to the band it is drawn up to, without what stays flat at the opening.",
    "pleat_ratio": "All the cloth to the waist seam it is pleated to.",
    "radius": "Of the waist’s seam line.",
    "hip_girth": "The skirt round the hips, ease and all.",
    "closed_girth": "Round the band once it is fastened.",
    "hem_sweep": "Once round the hem, finished.",
}


class Numbers(QWidget):
    """Four at most, in two rows; they change without moving."""

    def __init__(self, gap: int, parent: QWidget) -> None:
        super().__init__(parent)
        self.shown = [Shown(self) for _ in range(4)]
        grid = QGridLayout(self)
        grid.setContentsMargins(SPACE.m, SPACE.m, SPACE.m, SPACE.m)
        grid.setHorizontalSpacing(gap)
        grid.setVerticalSpacing(SPACE.xs)
        for k, one in enumerate(self.shown):
            grid.addWidget(one, k // 2, k % 2)
        for k in range(2):
            grid.setColumnStretch(k, 1)

    def tell(self, told: Sequence[Told]) -> None:
        """Show these."""
        for one, words in zip(self.shown, [*told, *[("", "", "", "")] * 4], strict=False):
            one.show_fact(*words)


def facts(docket: Docket, unit: Unit) -> list[Told]:
    """The facts that stand at the foot of Construction, where the style has them."""
    known = {f.name: f for f in docket.facts}
    full = next((name for name in _FULL if name in known), "")
    named = [known[name] for name in _FACTS if name in known and (name not in _FULL or name == full)]
    return [
        (tr(f.words), "–", "", tr("A piece does not fit this cloth."))
        if f.name == "cloth_needed" and docket.lay.misfits
        else _fact(f, unit)
        for f in named
    ]


def notions(docket: Docket, unit: Unit) -> list[Told]:
    """What to have ready besides cloth."""
    found = sorted((n for n in docket.notions if n.what in _NOTIONS), key=lambda n: _NOTIONS.index(n.what))
    return [(*_TOLD[n.what](n, unit), opened(spell(n.words, unit))) for n in found]


def _fact(fact: Fact, unit: Unit) -> Told:
    caption, hint = tr(fact.words), tr(_HINTS.get(fact.name, ""))
    match fact.kind:
        case "length":
            return (caption, *_split(write_length(fact.value, unit)), hint)
        case "metres":
            return (caption, *_split(write_metres(fact.value, unit, up=True)), hint)
        case "ratio":
            return caption, write_ratio(fact.value), ": 1", hint
        case "count":
            return caption, write_count(fact.value), "", hint


def _zip(notion: Notion, unit: Unit) -> tuple[str, str, str]:
    return (f"{tr('Zip')}, {tr(str(notion.sizes['kind']))}", *_length(notion, "length", unit))


def _interfacing(notion: Notion, unit: Unit) -> tuple[str, str, str]:
    return (tr("Interfacing"), *_split(write_metres(float(notion.sizes["needed"]), unit, up=True)))


def _button(notion: Notion, unit: Unit) -> tuple[str, str, str]:
    count = int(notion.sizes["count"])
    of = " ".join(_length(notion, "diameter", unit))
    return tr("Button") if count == 1 else tr("Buttons"), write_count(count), f"{tr('of')} {of}"


def _hook(notion: Notion, unit: Unit) -> tuple[str, str, str]:
    return tr("Hook and bar"), write_count(float(notion.sizes["count"])), ""


def _thread(notion: Notion, unit: Unit) -> tuple[str, str, str]:
    return (tr("Thread"), *_split(write_metres(float(notion.sizes["length"]), unit, up=True)))


_TOLD: Final[dict[str, Callable[[Notion, Unit], tuple[str, str, str]]]] = {
    "zip": _zip, "interfacing": _interfacing, "button": _button, "hook and bar": _hook, "thread": _thread,
}  # fmt: skip


def _length(notion: Notion, size: str, unit: Unit) -> tuple[str, str]:
    return _split(write_length(float(notion.sizes[size]), unit))


def _split(words: str) -> tuple[str, str]:
    """Figure and unit of a written length."""
    figure, _, unit = words.rpartition(" ")
    return figure, unit
