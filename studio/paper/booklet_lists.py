"""What the booklet lists before the steps: measurements, what to buy, what to cut, lines and marks, and care."""

from collections.abc import Iterator, Sequence

from studio.brief.conditions import ZIPS
from studio.cloth.ways import grain_down
from studio.draft import Draft, Notion, Piece
from studio.draft.cutting import cut_words
from studio.drawing import Mark, Words
from studio.drawing.furniture import arrow, frame, stroke
from studio.geometry import Box, Point
from studio.sewing import ALWAYS
from studio.styles import rack
from studio.units import Unit, spell, write_length
from studio.words import phrase, tr

from .booklet_flow import Part
from .booklet_table import Column, heading, table, text
from .key import key, key_height, signs, signs_of
from .pattern import Said, cut_size
from .whole import numbered

_MEASURED = ("body.waist", "body.hip", "body.waist_to_hip", "body.waist_to_knee", "body.height")


def measurements(draft: Draft, said: Said, wide: float) -> Iterator[Part]:
    """The body, what is added, what is made of it; and whether the skirt goes on."""
    brief, unit = said.brief, said.unit
    known = rack.declarations(brief)
    made = {"body.waist": (brief.waistband.ease, draft.fact("closed_girth"))}
    rows = []
    for path in _MEASURED:
        value = rack.value(brief, path)
        ease, girth = made.get(path, (None, None))
        body = tr("not known") if value is None else _bare(value, unit)
        rows.append((tr(known[path].words), body, _bare(ease, unit), _bare(girth, unit), tr(known[path].hint)))
    length = known["skirt.length"]
    rows.append(
        (tr(length.words), "", "", _bare(brief.finished_length, unit), tr("From the band’s lower edge to the hem."))
    )
    columns = (
        Column("", 32), Column(tr("body"), 22, "right", "semibold"), Column(tr("ease"), 17, "right"),
        Column(tr("made"), 19, "right", "semibold"), Column(tr("how to take it"), 0),
    )  # fmt: skip
    yield heading(tr("Measurements"), wide)
    yield table(columns, rows, wide)
    if says := _goes_on(draft, said):
        yield text(says, wide)


def _bare(value: float | None, unit: Unit) -> str:
    return "" if value is None else write_length(value, unit, bare=True)


def _goes_on(draft: Draft, said: Said) -> str:
    """Whether it passes the hips, and how wide the hem is."""
    brief, unit = said.brief, said.unit
    says = []
    if brief.opening.kind in (*ZIPS, "placket") and brief.body.hip is not None:
        ring, hip = brief.closed + 2 * brief.stop, brief.body.hip
        open_ = "Will it go on? Open, waist and opening make a ring of {b} + 2 × {s} = {r}."
        says.append(spell(phrase(open_, b=brief.closed, s=brief.stop, r=ring), unit))
        fits = "The hip is {h}: it passes with {d} to spare." if ring >= hip else "The hip is {h}: {d} are missing."
        says.append(spell(phrase(fits, h=hip, d=abs(ring - hip)), unit))
    if draft.has("hem_sweep"):
        says.append(spell(phrase("The hem measures {s} all round.", s=draft.fact("hem_sweep")), unit))
    return " ".join(says)


def to_buy(notions: Sequence[Notion], said: Said, wide: float) -> Iterator[Part]:
    """Everything to have ready, to be ticked."""
    words = [spell(n.words, said.unit) for n in notions]
    rows = [("", w[:1].upper() + w[1:]) for w in words]
    yield heading(tr("What to buy"), wide)
    yield table((Column("", 8, ticks=True), Column("", 0)), rows, wide)


def cut_chart(draft: Draft, said: Said, wide: float) -> Iterator[Part]:
    """Every piece: its cloth, how many, how large, its grain and its allowance."""
    rows = [(n, *_piece_row(p, said.unit)) for n, p in numbered(draft.pieces)]
    columns = (
        Column("", 8, face="semibold"), Column(tr("piece"), 42), Column(tr("cloth"), 22), Column(tr("cut"), 37),
        Column(tr("size, cut"), 31, "right", "semibold"), Column(tr("grain"), 13), Column(tr("allowance"), 0),
    )  # fmt: skip
    yield heading(tr("Cut chart"), wide)
    yield table(columns, rows, wide)
    yield text(
        tr("Sizes include their allowance. Grain “along” runs with the waist edge, “down” from waist to hem."), wide
    )


def _piece_row(piece: Piece, unit: Unit) -> tuple[str, ...]:
    hem = max((e.allowance for e in piece.edges if e.hem), default=0.0)
    rest = max((e.allowance for e in piece.edges if not e.hem), default=0.0)
    allowance = _bare(rest, unit) if rest else tr("none")
    if hem:
        allowance = spell(phrase("{a:bare}, hem {h:bare}", a=rest, h=hem), unit)
    grain = tr("down") if grain_down(piece) else tr("along")
    return (tr(piece.name), tr(piece.cloth), cut_words(piece), cut_size(piece, unit), grain, allowance)


_ROW = 10.0


def lines_and_marks(draft: Draft, wide: float) -> Iterator[Part]:
    """The key: every line, the marks this skirt has, and what the accent means."""
    shown = {m.role for p in draft.pieces for m in p.lines} | {s.role for p in draft.pieces for s in p.spots}
    high = key_height(shown, wide)
    step = wide / 4
    marks: list[Mark] = [*key(shown, 0, 3, wide)]
    places = signs_of(shown)
    for k, name in enumerate(places):
        at = Point(k % 4 * step, high + 11 + k // 4 * _ROW)
        marks += signs({name}, at, Point(0, 0), step)
    y = high + 11 + (len(places) + 3) // 4 * _ROW
    marks += [
        frame("plain", Box(0, y - 3, 8, y + 3), width=0.2, fill="tone"), _said(tr("wrong side"), 10.5, y),
        stroke("plain", (step, y), (step + 8, y), width=0.6, colour="accent"), _said(tr("do this now"), step + 10.5, y),
        *arrow(Point(2 * step + 4, y), Point(2 * step + 8, y), "dimension", 2.2),
        *arrow(Point(2 * step + 4, y), Point(2 * step, y), "dimension", 2.2), _said(tr("length"), 2 * step + 10.5, y),
    ]  # fmt: skip
    yield heading(tr("Lines and marks"), wide)
    yield Part(tuple(marks), y + 4)


def _said(words: str, x: float, y: float) -> Words:
    return Words(words, Point(x, y + 1.1), 3.2, "plain")


def take_care(wide: float) -> Iterator[Part]:
    """What is said once for the whole work."""
    yield heading(tr("Take care"), wide)
    yield text(" ".join(spell(s, "cm") for s in ALWAYS), wide, 3.4, 0.0)


def next_time(wide: float) -> Iterator[Part]:
    """Lines to write on, where there is room for them."""
    marks: list[Mark] = []
    for k, words in enumerate((tr("Waist after a day of wear"), tr("Length, levelled"), tr("What I would change"))):
        y = 8.0 + 10 * k
        marks += [Words(words, Point(0, y), 3.4, "rule"), stroke("rule", (46, y + 0.6), (wide, y + 0.6))]
    yield heading(tr("For next time"), wide)
    yield Part(tuple(marks), 30.0, spare=True)
