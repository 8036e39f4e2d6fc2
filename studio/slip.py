"""A docket as a slip to read: what `draft` and `lay` print for people."""

from collections.abc import Iterable, Iterator, Sequence

from studio.cloth.placed import Lay, Placed
from studio.cloth.plan.installed import engine_installed
from studio.cloth.which import which_copy, which_layers
from studio.cutting import cutting_steps, step_words
from studio.draft import Fact, Piece
from studio.draft.cutting import cut_words
from studio.geometry import Box
from studio.units import Unit, spell
from studio.words import Phrase, phrase, tr
from studio.workroom import Docket

_FACTS = {"length": "{v}", "ratio": "{v:ratio}", "count": "{v:count}", "metres": "{v:buy}"}
_APART = 3
ACROSS = {
    False: "Along from the cut end, across from the first selvedge",
    True: "Along from the cut end, across from the fold",
}
"""How places are counted on cloth that lies open, or folded (True)."""
TAKES = {
    (False, False): "Cloth {w} wide: the plan takes {l}; buy {b:buy}.",
    (False, True): "Cloth {w} wide, folded to {f}: the plan takes {l}; buy {b:buy}.",
    (True, False): "Washed, the cloth is {w} wide and the plan takes {l}; buy {b:buy}.",
    (True, True): "Washed, the cloth is {w} wide, folded to {f}, and the plan takes {l}; buy {b:buy}.",
}
"""What a plan takes: of cloth that shrinks, and of folded cloth."""


def slip(docket: Docket, unit: Unit) -> Iterator[str]:
    """The skirt line by line: its pieces as cut, its sizes, what to have ready, and what was found."""
    yield docket.brief.title
    yield from _part(tr("Pieces"), _table(_piece(p, unit) for p in docket.pieces))
    yield from _part(tr("Sizes"), _table(_fact(f, unit) for f in docket.draft.facts))
    yield from _part(tr("To have ready"), (spell(n.words, unit) for n in docket.notions))
    if not docket.lay.proven and not docket.lay.misfits:
        yield f"  {tr('The cloth is by a first plan; “buy” and “lay” look for a shorter one.')}"
    yield from _part(tr("Findings"), _table((tr(f.weight), spell(f.says, unit)) for f in docket.findings))


def lay_slip(docket: Docket, unit: Unit) -> Iterator[str]:
    """The plan line by line: the cloth it takes, then where each piece lies on it."""
    yield from (spell(said, unit) for said in what_it_takes(docket))
    yield from _part(
        tr(ACROSS[docket.lay.folded]),
        _table(_placed(docket.lay, p, unit) for p in docket.lay.placed),
    )
    steps = (("    " if s.caution else "[ ] ", said) for s in cutting_steps(docket) for said in step_words(s))
    yield from _part(tr("Cut in this order"), (f"{box}{spell(said, unit)}" for box, said in steps))


def what_it_takes(docket: Docket) -> tuple[Phrase, Phrase]:
    """The cloth, what the plan takes of it and what to buy; and how good the plan surely is."""
    lay = docket.lay
    text = TAKES[bool(docket.brief.cloth.shrinkage or docket.brief.cloth.shrinkage_across), lay.folded]
    takes = phrase(text, w=docket.brief.cloth.washed, f=lay.width, l=lay.length, b=docket.fact("cloth_needed"))
    return takes, _how_good(lay)


def _how_good(lay: Lay) -> Phrase:
    if lay.proven:
        return phrase("It is the best possible.")
    share = int(lay.share * 100 + 1e-9) / 100
    if not engine_installed():
        return phrase(
            "It is laid in rows, at least {s:share} of the best possible; closer plans want the engine.", s=share
        )
    return phrase("It is at least {s:share} of the best possible.", s=share)


def _part(title: str, lines: Iterable[str]) -> Iterator[str]:
    found = list(lines)
    if found:
        yield from ("", title, *(f"  {line}" for line in found))


def _table(rows: Iterable[Sequence[str]]) -> list[str]:
    """Rows whose columns stand under each other."""
    found = list(rows)
    wide = [max(map(len, column)) + _APART for column in zip(*found, strict=True)]
    return ["".join(text.ljust(w) for text, w in zip(row, wide, strict=True)).rstrip() for row in found]


def _piece(piece: Piece, unit: Unit) -> tuple[str, str, str]:
    return piece.name, cut_words(piece), _size(piece.cut_line.box, unit)


def _fact(fact: Fact, unit: Unit) -> tuple[str, str]:
    return fact.words, spell(phrase(_FACTS[fact.kind], v=fact.value), unit)


def _placed(lay: Lay, placed: Placed, unit: Unit) -> tuple[str, str, str, str, str]:
    piece, x, y = placed.piece, *placed.at
    copy = spell(which_copy(placed) or phrase("{k:count} of {n:count}", k=1, n=1), unit)
    lies = Box(0, 0, placed.along, placed.across)
    turns = {0: "", 90: tr("turned a quarter"), 180: tr("turned half round"), 270: tr("turned three quarters")}
    over = tr("turned over") if placed.mirrored and not placed.half else ""
    how = ", ".join(filter(None, (over, turns[placed.turn], which_layers(placed, folded=lay.folded))))
    place = spell(phrase("{x:bare} along, {y:bare} across", x=x, y=y), unit)
    return piece.name, copy, place, _size(lies, unit), how


def _size(box: Box, unit: Unit) -> str:
    return spell(phrase("{w:bare} × {h}", w=box.width, h=box.height), unit)
