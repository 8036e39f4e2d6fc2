"""Gores round the body: which are cut from one piece, what each is called, and where band and gores meet."""

from msgspec import Struct

from studio.brief import Brief
from studio.units import spell
from studio.words import phrase, tr

from .gore import Gore
from .marks import FIRST, Station, stations
from .ring import Place, Ring

FINE = 4
"""Marks that agree to so many decimals of a gore's width are one."""


class Kind(Struct, frozen=True):
    """Gores that are cut from one piece: their shape, the stations on it (mm along its own waist), and how many."""

    id: str
    name: str
    gore: Gore
    marks: tuple[Station, ...]
    cut: int
    mirrored: bool


class _Found(Struct, frozen=True):
    """One gore as it hangs: its shape, where its waist is marked (shares of it), and whether the opening is at its left
    or right.
    """

    gore: Gore
    at: tuple[float, ...]
    opens: tuple[bool, bool]

    @property
    def flipped(self) -> "_Found":
        """The gore as its mirror image would be cut."""
        return _Found(self.gore, tuple(round(1 - x, FINE) for x in reversed(self.at)), self.opens[::-1])


def gore_stations(brief: Brief, n: int) -> tuple[Station, ...]:
    """Every seam between gores meets a notch of the band, and so does every quarter of the body. Where a quarter falls
    on the middle of a gore, all are marked in the middle, so that they stay one piece.
    """
    middles = n % 4 == 2 and brief.opening.kind != "wrap"
    return stations(brief, 2 * n if middles else n)


def gore_ring(brief: Brief, gores: tuple[Gore, ...], met: tuple[Station, ...]) -> tuple[Ring, tuple[Kind, ...]]:
    """The ring of gores, and the pieces they are cut from. Gores that are alike in shape and marks are one piece, a
    mirrored one where marks or opening want it; those that carry the opening are pieces of their own.
    """
    n, top, slit = len(gores), brief.waist_seam / len(gores), brief.opening.kind != "none"
    inside = [[Station(s.at - k * top, s.words) for s in met if 0.01 < s.at - k * top < top - 0.01] for k in range(n)]
    ids: dict[_Found, str] = {}
    ring: list[Place] = []
    for k, (g, marks) in enumerate(zip(gores, inside, strict=True)):
        here = _Found(g, tuple(round(s.at / top, FINE) for s in marks), (slit and k == 0, slit and k == n - 1))
        turned = here not in ids and here.flipped in ids
        if not turned:
            ids.setdefault(here, _id(ids, any(here.opens)))
        ring.append(Place(ids[here.flipped if turned else here], turned))
    names = _names({id: [k for k, p in enumerate(ring) if p.piece == id] for id in ids.values()}, n, brief)
    kinds = tuple(
        Kind(
            id, names[id], found.gore, _marks([inside[k] for k in at if not ring[k].mirrored]), len(at),
            any(ring[k].mirrored for k in at),
        )
        for found, id in ids.items()
        for at in [[k for k, p in enumerate(ring) if p.piece == id]]
    )  # fmt: skip
    return tuple(ring), kinds


def _id(ids: dict[_Found, str], opens: bool) -> str:
    """The first gore is "skirt", another at the opening "skirt-last", the others "gore", "gore-2" and on."""
    if not ids:
        return "skirt"
    if opens:
        return "skirt-last"
    others = sum(id.startswith("gore") for id in ids.values())
    return f"gore-{others + 1}" if others else "gore"


def _marks(copies: list[list[Station]]) -> tuple[Station, ...]:
    """The stations of a piece: where its copies lie at different places of the body, their words are of no use."""
    return tuple(
        Station(alike[0].at, alike[0].words if len({s.words for s in alike}) == 1 else "")
        for alike in zip(*copies, strict=True)
    )


def _names(places: dict[str, list[int]], n: int, brief: Brief) -> dict[str, str]:
    """Back, side or front gore by where its copies lie on the body, with a number where there are several pieces."""
    called: dict[str, str] = {}
    for id, at in places.items():
        words = {_where((k + 0.5) / n + FIRST[brief.opening.place] / 4) for k in at}
        called[id] = words.pop() if len(words) == 1 else "Gore"
    names: dict[str, str] = {}
    for id, name in called.items():
        alike = [i for i, other in called.items() if other == name]
        text = "{g:word} {n:count}" if len(alike) > 1 else "{g:word}"
        names[id] = spell(phrase(text, g=tr(name), n=alike.index(id) + 1), "cm")
    return names


def _where(turn: float) -> str:
    """What a gore is called whose middle lies so far round (in turns) from the centre back."""
    away = abs((turn + 0.5) % 1 - 0.5)  # 0 at the centre back, 1/2 at the centre front
    if away <= 0.125 + 1e-9:
        return "Back gore"
    return "Front gore" if away >= 0.375 - 1e-9 else "Side gore"
