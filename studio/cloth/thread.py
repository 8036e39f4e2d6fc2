"""Thread: by seam length and stitch (classes of ISO 4915), reckoned from everything that is sewn in the draft."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft, Edge, Piece
from studio.draft.seam import Seam, walked

INCH = 25.4
TWO_LAYERS = 0.635
"""Two layers of a light cloth, pressed together (mm; common practice, no source)."""
STITCH, BITE = 2.54, 6.35
"""Length of a stitch, ten to the inch, and width of an overedge, 1/4 in (mm; common practice, no source)."""
WASTE = 1.15
"""10 to 15 per cent is lost at starts and ends (trade tables)."""


def lockstitch_ratio(thick: float, stitch: float) -> float:
    """Thread for each millimetre of lockstitch (class 301) in cloth `thick` mm thick with stitches of `stitch` mm, half
    needle, half bobbin: 2 + 2 T S with T in inches and S stitches to the inch (trade tables).
    """
    return 2 + 2 * thick / stitch


def overedge_ratio(thick: float, stitch: float, bite: float) -> float:
    """Thread for each millimetre of three-thread overedge (class 504) `bite` mm wide: 3 + 4 S (W + T), in inches as
    above (trade tables; another prints 5 + …).
    """
    return 3 + 4 * (bite + thick) / stitch


LOCKSTITCH = lockstitch_ratio(TWO_LAYERS, STITCH)
"""2.5, as trade tables have it."""
OVEREDGE = overedge_ratio(TWO_LAYERS, STITCH, BITE)
"""14, as trade tables have it (from memory)."""


def thread(length: float, ratio: float = LOCKSTITCH, waste: float = WASTE) -> float:
    """Thread for `length` mm of a stitch, mm."""
    return length * ratio * waste


def sewn(brief: Brief, draft: Draft) -> float:
    """All that is sewn with a lockstitch, mm: seams, zip and placket, band, hem, darts, gathering rows, pleats
    stitched down, pockets. Buttonholes are left to the waste: no rule with a source is known.
    """
    by_id = {p.id: p for p in draft.pieces}
    cloth = [p for p in draft.pieces if p.cloth != "interfacing"]
    joined = {(p.piece, p.edge) for s in draft.seams for p in (*s.one, *s.other)}
    seams = sum(_seam(brief, s, by_id) for s in draft.seams)
    under = brief.waist_seam if brief.waistband.kind == "faced" else 0.0
    edges = sum(_edge(p, e) * copies(p) for p in cloth for e in p.edges if (p.id, e.name) not in joined)
    return seams + under + edges + sum(_inside(brief, p) * copies(p) for p in cloth)


def neatened(brief: Brief, draft: Draft) -> float:
    """All raw edges that an overedge would neaten, mm: sides of panels from cut edge to cut edge, the free edges of
    facings and pocket bags, a hem that is turned once, and the joins of tiers, both allowances together.
    """
    by_id = {p.id: p for p in draft.pieces}
    joined = sum(walked(s.one, by_id) for s in draft.seams if s.name == "tier")
    return joined + sum(_raw(brief, p) * copies(p) for p in draft.pieces if p.cloth != "interfacing")


def copies(piece: Piece) -> int:
    """How many times what is drawn is there once it is cut."""
    return piece.cut * (2 if piece.on_fold else 1)


def _seam(brief: Brief, seam: Seam, pieces: dict[str, Piece]) -> float:
    """A join runs from cut edge to cut edge; a hem facing is listed once for all panels of a kind."""
    one = pieces[seam.one[0].piece]
    length = walked(seam.one, pieces)
    if seam.name == "join":
        return length + _over(brief, one)
    return length * copies(one) if seam.name == "hem facing" else length


def _over(brief: Brief, piece: Piece) -> float:
    """What a side has beyond its seam line at top and foot, mm."""
    return brief.seams.allowance + max((e.allowance for e in piece.edges if e.name in ("hem", "foot")), default=0.0)


def _edge(piece: Piece, edge: Edge) -> float:
    """How much of an edge outside the draft's seams is sewn. Where two edges of such a kind meet, each has half: the
    two layers of a folded band's ends, the lap, the two bags of a pocket.
    """
    if edge.fold:
        return 0.0
    long, name = edge.path.length, edge.name
    if piece.id == "pocket" or name == "hem" or name.endswith("opening"):
        return long
    if piece.id == "pocket-bag":
        return {"top": long / 2, "side": long / 2, "seam": long}.get(name, 0.0)
    if piece.id.startswith("placket"):
        return {"facing": long, "top": long / 2, "end": long}.get(name, 0.0)
    return long / 2 if edge.sews_to or name.endswith(" end") else 0.0


def _inside(brief: Brief, piece: Piece) -> float:
    """What is sewn on a piece itself: gathering rows, darts, pleats. A lining's darts are tucks, held by the seam."""
    roles = [m.role for m in piece.lines]
    found = 0.0
    if "gather" in roles:
        found += brief.gathers.rows * sum(e.path.length for e in piece.edges if e.name in ("waist", "top"))
    if piece.cloth == "main":
        found += sum(m.path.length / 2 for m in piece.lines if m.role == "dart")
    down = next((m.path.start.y for m in piece.lines if m.role == "stitching"), 0.0)
    return found + roles.count("pleat fold") * down


def _raw(brief: Brief, piece: Piece) -> float:
    if piece.id.startswith(("facing-", "hem-facing-")):
        return sum(e.path.length for e in piece.edges if e.name in ("lower", "upper"))
    if piece.id == "pocket-bag":  # both layers together, but for the straight edge, which each has with its panel
        return sum(_edge(piece, e) for e in piece.edges)
    if not {"hem", "foot"} & {e.name for e in piece.edges}:
        return 0.0
    sides = [e for e in piece.edges if not e.fold and e.name.split(" ")[0] in ("left", "right")]
    once = brief.seams.hem_kind == "single" and piece.cloth == "main"
    hem = sum(e.path.length for e in piece.edges if e.name == "hem") if once else 0.0
    whole = len({e.name.split(" ")[0] for e in sides})
    return hem + sum(e.path.length for e in sides) + whole * _over(brief, piece)


def rows(brief: Brief, draft: Draft) -> Iterator[tuple[str, float]]:
    """Lockstitch, and overedge should it be used: thread for each, mm. The overedge has no waste: its chain is cut."""
    yield "length", thread(sewn(brief, draft))
    yield "overedge", thread(neatened(brief, draft), OVEREDGE, 1.0)
