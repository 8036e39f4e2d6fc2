"""A finding: what is wrong, where, and the edit that mends it."""

import math
from collections.abc import Callable, Iterable, Mapping
from typing import Any, Literal, TypeAlias

from msgspec import Struct

from studio.brief import Brief
from studio.cloth.lay import lay_out
from studio.cloth.placed import Lay
from studio.draft import Draft
from studio.styles import rack
from studio.words import Phrase, phrase, tr

Weight: TypeAlias = Literal["stop", "doubt", "note"]
WEIGHTS: tuple[Weight, ...] = ("stop", "doubt", "note")
"""Heaviest first. A stop still draws; it holds back export until the maker says to go on."""


class Finding(Struct, frozen=True):
    """One rule's finding.

    `where` is the brief path it points at and `piece` the piece, where there is one. `remedy` is an edit of the
    brief, path by path, that makes the finding go away; `does` says its outcome in a few words.
    """

    rule: str
    weight: Weight
    says: Phrase
    where: str
    piece: str = ""
    remedy: Mapping[str, Any] | None = None
    does: Phrase | None = None


class Worked(Struct, frozen=True):
    """What a rule looks at: the brief and all that has been made up from it."""

    brief: Brief
    draft: Draft
    lay: Lay


def within(w: Worked, path: str, value: float) -> bool:
    """Whether a remedy may set this: whether the form itself would take the number."""
    one = rack.declarations(w.brief)[path]
    return one.least <= value <= one.most


def tried(w: Worked, edit: Mapping[str, Any]) -> Worked:
    """What is made up once a remedy is taken: the one way in which a rule tries its own."""
    brief, draft = redrafted(w, edit)
    return Worked(brief, draft, lay_out(draft.pieces, brief.cloth))


def redrafted(w: Worked, edit: Mapping[str, Any]) -> tuple[Brief, Draft]:
    """The same, for a rule that asks nothing of the lay."""
    brief = rack.edit(w.brief, edit)
    return brief, rack.draft(brief)


def off_cloth(w: Worked) -> set[str]:
    """The pieces too wide for the cloth, by id."""
    return {p.id for p in w.lay.misfits}


def hem_edit(brief: Brief, deep: float) -> dict[str, Any]:
    """The edit to a hem so deep (mm), its first turn no more than half of it."""
    turned = brief.seams.hem_kind not in ("single", "faced") and brief.seams.first_turn > deep / 2
    return {"seams.hem": deep} | ({"seams.first_turn": float(math.floor(deep / 2))} if turned else {})


def edit_words(brief: Brief, edit: Mapping[str, Any]) -> Phrase:
    """What a remedy's button says: the first number it sets, "Fullness 2.4"."""
    path, value = next(iter(edit.items()))
    one = rack.declarations(brief)[path]
    if one.kind == "choice" and len(edit) == 2 and isinstance(more := [*edit.values()][1], float):
        return phrase("{v:word}, {l}", v=tr(str(value)).capitalize(), l=more)
    text = SAYS.get(one.kind, "{n:word}: {v:word}")
    return phrase(text, n=tr(one.words), v=value if one.kind in SAYS else tr(str(value)))


SAYS = {
    "length": "{n:word} {v}",
    "ratio": "{n:word} {v:ratio}",
    "count": "{n:word}: {v:count}",
    "share": "{n:word} {v:share}",
}
"""How a number of each kind is said with its name."""

Rule: TypeAlias = Callable[[Worked], Iterable[Finding]]


def rule_name(rule: Rule) -> str:
    """The rule's name as findings and the docs give it."""
    return getattr(rule, "__name__", "").replace("_", "-")
