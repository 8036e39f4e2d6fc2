"""Lengths taken from the drafted pieces with a ruler: from cut line, seam line and marks, never from what was asked."""

from studio.brief import Brief
from studio.draft import Draft, LineMark, Piece, Spot
from studio.draft.piece import PARTS
from studio.geometry import Line, Path, Point


class Ruler:
    """A drafted skirt, and what is measured on it, mm."""

    def __init__(self, brief: Brief, draft: Draft):
        """Taken to the pieces of one draft."""
        self.brief, self.draft = brief, draft
        self.panels = [p for p in draft.pieces if p.cloth == "main" and 0 < p.row < PARTS]
        self.tops = [p for p in self.panels if has(p, "waist")]

    def panel(self, edge: str) -> Piece:
        """The first panel with such an edge."""
        return next(p for p in self.panels if has(p, edge))

    def piece(self, start: str) -> Piece:
        """The first piece whose id starts so."""
        return next(p for p in self.draft.pieces if p.id.startswith(start))

    @property
    def band(self) -> Piece:
        """The waistband."""
        return self.draft.piece("waistband")

    @property
    def allowance(self) -> float:
        """What is cut beyond a seam: beyond the waist of the skirt."""
        return beyond(self.tops[0], "waist")

    def waist(self) -> float:
        """The waist seam: all tops, pleats and darts closed and gathers drawn up."""
        return sum(p.edge("waist").sewn * copies(p) for p in self.tops)

    def stop(self) -> float:
        """How deep the skirt is open: one edge of its opening, through every tier it passes."""
        found: dict[int, float] = {}
        for p in self.panels:
            for side in ("left opening", "right opening"):
                if has(p, side):
                    found[p.row] = p.edge(side).path.length
        return sum(found.values())

    def stop_below_raw_edge(self) -> float:
        """The same from the cut edge."""
        return self.stop() + self.allowance

    def length(self) -> float:
        """From waist to hem down the longest panel, tier by tier."""
        rows: dict[int, float] = {}
        for p in self.panels:
            if has(p, "waist") or has(p, "top"):
                rows[p.row] = max(rows.get(p.row, 0.0), self.down(p))
        relief = self.draft.fact("bias_relief") if self.draft.has("bias_relief") else 0.0  # it stretches down by that
        return sum(rows.values()) - relief

    def down(self, piece: Piece) -> float:
        """From a panel's top to its foot: down a right side that hangs straight, as a centre does, or its middle."""
        side = self.side(piece, "right")
        if side.box.width < 1e-6:
            return side.length
        top, foot = (next(e for e in piece.edges if e.name in names) for names in (("waist", "top"), ("hem", "foot")))
        return middle(top.path).distance(middle(foot.path))

    def hem(self) -> float:
        """What is cut beyond the hem line."""
        return beyond(self.panel("hem"), "hem")

    def turn(self) -> tuple[float, float]:
        """From the raw edge to the first turn, and from there to the hem line."""
        piece = self.panel("hem")
        at = middle(line_of(piece, "first turn").path)
        return piece.cut_line.nearest(at)[1], piece.edge("hem").path.nearest(at)[1]

    def sweep(self) -> float:
        """Once round the hem, a vent's extensions left out."""
        return sum(
            (p.edge("hem").path.length - (p.edge("vent top").path.box.width if has(p, "vent top") else 0)) * copies(p)
            for p in self.panels if has(p, "hem")
        )  # fmt: skip

    def notches(self, piece: Piece, on: str = "waist") -> list[float]:
        """Notches of an edge from the piece's left cut edge."""
        return sorted(s.at.x - piece.cut_line.box.left for s in piece.spots if s.role == "notch" and s.on == on)

    def from_plain_end(self, at: Point) -> float:
        """How far along the waist seam a place lies from the band's plain end."""
        waist = self.band.edge("waist").path  # walked towards the plain end
        if all(isinstance(c, Line) for c in waist.curves):
            return at.x - waist.end.x
        return waist.length - waist.nearest(at)[0]

    def from_other_end(self, at: Point) -> float:
        """How far from the end that lies on top."""
        low = self.band.edge("extension" if has(self.band, "extension") else "waist").path
        along = low.nearest(at)[0]
        on_waist = self.band.edge("waist").path.nearest(at)
        if has(self.band, "extension") and on_waist[1] < low.nearest(at)[1] - 1e-6:
            return low.length + on_waist[0]
        return along

    def pins(self) -> list[float]:
        """The band's notches from its plain end."""
        found = sorted(self.from_plain_end(s.at) for s in self.band.spots if s.role == "notch" and s.on == "waist")
        return [x for x in found if x > 1]

    def high(self) -> float:
        """How high the finished band is: half a folded strip."""
        tall = self.band.edge("plain end").path.length
        return tall / 2 if any(m.role == "fold" for m in self.band.lines) else tall

    def below_top(self, at: Point) -> float:
        """How far below the finished band's top edge."""
        fold = next((m.path for m in self.band.lines if m.role == "fold"), None)
        return (fold or self.band.edge("top").path).nearest(at)[1]

    def held(self, *roles: str) -> list[Spot]:
        """What is sewn to the band."""
        return [s for s in self.band.spots if s.role in roles]

    def hole(self) -> Path:
        """The first buttonhole, its outer end last."""
        return line_of(self.band, "buttonhole").path

    def pull(self) -> float:
        """From the end on top to where the pull comes: a hole's outer end, a hook's, or the middle of a snap. A faced
        edge has no band to be marked on: a hook lies 1/8 in back from it (New Mexico State Univ. Extension C-232).
        """
        if not self.banded:
            return 3.0
        if any(m.role == "buttonhole" for m in self.band.lines):
            return self.from_other_end(self.hole().end)
        spot = min(self.held("hook", "snap"), key=lambda s: self.from_other_end(s.at))
        return self.from_other_end(spot.at) - (spot.size / 2 if spot.role == "hook" else 0)

    def counterpart(self) -> float:
        """From the plain end to the button, the bar or the outer snap."""
        if not self.banded:
            return self.waist() - self.girth() - 3.0
        spots = self.held("button", "bar") or [s for s in self.held("snap") if self.below_end(s)]
        return min(self.from_plain_end(s.at) for s in spots)

    @property
    def banded(self) -> bool:
        """Whether there is a waistband, or a binding."""
        return any(p.id == "waistband" for p in self.draft.pieces)

    def girth(self) -> float:
        """The waist as it was measured, and its ease."""
        return self.brief.body.waist + self.brief.waistband.ease

    def below_end(self, spot: Spot) -> bool:
        """Whether a snap is the outer one of the plain end, not the one that holds a wrap's under edge."""
        return self.brief.opening.kind != "wrap" or 10.5 < self.from_plain_end(spot.at) < self.waist() / 2

    def closed(self) -> float:
        """The closed band: from end to end, less what lies beyond pull and counterpart."""
        if not self.banded:
            return self.waist() - self.pull() - self.counterpart()
        lap = self.band.edge("extension").path.length if has(self.band, "extension") else 0.0
        return self.band.edge("waist").path.length + lap - self.pull() - self.counterpart()

    def side(self, piece: Piece, name: str) -> Path:
        """A side walked from the waist down."""
        edges = [e for e in piece.edges if e.name in (name, f"{name} opening")]
        path = Path(tuple(c for e in edges for c in e.path.curves))
        return path if name == "right" else path.reversed()


def has(piece: Piece, edge: str) -> bool:
    """Whether a piece has such an edge."""
    return any(e.name == edge for e in piece.edges)


def copies(piece: Piece) -> int:
    """How many times what is drawn is there."""
    return piece.cut * (2 if piece.on_fold else 1)


def middle(path: Path) -> Point:
    """Half way along."""
    return path.at(path.length / 2)


def beyond(piece: Piece, edge: str) -> float:
    """From the middle of an edge's seam line to the cut line."""
    return piece.cut_line.nearest(middle(piece.edge(edge).path))[1]


def line_of(piece: Piece, role: str) -> LineMark:
    """The first line of a role."""
    return next(m for m in piece.lines if m.role == role)


def lines_of(piece: Piece, *roles: str) -> list[LineMark]:
    """All lines of some roles, from the left."""
    return sorted((m for m in piece.lines if m.role in roles), key=lambda m: m.path.start.x)
