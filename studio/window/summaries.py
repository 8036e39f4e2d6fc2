"""What a folded section says of itself."""

from studio.brief import Brief
from studio.styles import rack
from studio.units import Unit, spell
from studio.words import Phrase, phrase, tr

from .widgets.choice import opened


def summary(section: str, brief: Brief, unit: Unit) -> str:
    """A section in a few words, lengths bare as on the board."""
    return opened(", ".join(spell(part, unit) for part in _PARTS[section](brief)))


def _skirt(brief: Brief) -> list[Phrase]:
    parts = [phrase(tr(rack.style_of(brief))), phrase("{l:bare}", l=brief.skirt.length)]
    path = rack.its_style(brief).fullness
    return [*parts, phrase("{f:ratio} ×", f=rack.value(brief, path))] if path else parts


def _waistband(brief: Brief) -> list[Phrase]:
    parts = [phrase(tr(brief.waistband.kind)), phrase("{w:bare}", w=brief.waistband.depth)]
    return [*parts, phrase("extension {e:bare}", e=brief.lap)] if brief.lap else parts


def _opening(brief: Brief) -> list[Phrase]:
    kind = brief.opening.kind
    if kind == "none":
        return [phrase("none")]
    depth = [] if kind == "wrap" else [phrase("{s:bare} deep", s=brief.opening.zip_stop)]
    return [phrase(kind), phrase(brief.opening.place), *depth]


def _fastening(brief: Brief) -> list[Phrase]:
    f = brief.fastening
    if f.kind != "buttons":
        return [phrase(f.kind)]
    text = "{n:count} button" if f.count == 1 else "{n:count} buttons"
    return [phrase(text, n=f.count), phrase("{d:bare}", d=f.button_diameter)]


def _gathers(brief: Brief) -> list[Phrase]:
    g = brief.gathers
    sections = "{n:count} sections" if g.sections > 1 else "{n:count} section" if g.sections else "sections by width"
    return [phrase("{n:count} rows" if g.rows > 1 else "{n:count} row", n=g.rows), phrase(sections, n=g.sections)]


def _seams(brief: Brief) -> list[Phrase]:
    return [phrase("{a:bare}", a=brief.seams.allowance), phrase("hem {h:bare}", h=brief.hem)]


def _pockets(brief: Brief) -> list[Phrase]:
    return [phrase(brief.pockets.kind)]


def _lining(brief: Brief) -> list[Phrase]:
    kind = phrase(brief.lining.kind)
    return [kind] if kind.text == "none" else [kind, phrase("{s:bare} shorter", s=brief.lining.shorter)]


def _cloth(brief: Brief) -> list[Phrase]:
    on_hand = brief.cloth.on_hand
    wide = phrase("{w:bare} wide", w=brief.cloth.width)
    return [wide, phrase("to buy") if on_hand is None else phrase("{l:metres} on hand", l=on_hand)]


def _paper(brief: Brief) -> list[Phrase]:
    return [phrase(brief.paper.size), phrase("margin {m:bare}", m=brief.paper.margin)]


_PARTS = {
    "skirt": _skirt,
    "waistband": _waistband,
    "opening": _opening,
    "fastening": _fastening,
    "gathers": _gathers,
    "seams": _seams,
    "pockets": _pockets,
    "lining": _lining,
    "cloth": _cloth,
    "paper": _paper,
}
