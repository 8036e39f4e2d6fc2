"""Whether a plan may be cut: nothing off the cloth, nothing nearer to another than the gap, everything in its place."""

from studio.cloth.plan.table import Laid, Table

FINE = 1e-4
"""What the search may be out by (mm): a tenth of a thousandth, far below a chalk line."""


def sound(table: Table, spots: list[Laid]) -> bool:
    """Whether the free copies lie as they must, beside each other and beside what is held."""
    return (
        sorted(s.copy for s in spots) == list(range(len(table.free)))
        and all(_placed(table, s) for s in spots)
        and all(apart(table, s, o) for k, s in enumerate(spots) for o in (*spots[:k], *table.held))
    )


def _placed(table: Table, laid: Laid) -> bool:
    stance, shape = table.stances[laid.stance], table.shape(laid)
    return (
        laid.stance in table.choices[laid.copy]
        and laid.x >= -FINE
        and -FINE <= laid.y <= table.width - shape.across + FINE
        and (stance.across is None or abs(laid.y - stance.across) <= FINE)
        and (stance.repeat is None or abs((laid.x - stance.phase + FINE) % stance.repeat) <= 2 * FINE)
    )


def apart(table: Table, one: Laid, other: Laid) -> bool:
    """Whether two copies on the cloth keep their gap."""
    a, b = table.shape(one), table.shape(other)
    way = (one.x - other.x, one.y - other.y)
    far = max(-way[0] - a.along, way[0] - b.along, -way[1] - a.across, way[1] - b.across)
    if far >= table.gap:
        return True
    return all(
        (region.normals @ way - region.offsets).max() >= -FINE for region in table.regions(other.stance, one.stance)
    )
