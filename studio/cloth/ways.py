"""How a piece may lie on its cloth: along the grain, the right way up, on its band of the print, on the fold."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal, get_args, get_type_hints

from msgspec import Struct

from studio.brief import Cloth, Held, PrintBand
from studio.draft import Piece
from studio.geometry import Box, Point

from .placed import Adrift, Placed

NEAR = 0.5
"""A piece that lies this close (mm) to its place lies there."""


class Way(Struct, frozen=True):
    """A way to lie: turned over, turned by quarter turns in degrees, and how far across the cloth its box then starts
    (mm from the inner edge of the first selvedge, or from the fold); None where any place will do.
    """

    turn: int
    mirrored: bool = False
    across: float | None = None


class Ways(Struct, frozen=True):
    """Every way one copy of a piece may lie, the preferred one first; `adrift` where its bands cannot hold it.

    `box` and `area` are those of what is laid (the piece's own mm, and mm²); `half`: that is the half that is drawn, on
    the fold of the cloth. `spots` is how many of it are cut from the cloth as
    it lies: one for two, where folded cloth gives a pair.
    """

    piece: Piece
    ways: tuple[Way, ...]
    box: Box
    area: float
    half: bool = False
    spots: int = 1
    adrift: tuple[Adrift, ...] = ()

    @property
    def paired(self) -> bool:
        """Whether each place gives two of it, cut through both layers."""
        return self.spots < self.piece.cut


def grain_down(piece: Piece) -> bool:
    """Whether the grain runs down the piece, so that it is laid turned a quarter."""
    start, end = piece.grain
    return abs(end.y - start.y) > abs(end.x - start.x)


def across(piece: Piece, cloth: Cloth) -> float:
    """How much of the cloth's width, as it lies, the piece takes with its grain along the cloth, mm."""
    if cloth.lies == "folded" and piece.on_fold:
        return piece.cut_line.box.width
    box = piece.as_cut.box
    return box.width if grain_down(piece) else box.height


def too_wide(pieces: Iterable[Piece], cloth: Cloth) -> tuple[Piece, ...]:
    """The pieces of the main cloth that do not fit across it."""
    return tuple(p for p in pieces if p.cloth == "main" and across(p, cloth) > cloth.usable + 1e-6)


def ways(piece: Piece, cloth: Cloth) -> Ways:
    """How each copy of a piece may lie."""
    folded = cloth.lies == "folded"
    spots = (piece.cut + 1) // 2 if folded and not piece.on_fold and _pairs(piece) else piece.cut
    half = folded and piece.on_fold
    outline = piece.cut_line if half else piece.as_cut
    box, area = outline.box, outline.area
    if half:
        return Ways(piece, (_on_fold(piece),), box, area, half=True, spots=spots)
    if not folded and not grain_down(piece):
        bands = [b for b in cloth.bands if shown_on(b, piece)]
        tried = [(b, _on_band(piece, box, b, cloth)) for b in bands]
        held = tuple(way for _, way in tried if _off(box, way, cloth) <= 1e-6)
        if held:
            return Ways(piece, held, box, area, spots=spots)
        adrift = tuple(Adrift(piece, b, _off(box, way, cloth)) for b, way in tried)
        return Ways(piece, _free(piece, cloth), box, area, spots=spots, adrift=adrift)
    return Ways(piece, _free(piece, cloth), box, area, spots=spots)


def phase_point(piece: Piece, cloth: Cloth) -> Point | None:
    """The point of a piece that must lie where a motif starts (its own mm), or None where none need to: on the seam
    line at the left of a panel cut along the cloth, on the hem line of one cut across it. A panel that is whole repeats
    wide and meets only itself matches wherever it lies.
    """
    if not cloth.match or cloth.repeat is None or piece.cloth != "main" or piece.row == 0 or _meets_itself(piece):
        return None
    hem, seam = next((e for e in piece.edges if e.name == "hem"), None), piece.seam_line.box
    return Point(seam.left, hem.path.box.bottom if hem else seam.bottom)


def _meets_itself(piece: Piece) -> bool:
    """Whether a panel cut along the cloth goes round by itself, its sides sewn to each other."""
    sides = [e.sews_to for e in piece.edges if e.name in ("left", "right")]
    return piece.cut == 1 and not grain_down(piece) and bool(sides) and all(s.split("/")[0] == piece.id for s in sides)


def phase(piece: Piece, cloth: Cloth) -> float | None:
    """How far the phase point lies from the start of the piece's box, along its grain and unturned (mm), or None."""
    at = phase_point(piece, cloth)
    if at is None:
        return None
    box = piece.as_cut.box
    return at.y - box.top if grain_down(piece) else at.x - box.left


def turned_over(lies: Ways, copy: int, asked: bool) -> bool:
    """Whether a copy is turned over: as is asked, but of a pair every other one is, whatever is asked."""
    piece = lies.piece
    if not piece.mirrored or lies.half:
        return asked
    return not lies.paired and copy % 2 == 1


def on_cloth(held: Held, lies: Ways, cloth: Cloth) -> bool:
    """Whether a copy that is held by hand is wanted, and lies between the edges of its cloth."""
    if held.copy >= lies.piece.cut:
        return False
    if lies.half:
        return held.turn == lies.ways[0].turn
    box, shift = lies.box, 0.0 if cloth.lies == "folded" else cloth.selvedge
    across = box.width if held.turn % 180 else box.height
    return held.y >= shift - 1e-6 and held.y - shift + across <= cloth.usable + 1e-6


def band_of(placed: Placed, cloth: Cloth) -> PrintBand | None:
    """The band of the print that a piece lies on, as it was meant to; None for none."""
    for band in cloth.bands if not placed.half else ():
        if shown_on(band, placed.piece) and not grain_down(placed.piece):
            way = _on_band(placed.piece, placed.outline.box, band, cloth)
            if way.turn == placed.turn and abs((way.across or 0.0) + cloth.selvedge - placed.at.y) < NEAR:
                return band
    return None


def _free(piece: Piece, cloth: Cloth) -> tuple[Way, ...]:
    turns = (90, 270) if grain_down(piece) else (0, 180)
    if not cloth.one_way and phase_point(piece, cloth) is None:  # a motif turned end for end does not run on
        return tuple(Way(turn) for turn in turns)
    asked = {band_turn(b, cloth) for b in cloth.bands if b.holds != "nothing" and cloth.lies == "open"}
    return (Way(180 if asked == {180} and not grain_down(piece) else turns[0]),)  # as what lies on bands does


def _on_fold(piece: Piece) -> Way:
    """Turned, and turned over if need be, so that the drawn half has its fold on the fold of the cloth."""
    fold = next(e for e in piece.edges if e.fold).path.start.x
    left = fold < piece.cut_line.box.centre.x
    return Way(90, mirrored=not left, across=0.0)


def _pairs(piece: Piece) -> bool:
    """Whether the copy in the layer beneath, a mirror image, is one that is wanted."""
    return piece.mirrored or piece.rectangular


def shown_on(band: PrintBand, piece: Piece) -> bool:
    """Whether a band of the print is meant for this piece."""
    if piece.cloth != "main" or band.holds == "nothing":
        return False
    if band.holds == "waistband":
        return piece.row == 0
    if band.holds == "skirt":
        return any(e.name == "hem" for e in piece.edges)
    return piece.tier == int(band.holds.removeprefix("tier "))


def shown(pieces: Sequence[Piece]) -> Iterator[str]:
    """What a band of the print may be for on this skirt: what has a piece to show it, and nothing."""
    for holds in get_args(get_type_hints(PrintBand)["holds"]):
        if holds == "nothing" or any(shown_on(PrintBand(0, 1, holds), p) for p in pieces):
            yield holds


def left_bare(pieces: Iterable[Piece], cloth: Cloth) -> Iterator[tuple[PrintBand, Piece]]:
    """Bands that no piece meant for them can be laid along, each with its first piece: on folded cloth, or where all
    are cut across it.
    """
    found = list(pieces)
    for band in cloth.bands:
        meant = [p for p in found if shown_on(band, p)]
        if meant and (cloth.lies == "folded" or all(grain_down(p) for p in meant)):
            yield band, meant[0]


def band_turn(band: PrintBand, cloth: Cloth) -> Literal[0, 180]:
    """How what lies on a band is turned: as its motif stands, or with its hem or top towards the nearer selvedge."""
    far_half = (band.start + band.end) / 2 >= cloth.washed / 2
    outward = (band.by == "top") != far_half  # what is laid lies towards the nearer selvedge
    return 0 if band.tops == "first" or (band.tops == "either" and outward) else 180


def _on_band(piece: Piece, box: Box, band: PrintBand, cloth: Cloth) -> Way:
    """Where the piece lies when what is asked of it is on the band."""
    turn = band_turn(band, cloth)
    line, edge = _line(piece, band, turn == 0)
    down = line - box.top if turn == 0 else box.bottom - line
    return Way(turn, across=edge - down - cloth.selvedge)


def _line(piece: Piece, band: PrintBand, first: bool) -> tuple[float, float]:
    """The line of the piece that is laid (its own y), and where on the cloth it comes (mm from the first edge).

    `first`: the piece's top points to the first edge.
    """
    near, far = (band.start, band.end) if first else (band.end, band.start)
    match band.by:
        case "top":
            return piece.seam_line.box.top, near
        case "fold":
            return _fold(piece), near
        case "face centre":
            return (_fold(piece) + piece.seam_line.box.bottom) / 2, (band.start + band.end) / 2
    hem = next((e for e in piece.edges if e.name == "hem"), None)
    return (hem.path.box.bottom if hem else piece.seam_line.box.bottom), far


def _fold(piece: Piece) -> float:
    """The fold of a band, or the top of what has none."""
    folds = [m.path.start.y for m in piece.lines if m.role == "fold"]
    return folds[0] if folds else piece.seam_line.box.top


def _off(box: Box, way: Way, cloth: Cloth) -> float:
    """How much of the piece would lie on a selvedge or off the cloth, mm."""
    start = way.across or 0.0
    return max(0.0, -start, start + box.height - cloth.usable)
