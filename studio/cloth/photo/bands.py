"""Which strips across the cloth are borders, and which are fields of scattered small motifs."""

import itertools

import numpy as np
from msgspec import Struct

from .smooth import Floats, Line, heaps, running_max, running_mean, runs
from .tile import Tile

GAP = 11.0
"""A bare strip narrower than this lies within a band (mm)."""
JOIN = 36.0
"""Borders nearer to each other than this are one (mm)."""
EDGE = 30.0
"""What begins this near to a selvedge is a border and no field (mm)."""
SMALL = 26.0
"""The height of a scattered motif at most (mm)."""
ROW_GAP = 75.0
"""Rows of a field lie at most this far apart (mm)."""
SELVEDGE = 14.0
"""The unprinted edge is at most this wide (mm)."""
CLUMP = 36.0
"""Scattered motifs that touch are still no taller than this (mm)."""
INK = 0.15
"""Mean colours nearer than this are the same."""
FAINT = 1.6
"""Nothing stronger than this against the noise is only light on a plain cloth."""
WIDE_FIELD = 100.0
"""A strip of small motifs this wide is a field by itself (mm)."""
FIELD = 50.0
"""A field is at least this wide (mm)."""
EVEN = 0.12
"""A strip that changes less than this along the cloth has stripes only."""


class Strip(Struct, eq=False):
    """A printed strip while it is being judged (mm): how strong it is against the noise, how much it changes along
    the cloth, how tall its motifs are, and their mean colour.
    """

    start: float
    end: float
    strength: float
    change: float
    motif: float
    ink: Line
    kind: str = "band"
    row: bool = False
    """Part of a field of even rows."""

    @property
    def height(self) -> float:
        """From edge to edge (mm)."""
        return self.end - self.start

    def at_edge(self, width: float) -> bool:
        """Whether it begins near a selvedge."""
        return self.start < EDGE or self.end > width - EDGE

    def like(self, other: "Strip") -> bool:
        """Whether it could be a row of the other's field: motifs as tall, in the same colours, and not far apart."""
        off = float(np.abs(self.ink - other.ink).max())
        same = off < INK / 2
        tall = abs(self.motif - other.motif) < 0.6 * min(self.motif, other.motif) + 3
        apart = max(self.start - other.end, other.start - self.end)
        if other.row and self.height > 1.6 * other.height + 3:
            return False
        return (same or (tall and off < INK)) and apart < (2 * ROW_GAP if same else ROW_GAP)


def strips(tile: Tile, noise: float, scale: float) -> list[Strip]:
    """Borders and fields of a tile, from the first selvedge on; `scale` is mm per dot, `noise` that of a dot."""
    mean = tile.mean
    width = mean.shape[1] * scale
    strength = np.sqrt((running_mean(running_mean(mean, 3, 1), 3, 2) ** 2).sum(0))
    wide = strength.shape[1]
    few = max(3, int(0.006 * wide))
    profile = np.partition(strength, wide - few, axis=1)[:, wide - few :].mean(1).astype(np.float64)
    rest = float(np.median(np.abs(tile.even - tile.odd))) / 0.6745 / 2 if tile.copies > 1 else noise
    floor = float(np.percentile(profile, 3))
    least = max(2.2 * floor if floor < 0.04 else floor + 0.05, 0.06, 2 * rest)
    near = running_max(profile, int(30 / scale))
    bound = np.maximum(least, 0.30 * near)
    _blank_selvedges(mean, profile, scale)
    found = _parts(profile - bound > 0, GAP / scale, max(2.0, 1.2 / scale))
    found = _to_the_tips(found, profile, np.maximum(1.25 * floor + 0.015, 0.12 * near), int(12 / scale))
    spread = np.percentile(running_mean(mean, 3, 2), [1, 99], axis=2)
    change = (spread[1] - spread[0]).max(0)
    boxes = heaps(strength > np.maximum(bound, 0.5 * near)[:, None])
    spots = np.array([h for h in boxes if h[3] - h[2] < 0.95 * wide and h[1] - h[0] > 1] or [(0, 0, 0, 0)])
    large = np.zeros(len(profile), bool)
    for top, foot, left, right in boxes:
        large[top:foot] |= (foot - top) * scale > CLUMP or right - left >= 0.95 * wide
    judged = []
    for a, b in _without_fields(found, large, scale):
        on = profile[a:b] > bound[a:b]
        inside = spots[(spots[:, 0] >= a - 1) & (spots[:, 1] <= b + 1) & (spots[:, 1] > 0)]
        judged.append(Strip(
            a * scale, b * scale, float(np.median(profile[a:b][on])) / least if on.any() else 1.0,
            float(change[a:b].max()), _usual_height(inside, b - a) * scale,
            _ink(mean[:, a:b], strength[a:b] > bound[a:b, None]),
        ))  # fmt: skip
    if max((s.strength for s in judged), default=0.0) < FAINT:
        return []
    _sort_out(judged, width)
    return _joined([s for s in judged if s.kind != "selvedge"])


def _usual_height(spots: "np.typing.NDArray[np.int64]", otherwise: int) -> float:
    """The height under which three quarters of the printed area lies, spot by spot (dots)."""
    if not len(spots):
        return otherwise
    tall = spots[:, 1] - spots[:, 0]
    area = tall * (spots[:, 3] - spots[:, 2])
    order = np.argsort(tall)
    share = np.cumsum(area[order])
    return float(tall[order][np.searchsorted(share, 0.75 * share[-1])])


def _ink(mean: Floats, on: "np.typing.NDArray[np.bool_]") -> Line:
    """The mean departure from the ground where there is print."""
    return np.asarray((mean * on).sum((1, 2)) / max(1, int(on.sum())), np.float64)


def _without_fields(
    parts: list[tuple[int, int]], large: "np.typing.NDArray[np.bool_]", scale: float
) -> list[tuple[int, int]]:
    """Parts cut where a border runs into a field: where for a long way there is no large motif."""
    out = []
    for a, b in parts:
        cuts = {a, b}
        for start, end in runs(~large[a:b]):
            if (end - start) * scale > FIELD:
                cuts |= {a + start, a + end}
        edges = sorted(cuts)
        out += list(itertools.pairwise(edges))
    return out


def _parts(on: "np.typing.NDArray[np.bool_]", gap: float, least: float) -> list[tuple[int, int]]:
    """Runs with narrow gaps closed, and without the shortest."""
    out: list[tuple[int, int]] = []
    for a, b in runs(on):
        if out and a - out[-1][1] < gap:
            out[-1] = (out[-1][0], b)
        else:
            out.append((a, b))
    return [(a, b) for a, b in out if b - a >= least]


def _to_the_tips(parts: list[tuple[int, int]], profile: Line, low: Line, reach: int) -> list[tuple[int, int]]:
    """Each run grown along thin tips down to the noise."""
    grown: list[tuple[int, int]] = []
    for k, (a, b) in enumerate(parts):
        least = grown[-1][1] if grown else 0
        most = parts[k + 1][0] if k + 1 < len(parts) else len(profile)
        start, end = a, b
        while start > least and a - start < reach and low[start - 1] < profile[start - 1] <= profile[start] * 1.15:
            start -= 1
        while end < most and end - b < reach and low[end] < profile[end] <= profile[end - 1] * 1.15:
            end += 1
        grown.append((a if a - start <= 2 else start + 1, b if end - b <= 2 else end - 1))
    return grown


def _blank_selvedges(mean: Floats, profile: Line, scale: float) -> None:
    """Take the unprinted edges out of the profile: even along the cloth as far as the first jump in colour."""
    rows = int(SELVEDGE / scale)
    for side in (1, -1):
        edge, strip = mean[:, ::side][:, :rows], profile[::side]
        level = edge.mean(2)
        outer = level[:, :2].mean(1, keepdims=True)
        jump = np.flatnonzero(np.sqrt(((level - outer) ** 2).sum(0)) > 0.10)
        if not len(jump) or jump[0] < 2 or np.sqrt((outer**2).sum()) <= 0.06:
            continue
        if edge[:, : jump[0]].std(2).max() < 0.10:
            strip[: jump[0] + 2] = 0


def _sort_out(judged: list[Strip], width: float) -> None:
    """Name each strip: selvedge, field or band."""
    for s in judged:
        if (s.start < 3 or s.end > width - 3) and s.height < SELVEDGE and s.change < EVEN:
            s.kind = "selvedge"
        elif s.height > (0.4 * width if s.at_edge(width) else WIDE_FIELD) and s.motif < min(SMALL, 0.33 * s.height):
            s.kind = "field"
    _rows(judged, width)
    for order in (judged, judged[::-1]):
        field: Strip | None = None
        for s in order:
            if s.kind == "field":
                field = s
            elif field and s.kind == "band" and s.motif < CLUMP and s.like(field):
                s.kind, s.row, field = "field", field.row, s
            elif s.kind == "band":
                field = None
    for before, s, after in zip(judged[:-2], judged[1:-1], judged[2:], strict=True):
        if before.kind == after.kind == "field" and s.kind == "band" and s.motif < CLUMP:
            s.row = before.row = after.row = False
            if s.like(before) or s.like(after):
                s.kind = "field"


def _rows(judged: list[Strip], width: float) -> None:
    """Three strips or more of small motifs, each like the one before, are a field; so are two that are wide."""

    def low(s: Strip) -> bool:
        return s.kind == "band" and s.motif < CLUMP and (s.change > EVEN or s.strength < FAINT)

    k = 0
    while k < len(judged):
        last = k
        if low(judged[k]) and not judged[k].at_edge(width):
            while last + 1 < len(judged) and low(judged[last + 1]) and judged[last + 1].like(judged[last]):
                last += 1
        if last - k >= 2 or (last > k and judged[last].end - judged[k].start > 2 * WIDE_FIELD):
            rows = judged[k : last + 1]
            usual = float(np.median([s.height for s in rows]))
            tall = [s for s in rows if s.height > 1.6 * usual + 3]
            even = all(s is rows[0] or s is rows[-1] for s in tall)
            for s in rows:
                if not even or s not in tall:
                    s.kind, s.row = "field", even
        k = last + 1


def _joined(judged: list[Strip]) -> list[Strip]:
    """Loose stripes go to the band beside them, and rows of a field to each other."""
    out: list[Strip] = []
    for s in judged:
        last = out[-1] if out else None
        if last and last.kind == s.kind and s.start - last.end < (JOIN if s.kind == "band" else ROW_GAP):
            out[-1] = Strip(
                last.start, s.end, max(last.strength, s.strength), max(last.change, s.change),
                max(last.motif, s.motif), last.ink, s.kind,
            )  # fmt: skip
        else:
            out.append(s)
    return out
