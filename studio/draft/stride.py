"""How far a hem must open for a step: a model of the walking leg.

Needed girth: 2 · step · (leg − h) / leg + the leg's girth at h, where h is how high the hem hangs, the step is 0.413 of
the height and the leg 0.53 of it.
"""

from studio.brief import Body

KNEE = 45 / 165
"""Height of the knee's middle above the floor, share of stature (the model's)."""
LEG_GIRTHS = ((8.0, 212.1), (30.0, 350.1), (45.0, 352.6), (60.0, 572.0))
"""Height above the floor (cm, at a stature of 165) and mean girth (mm): ankle, calf, knee, thigh.
Heinz, Peterson, Johnson and Kerr, Journal of Statistics Education 11(2), 2003."""


def hang_of(body: Body, depth: float) -> float | None:
    """How high above the floor a place `depth` mm below the waist seam hangs, mm; None where the body is not known."""
    if body.height is None or body.waist_to_knee is None:
        return None
    return body.waist_to_knee + KNEE * body.height - depth


def stride_girth(height: float, hang: float) -> float:
    """Girth a stride needs, mm, for a stature and a hem `hang` mm above the floor; 0 above the leg."""
    leg, step = 0.53 * height, 0.413 * height
    if hang >= leg:
        return 0.0
    low = max(0.0, hang)
    return 2 * step * (leg - low) / leg + _leg_girth(low / height * 165)


def _leg_girth(height: float) -> float:
    (x0, y0), *rest = LEG_GIRTHS
    if height <= x0:
        return y0
    for x1, y1 in rest:
        if height <= x1:
            return y0 + (y1 - y0) * (height - x0) / (x1 - x0)
        x0, y0 = x1, y1
    return y0
