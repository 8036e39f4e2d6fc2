"""What can hurt a hand or a wearer, in one line each, to stand beside the step where it belongs.

The project names the danger and defers: to the tool's manual, to local rules and law, to licensed practice. Numbers of
standards are from memory of their titles; what they ask for is theirs to say.
"""

from typing import Final

from studio.brief import Brief
from studio.draft import Draft
from studio.words import Phrase, phrase

CAUTIONS: Final[dict[str, Phrase]] = {
    "iron": phrase("Lift the iron by its handle and stand it upright; steam burns before you see it."),
    "shears": phrase("Close shears before you lay them down; hand them over handle first."),
    "blade": phrase("Lock a rotary blade whenever you put it down; cut away from your hand, on a mat."),
    "needle": phrase("Switch off to thread or change the needle; fingers beside the foot, never before it."),
    "wheel": phrase("Turn the wheel by hand across metal or thick seams: a broken needle flies."),
    "pins": phrase("Take each pin out before the foot reaches it; pins go in the cushion."),
    "point": phrase("Work a buttonhole’s slit from both ends, a pin across each, away from your hand."),
    "small parts": phrase(
        "A child’s skirt: pull hard at every button, hook and snap. Under three years use none (16 CFR 1501)."
    ),
    "cords": phrase("A child’s skirt: no free cords at waist or hem; EN 14682 and ASTM F1816 say how long."),
    "long hem": phrase("A long or full hem trips on stairs and catches in bicycles and escalators: lift it."),
    "flame": phrase("Keep a full hem from flame; how fast cloth may burn, 16 CFR 1610 says."),
    "general": phrase(
        "General cautions only: your tool’s manual, local rules and law, and licensed practice come first."
    ),
}
"""Every caution by name."""

ALWAYS: Final = (
    phrase("Switch off to thread or to change a needle; keep fingers beside the foot, never before it."),
    phrase("Pins go in the cushion, never in the mouth."),
    phrase("Close shears and lock the rotary blade before you lay them down."),
    phrase("Stand the iron up when you leave it; steam burns before you see it."),
    phrase("Children sew with a grown-up beside them."),
    phrase("On children’s clothes leave out small parts and free cords: see 16 CFR 1501, EN 14682 and ASTM F1816."),
    phrase("Keep long and full hems from stairs, wheels, escalators and flame; for burning see 16 CFR 1610."),
    phrase("These are general cautions: follow your tool’s own manual, local rules and law."),
    phrase("Leave what needs a licence to licensed practice; who sells must meet the law of that market."),
)
"""What is said once for the whole work."""

CHILD_HEIGHT: Final = 1450.0
"""Up to this height (mm) the wearer is taken for a child: the shortest of 260 grown women measured 147.2 cm (Heinz et
al., Journal of Statistics Education 11(2), 2003)."""
CHILD_WAIST: Final = 560.0
"""Where the height is not known, up to this waist (mm): the smallest of the same women measured 57.9 cm."""
FULL_SWEEP: Final = 2000.0
"""From this sweep (mm) a hem swings into things (common practice, no source)."""
LONG: Final = 750.0
"""From this length (mm) a hem is trodden on, on stairs: about mid-calf (common practice, no source)."""


def for_a_child(brief: Brief) -> bool:
    """Whether the body is that small, by height or, where it is not known, by waist."""
    if brief.body.height is not None:
        return brief.body.height <= CHILD_HEIGHT
    return brief.body.waist <= CHILD_WAIST


def childs(brief: Brief, *names: str) -> tuple[str, ...]:
    """Cautions that belong to children's clothes."""
    return names if for_a_child(brief) else ()


def hem_cautions(brief: Brief, draft: Draft) -> tuple[str, ...]:
    """What a long or full hem can meet."""
    full = draft.has("hem_sweep") and draft.fact("hem_sweep") >= FULL_SWEEP
    long = brief.finished_length >= LONG
    return (*(("long hem",) if full or long else ()), *(("flame",) if full else ()))
