"""The other way round: what the cloth on hand still makes, each an edit of the brief that really cuts out of it."""

import math
from collections.abc import Callable, Iterator

from msgspec import Struct

from studio.brief import Brief
from studio.cloth.buying import cloth_needed
from studio.cloth.lay import lay_out
from studio.cloth.placed import Lay
from studio.styles import rack
from studio.styles.style import Edit
from studio.words import Phrase, phrase, tr

from .finding import edit_words


class Makes(Struct, frozen=True):
    """One choice: the edit, its words, and the length of cloth it takes before the wash (mm) by a plan at a glance.

    `less` says that it gives up some of the skirt as it stands; `proven` that no plan of it is shorter.
    """

    edit: Edit
    does: Phrase
    needed: float
    less: bool = False
    proven: bool = False


def takes(brief: Brief) -> float | None:
    """How much cloth a brief takes, mm; None where a piece is too wide for it. Drafts and lays, and no more."""
    return _needed(brief, _laid(brief))


def _laid(brief: Brief) -> Lay:
    return lay_out(rack.draft(brief).pieces, brief.cloth)


def _needed(brief: Brief, lay: Lay) -> float | None:
    return None if lay.misfits else cloth_needed(brief, lay)


def makes(brief: Brief) -> tuple[Makes, ...]:
    """What comes out of the length on hand: the most of each number that does, then the other styles. Nothing where no
    length is known. A choice that is the skirt as it stands is left out.
    """
    if brief.cloth.on_hand is None:
        return ()
    return (*_numbers(brief), *_styles(brief))


def helpful(found: tuple[Makes, ...], brief: Brief, lay: Lay) -> tuple[Makes, ...]:
    """The choices without those that give up what the plan in hand already gets out of the length on hand."""
    return tuple(one for one in found if not one.less) if comes_out(brief, lay) else found


def comes_out(brief: Brief, lay: Lay) -> bool:
    """Whether a plan of the skirt comes out of the length on hand."""
    need, have = _needed(brief, lay), brief.cloth.on_hand
    return need is not None and have is not None and need <= have + 1e-9


def cuts_out(brief: Brief) -> bool:
    """Whether the skirt comes out of the length on hand, by a plan at a glance."""
    return comes_out(brief, _laid(brief))


def numbers(brief: Brief) -> tuple[str, ...]:
    """Paths of what takes cloth in this style, and last its length."""
    return (*rack.its_style(brief).takes, "skirt.length")


def _numbers(brief: Brief) -> Iterator[Makes]:
    known = rack.declarations(brief)
    for path in numbers(brief):
        if not rack.applies(brief, known[path]):
            continue
        value, now = largest(brief, path), rack.value(brief, path)
        if value is not None and value != now:
            edit: Edit = {path: value}
            yield from _choice(brief, edit, edit_words(brief, edit), less=now is not None and value < now)


def largest(brief: Brief, path: str) -> float | int | None:
    """The largest value at a path that cuts out of the length on hand while one step more does not, by the form's own
    steps (a length 5 mm, a ratio 0.05); None where even the least does not. It is halved between a value that does and
    one that does not, so that both are known even where more cloth is not always taken by more skirt.
    """
    one = rack.declarations(brief)[path]
    last = math.floor((one.most - one.least) / one.step + 1e-6)

    def at(k: int) -> float | int:
        value = min(one.most, one.least + k * one.step)
        return round(value) if one.kind == "count" else round(value, 6)

    return _halved(lambda k: cuts_out(rack.edit(brief, {path: at(k)})), last, at)


def _halved(does: Callable[[int], bool], last: int, at: Callable[[int], float | int]) -> float | int | None:
    if not does(0):
        return None
    if does(last):
        return at(last)
    good, bad = 0, last
    while bad - good > 1:
        middle = (good + bad) // 2
        good, bad = (middle, bad) if does(middle) else (good, middle)
    return at(good)


def _styles(brief: Brief) -> Iterator[Makes]:
    for style in rack.RACK:
        if style != rack.style_of(brief):
            yield from _choice(brief, {"skirt.style": style}, phrase("{s:word} skirt", s=tr(style).capitalize()))


def _choice(brief: Brief, edit: Edit, does: Phrase, less: bool = False) -> Iterator[Makes]:
    after = rack.edit(brief, edit)
    lay = _laid(after)
    if comes_out(after, lay):
        yield Makes(edit, does, cloth_needed(after, lay), less, lay.proven)
