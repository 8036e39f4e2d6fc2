"""What a file on the rack offers."""

from collections.abc import Callable, Mapping
from typing import Any, Generic, TypeAlias, TypeVar

from msgspec import Struct

from studio.brief import Brief, Skirt
from studio.draft import Draft
from studio.draft.making import Making

S = TypeVar("S", bound=Skirt)
Edit: TypeAlias = Mapping[str, Any]
"""Other values at some paths of the brief."""


def _none(_brief: Brief, _skirt: Any, _wanted: float) -> None:
    return None


class Pleating(Struct, Generic[S], frozen=True):
    """How a style that is laid in pleats has them changed.

    `kind` is which way they are laid. `deep` gives the edit to folds so deep (mm; None for full pleats), `down` the one
    that stitches them down over the hips, `taking` the one to so much cloth (mm). `given` is the path of the cloth that
    is given for them; empty where it follows from the rest.
    """

    kind: Callable[[S], str]
    deep: Callable[[Brief, S, float | None], Edit]
    down: Callable[[Brief, S], Edit]
    given: Callable[[S], str]
    taking: Callable[[float], Edit]


class Style(Struct, Generic[S], frozen=True):
    """A style: the record of its own numbers, and what the house asks of it.

    `draft` drafts it. `girth` is the girth of the skirt, mm, so far below the waist seam, pleats and gathers let out.
    `widen` gives the edit that makes the hem's girth at least so many mm, and `clear` the one that makes the skirt's
    girth at hip depth so; `loosen` the one after which nothing is gathered more than so many to 1. Each is None where
    no number of the style does it. `uses` names the shared sections of the form that this skirt needs beyond those all
    skirts have ("gathers"), and `making` the steps of sewing it that other skirts do not have. `icon` is its
    silhouette: strokes in a square of 20 units, as SVG path data.

    Paths of numbers that rules may ask for, empty where it has none: `parts` says into how many panels it is parted,
    `lies` whether they are cut along or across the cloth, `fullness` how many times the waist seam the cloth is. What
    `takes` more cloth the larger it is comes with the most telling first. `pleats` is there for a style that is laid in
    them, and states the facts of pleats.
    """

    record: type[S]
    draft: Callable[[Brief, S], Draft]
    girth: Callable[[Brief, S, float], float]
    icon: str
    widen: Callable[[Brief, S, float], Edit | None] = _none
    clear: Callable[[Brief, S, float], Edit | None] = _none
    loosen: Callable[[Brief, S, float], Edit | None] = _none
    uses: Callable[[S], tuple[str, ...]] = lambda _: ()
    making: Callable[[Brief, S, Draft], tuple[Making, ...]] = lambda _brief, _skirt, _draft: ()
    parts: str = ""
    lies: str = ""
    fullness: str = ""
    takes: tuple[str, ...] = ()
    pleats: Pleating[S] | None = None

    @property
    def name(self) -> str:
        """The word for it in files and on the command line."""
        tag: Any = self.record.__struct_config__.tag
        return str(tag)
