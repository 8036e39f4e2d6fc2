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
from .gathers import bulky

LENGTH = "skirt.length"


class Makes(Struct, frozen=True):
    """One choice: the edit, its words, and the length of cloth it needs before the wash (mm), by a plan at a glance.

    `less` says that it gives up some of the skirt as it stands; `proven` that no plan of it is shorter.
    """

    edit: Edit
    does: Phrase
    needed: float
    less: bool = False
    proven: bool = False


def takes(brief: Brief, *, flat: bool = False) -> float | None:
    """How much cloth a brief needs, mm; None where a piece is too wide for it, or, if it should lie `flat`, where a
    gathered seam is too bulky. Drafts and lays, and no more.
    """
    lay = _laid(brief, flat)
    return None if lay is None else _needed(brief, lay)


def _laid(brief: Brief, flat: bool) -> Lay | None:
    """A plan at a glance; None where a seam is too bulky to lie `flat`."""
    draft = rack.draft(brief)
    return None if flat and bulky(brief, draft) else lay_out(draft.pieces, brief.cloth)


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


def cuts_out(brief: Brief, *, flat: bool = False) -> bool:
    """Whether the skirt comes out of the length on hand by a plan at a glance; if it should lie `flat`, with no seam
    too bulky.
    """
    lay = _laid(brief, flat)
    return lay is not None and comes_out(brief, lay)


def numbers(brief: Brief) -> tuple[str, ...]:
    """Paths of what takes cloth in this style, and last its length."""
    return (*rack.its_style(brief).takes, LENGTH)


def _numbers(brief: Brief) -> Iterator[Makes]:
    known = rack.declarations(brief)
    for path in numbers(brief):
        if not rack.applies(brief, known[path]):
            continue
        value, now = largest(brief, path), rack.value(brief, path)
        if value is not None and value != now:
            edit: Edit = {path: value}
            yield from _choice(
                brief, edit, edit_words(brief, edit), flat=path != LENGTH, less=now is not None and value < now
            )


def largest(brief: Brief, path: str) -> float | int | None:
    """The largest value at a path that cuts out of the length on hand while one step more does not, by the form's own
    steps (a length 5 mm, a ratio 0.05), and gathers no seam too bulkily; None where even the least does not. A length
    gathers nothing, so it is not asked. It is halved between a value that does and one that does not, so that both are
    known even where more cloth is not always taken by more skirt; a count is tried from the most down, since few pleats
    may want a wider face than the cloth has.
    """
    one = rack.declarations(brief)[path]
    last = math.floor((one.most - one.least) / one.step + 1e-6)

    def at(k: int) -> float | int:
        value = min(one.most, one.least + k * one.step)
        return round(value) if one.kind == "count" else round(value, 6)

    def does(k: int) -> bool:
        return cuts_out(rack.edit(brief, {path: at(k)}), flat=path != LENGTH)

    if one.kind == "count":
        return next((at(k) for k in range(last, -1, -1) if does(k)), None)
    return _halved(does, last, at)


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
            yield from _choice(
                brief, {"skirt.style": style}, phrase("{s:word} skirt", s=tr(style).capitalize()), flat=True
            )


def _choice(brief: Brief, edit: Edit, does: Phrase, *, flat: bool, less: bool = False) -> Iterator[Makes]:
    after = rack.edit(brief, edit)
    lay = _laid(after, flat)
    if lay is not None and comes_out(after, lay):
        yield Makes(edit, does, cloth_needed(after, lay), less, lay.proven)
