"""Made-up cloths with known truth: printed, lit, creased and photographed by numbers.

A seed gives a cloth. x runs along it and y across it, from the first selvedge; truths are in mm on the flat picture.
"""

import colorsys
import io
import math
from typing import Any, NamedTuple

import numpy as np
from motifs import STANDING, TURNING, Motif, oval, sprig
from PIL import Image, ImageDraw

FINE = 3
"""Dots drawn for one dot kept: shapes get soft edges."""
Pixels = np.ndarray[Any, np.dtype[np.uint8]]
Random = np.random.Generator


class Truth(NamedTuple):
    """What was printed. A band is (from, to, way)."""

    kind: str
    width: float
    scale: float
    repeat: float | None
    bands: list[tuple[float, float, str]]
    field: tuple[float, float] | None
    one_way: bool


class Canvas:
    """One repeat of the print, a ring along x; all in dots of the picture. It keeps how far each layer reaches."""

    def __init__(self, wide: int, high: int, ground: tuple[int, ...]) -> None:
        """Bare cloth."""
        self.wide, self.high = wide, high
        self.image = Image.new("RGB", (wide * FINE, high * FINE), ground)
        self.draw = ImageDraw.Draw(self.image)
        self.top, self.foot = math.inf, -math.inf

    def fresh(self) -> None:
        """Begin to measure another layer."""
        self.top, self.foot = math.inf, -math.inf

    def outline(self, points: list[tuple[float, float]], colour: tuple[int, ...]) -> None:
        """A shape, also where it runs over the ring's seam."""
        self.top = min(self.top, min(y for _, y in points))
        self.foot = max(self.foot, max(y for _, y in points))
        left, right = min(x for x, _ in points), max(x for x, _ in points)
        for turn in range(math.floor(-right / self.wide), math.ceil((self.wide - left) / self.wide) + 1):
            self.draw.polygon([((x + turn * self.wide) * FINE, y * FINE) for x, y in points], fill=colour)

    def motif(
        self,
        motif: Motif,
        at: tuple[float, float],
        size: tuple[float, float],
        colours: list[tuple[int, ...]],
        turned: bool,
    ) -> None:
        """A motif in a box about a place; turned end for end where asked."""
        sign = -1 if turned else 1
        for points, k in motif:
            self.outline(
                [(at[0] + sign * x * size[0], at[1] + sign * y * size[1]) for x, y in points], colours[k % len(colours)]
            )

    def stripe(self, top: float, foot: float, colour: tuple[int, ...]) -> None:
        """An even stripe along the cloth."""
        self.outline([(0, top), (self.wide, top), (self.wide, foot), (0, foot)], colour)


def colours_of(r: Random) -> tuple[tuple[int, ...], list[tuple[int, ...]]]:
    """A ground and five inks that stand out from it and from each other."""

    def ink(h: float, s: float, v: float) -> np.ndarray[Any, Any]:
        return np.array(colorsys.hsv_to_rgb(h % 1, s, v))

    hue = r.random()
    ground = [
        ink(hue, r.uniform(0, 0.12), r.uniform(0.82, 0.97)), ink(hue, r.uniform(0.3, 0.8), r.uniform(0.15, 0.4)),
        ink(hue, r.uniform(0.25, 0.6), r.uniform(0.5, 0.85)),
    ][int(r.integers(0, 3))]  # fmt: skip
    inks: list[np.ndarray[Any, Any]] = []
    while len(inks) < 5:
        one = ink(hue + r.uniform(-0.5, 0.5), r.uniform(0.1, 0.95), r.uniform(0.15, 0.98))
        if np.linalg.norm(one - ground) > 0.27 and all(np.linalg.norm(one - o) > 0.17 for o in inks):
            inks.append(one)
    return tuple((ground * 255).astype(int).tolist()), [tuple((i * 255).astype(int).tolist()) for i in inks]


def border(
    c: Canvas, r: Random, top: float, high: float, inks: list[tuple[int, ...]], inward: int, times: int, standing: bool
) -> tuple[float, float, str]:
    """A border: stripes at its outer edge perhaps, then a row of motifs; `times` rows' repeats to the canvas."""
    c.fresh()
    a, b = top, top + high
    stripes = r.random() < 0.55
    if stripes:
        for _ in range(int(r.integers(1, 4))):
            thick, gap = r.uniform(0.02, 0.07) * high + 1, r.uniform(0.01, 0.03) * high + 1
            edge = a if inward > 0 else b - thick
            c.stripe(edge, edge + thick, inks[int(r.integers(0, 5))])
            a, b = (a + thick + gap, b) if inward > 0 else (a, b - thick - gap)
    if r.random() < 0.3 and b - a > 40:
        step = c.wide / max(1, round(c.wide / max(0.2 * high, 14)))
        size = min(0.08 * high, 0.4 * step)
        y = a + size / 2 + 1 if inward > 0 else b - size / 2 - 1
        for k in range(round(c.wide / step)):
            c.outline(oval(k * step, y, size / 2, size / 2, 12), inks[1])
        a, b = (a + size + 4, b) if inward > 0 else (a, b - size - 4)
        stripes = True
    step = c.wide / times
    kinds = [int(r.choice([1, 1, 1, 2, 3])) if step > 45 else 1, 1][0]
    each = step / kinds
    pool = STANDING if standing else TURNING
    chosen = [pool[int(r.integers(0, len(pool)))] for _ in range(kinds)]
    if kinds > 1 and r.random() < 0.5:
        chosen = [chosen[0]] * kinds
    turned = bool(r.random() < 0.35)
    start, shift = r.uniform(0, step), int(r.integers(0, 5))
    wide = min(b - a, each * r.uniform(0.75, 0.98))
    for k in range(times * kinds):
        which = k % kinds
        mine = [inks[(shift + 2 * which + i) % 5] for i in range(3)]
        c.motif(chosen[which](), (start + k * each, (a + b) / 2), (wide, b - a), mine, turned)
    way = "both" if not standing and not stripes else ("first" if (not turned) else "away")
    if not standing and stripes:
        way = "away" if inward > 0 else "first"
    return c.top, c.foot, way


def field(
    c: Canvas, r: Random, kind: str, top: float, foot: float, scale: float, inks: list[tuple[int, ...]]
) -> tuple[tuple[float, float], int] | None:
    """Small motifs between two heights: scattered, in rows, or little leaves; and how often they repeat."""
    size = r.uniform(6, 19) / scale
    columns = 1
    standing = kind == "leaves"
    shape = sprig() if standing else TURNING[int(r.integers(0, len(TURNING)))]()
    c.fresh()
    if kind == "scatter":
        places: list[tuple[float, float]] = []
        wanted = min(140, max(4, int(0.07 * c.wide * (foot - top) / size**2)))
        for _ in range(wanted * 6):
            x, y = r.uniform(0, c.wide), r.uniform(top + size / 2, foot - size / 2)
            if all(min(abs(x - u), c.wide - abs(x - u)) ** 2 + (y - v) ** 2 > (1.6 * size) ** 2 for u, v in places):
                places.append((x, y))
            if len(places) >= wanted:
                break
    else:
        columns = max(1, round(c.wide / (size * r.uniform(2.2, 3.6))))
        rows = int((foot - top - size) / (size * r.uniform(2.2, 3.4))) + 1
        if rows < 3:
            return None
        apart = (foot - top - size) / (rows - 1)
        places = [
            ((k + 0.5 * (j % 2)) * c.wide / columns, top + size / 2 + j * apart)
            for j in range(rows)
            for k in range(columns)
        ]
    if not places:
        return None
    for at in places:
        c.motif(shape, at, (size, size), [inks[3], inks[4]], False)
    return (c.top, c.foot), columns


def cloth(seed: int, wide: int = 2400, high: int = 1000) -> tuple[Pixels, Truth]:
    """A photographed cloth, laid flat but none too well, and the truth about it."""
    r = np.random.default_rng(seed)
    width = r.uniform(880, 1520)
    scale = width / high
    kind = str(
        r.choice(
            ["one border", "two borders", "three borders", "mirrored", "even", "field alone", "plain"],
            p=[0.26, 0.27, 0.1, 0.23, 0.08, 0.03, 0.03],
        )
    )
    ground, inks = colours_of(r)
    longest = min(700.0, 0.42 * wide * scale)
    least = 18.0 if r.random() < 0.12 else 55.0
    repeat = float(np.exp(r.uniform(np.log(least), np.log(longest)))) / scale
    canvas = Canvas(max(8, round(repeat)), high, ground)
    print_here = _printed(canvas, r, kind, scale, inks)
    tile = canvas.image.resize((canvas.wide, high), Image.Resampling.BOX)
    bands, middle, one_way, often = print_here
    if kind == "mirrored":
        tile = _mirrored(tile, int(r.integers(0, canvas.wide)))
    picture, drop = photographed(tile, repeat, wide, r)
    truth = [(max(0.0, a + drop(a)) * scale, min(high, b + drop(b)) * scale, way) for a, b, way in bands]
    return picture, Truth(
        kind,
        width,
        scale,
        None if kind == "plain" else repeat * scale / often,
        truth,
        middle and (middle[0] * scale, middle[1] * scale),
        one_way,
    )


def _printed(
    c: Canvas, r: Random, kind: str, scale: float, inks: list[tuple[int, ...]]
) -> tuple[list[tuple[float, float, str]], tuple[float, float] | None, bool, int]:
    """Print the canvas: its bands (dots), its field, whether it is one-way, and how often it all repeats."""
    if kind == "plain":
        return [], None, False, 1
    high = c.high

    def times(tall: float, first: bool) -> int:
        able = [m for m in (1, 1, 1, 2, 3, 4) if c.wide / m > max(12, 0.22 * tall)] or [1]
        return 1 if first else int(r.choice(able))

    def margin() -> float:
        return float(r.uniform(3, 25)) / scale

    bands: list[tuple[float, float, str]] = []
    low, far = margin(), high - margin()
    if kind in ("one border", "two borders", "three borders", "mirrored", "even"):
        tall = float(r.uniform(40, 330)) / scale
        tall = min(tall, 4.5 * c.wide)
        bands.append(border(c, r, low, tall, inks, 1, times(tall, True), kind != "even" and r.random() < 0.7))
        low = bands[-1][1]
    if kind in ("two borders", "three borders"):
        tall = min(float(r.uniform(30, 300)) / scale, 4.5 * c.wide)
        bands.append(border(c, r, far - tall, tall, inks, -1, times(tall, False), r.random() < 0.7))
        far = bands[-1][0]
    if kind == "three borders" and far - low > 260 / scale:
        tall = min(float(r.uniform(28, 85)) / scale, 4.5 * c.wide)
        at = r.uniform(low + 40 / scale, low + (far - low) * 0.35)
        bands.append(border(c, r, at, tall, inks, 1, times(tall, False), False))
        low = bands[-1][1]
    if kind in ("mirrored", "even"):
        far = high / 2
    low, far = low + 18 / scale, far - 18 / scale
    way = str(r.choice(["bare", "scatter", "rows", "leaves"], p=[0.45, 0.25, 0.15, 0.15]))
    if kind == "field alone":
        way, low, far = str(r.choice(["scatter", "rows"])), high * 0.02, high * 0.98
    laid = field(c, r, way, low, far, scale, inks) if way != "bare" and far - low > 70 / scale else None
    one_way = kind not in ("mirrored",)
    if kind == "field alone":
        one_way = way == "scatter"
    middle = laid[0] if laid else None
    if kind in ("mirrored", "even"):
        opposite = {"first": "away", "away": "first", "both": "both"}
        bands += [(high - b, high - a, opposite[w]) for a, b, w in bands]
        if middle:
            middle = (middle[0], high - middle[0])
    if kind == "even":
        _turned_half(c)
        one_way = False
        if r.random() < 0.5:  # small leaves beside what is otherwise the same when turned
            extra = field(c, r, "leaves", high / 2 - 60 / scale, high / 2 + 60 / scale, scale, inks)
            one_way = extra is not None
            middle = (
                None
                if middle is None and extra is None
                else (
                    min((middle or extra[0])[0], (extra or [middle])[0][0]),
                    max((middle or extra[0])[1], (extra or [middle])[0][1]),
                )
            )  # type: ignore[index]
    return sorted(bands), middle, one_way, laid[1] if laid and not bands else 1


def _turned_half(c: Canvas) -> None:
    """The lower half of the canvas becomes the upper one, turned end for end."""
    half = c.high * FINE // 2
    upper = c.image.crop((0, 0, c.wide * FINE, half))
    c.image.paste(upper.transpose(Image.Transpose.ROTATE_180), (0, c.high * FINE - half))
    c.draw = ImageDraw.Draw(c.image)


def _mirrored(tile: Image.Image, shift: int) -> Image.Image:
    """The same print from both selvedges, turned end for end and moved along."""
    upper = tile.crop((0, 0, tile.width, tile.height // 2))
    lower = np.roll(np.asarray(upper.transpose(Image.Transpose.ROTATE_180)), shift, 1)
    out = tile.copy()
    out.paste(Image.fromarray(lower), (0, tile.height - tile.height // 2))
    return out


def photographed(tile: Image.Image, repeat: float, wide: int, r: Random) -> tuple[Pixels, Any]:
    """The tile repeated along a cloth that is stretched, bowed and askew; lit, creased, blurred, noisy, as JPEG.

    Also how far down each height lies on average (dots).
    """
    high = tile.height
    strip = Image.new("RGB", (wide + 2 * tile.width + 80, high))
    for x in range(0, strip.width, tile.width):
        strip.paste(tile, (x, 0))
    grown = repeat / tile.width
    begin = tile.width + r.uniform(0, min(tile.width, 40))
    corner = r.uniform(-4, 4, (2, 2, 2))
    bow, askew = r.uniform(-2.5, 2.5), r.uniform(-5, 5)
    wave, phase, long = r.uniform(0, 2.5), r.uniform(0, 6.28), r.uniform(0.8, 3.0)

    def source(x: float, y: float) -> tuple[float, float]:
        u, v = x / wide, y / high
        bent = (
            (1 - u) * (1 - v) * corner[0, 0]
            + u * (1 - v) * corner[0, 1]
            + (1 - u) * v * corner[1, 0]
            + u * v * corner[1, 1]
        )
        along = x + bent[0] + askew * (v - 0.5) + wave * math.sin(phase + 6.28 * long * u)
        return begin + along / grown, y + bent[1] + bow * (1 - (2 * u - 1) ** 2)

    columns, rows = 40, 4
    mesh = []
    for i in range(columns):
        for j in range(rows):
            x0, x1, y0, y1 = (
                round(e) for e in (i * wide / columns, (i + 1) * wide / columns, j * high / rows, (j + 1) * high / rows)
            )
            mesh.append(
                ((x0, y0, x1, y1), sum((source(x, y) for x, y in ((x0, y0), (x0, y1), (x1, y1), (x1, y0))), ()))
            )
    spread = np.pad(np.asarray(strip), ((8, 8), (0, 0), (0, 0)), mode="edge")
    mesh = [(box, tuple(v + 8 * (k % 2) for k, v in enumerate(quad))) for box, quad in mesh]
    flat = Image.fromarray(spread).transform((wide, high), Image.Transform.MESH, mesh, Image.Resampling.BICUBIC)

    def drop(y: float) -> float:
        return -float(np.mean([source(x, y)[1] - y for x in np.linspace(0, wide, 21)]))

    return _lit(np.asarray(flat, np.float32) / 255, r), drop


def _lit(cloth: np.ndarray[Any, Any], r: Random) -> Pixels:
    """Light from one side, folds, a shadow, weave that beats with the dots, blur, noise and JPEG."""
    high, wide = cloth.shape[:2]
    x, y = np.arange(wide, dtype=np.float32) / wide, np.arange(high, dtype=np.float32)[:, None] / high
    coarse = Image.fromarray(r.normal(0, 1, (3, 4)).astype(np.float32)).resize((wide, high), Image.Resampling.BICUBIC)
    light = (
        1
        + r.uniform(0.01, 0.09) * np.asarray(coarse)
        + r.uniform(-0.2, 0.2) * (x - 0.5)
        + r.uniform(-0.15, 0.15) * (y - 0.5)
    )
    for _ in range(int(r.choice([0, 0, 1, 2]))):  # folds: a bright and a dark flank
        across = r.random() < 0.6
        at, soft, deep = r.uniform(0.1, 0.9), r.uniform(0.002, 0.008), r.uniform(0.02, 0.08)
        away = ((x - at) if across else (y - at)) / soft
        light = light + deep * away * np.exp(-(away**2) / 2)
    if r.random() < 0.2:  # the shadow of whoever stands there
        edge = (x * r.uniform(0.6, 1) + y * r.uniform(-0.4, 0.4) - r.uniform(0.5, 0.8)) / r.uniform(0.05, 0.15)
        light = light * (1 - r.uniform(0.08, 0.22) / (1 + np.exp(np.clip(-edge, -30, 30))))
    strong = r.uniform(0, 0.03)
    light = light * (
        1 + strong * (np.sin(x * wide * 6.2832 / r.uniform(2.2, 4.5)) + np.sin(y * high * 6.2832 / r.uniform(2.2, 4.5)))
    )
    if r.random() < 0.15:  # moiré
        light = light * (
            1
            + r.uniform(0.005, 0.025) * np.sin((x * wide + y * high * r.uniform(-0.5, 0.5)) * 6.2832 / r.uniform(9, 40))
        )
    out = cloth * light[..., None].astype(np.float32) * (1 + r.uniform(-0.06, 0.06, 3)).astype(np.float32)
    blur = r.uniform(0, 0.5)
    for axis in (0, 1):
        out = out * (1 - blur) + blur / 2 * (np.roll(out, 1, axis) + np.roll(out, -1, axis))
    out += r.uniform(0.004, 0.035) * r.standard_normal(out.shape, np.float32)
    stream = io.BytesIO()
    Image.fromarray((np.clip(out, 0, 1) * 255).astype(np.uint8)).save(stream, "JPEG", quality=int(r.integers(45, 96)))
    return np.asarray(Image.open(stream))
