"""The gored skirt: shaped panels that fit the hips and flare below them."""

import math

from msgspec.structs import replace

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.gores import Gores, cleared, girth, gores, hung
from studio.draft.hang import hang

from .style import Edit, Style


class Gored(Gores, frozen=True, tag="gored"):
    """Gores that fit the hips and flare to the hem."""


def draft(brief: Brief, skirt: Gored) -> Draft:
    """Gores from the opening round, on their band."""
    return hang(brief, hung(brief, skirt))


def widened(brief: Brief, skirt: Gored, girth: float) -> Edit | None:
    """The sweep that gives the hem a girth, to the centimetre up; none where the gores cannot flare so far."""
    edit = {"skirt.sweep": math.ceil(girth / 10 - 1e-9) * 10.0}
    return edit if gores(brief, replace(skirt, sweep=edit["skirt.sweep"])).hem >= girth - 1e-9 else None


ICON = "M6.5 3h7v2h-7z M6.5 5c-1 3-1 4-3.5 12h14c-2.5-8-2.5-9-3.5-12 M8.6 5c-.4 4-.4 5-1.4 12 M11.4 5c.4 4 .4 5 1.4 12"

STYLE = Style(
    Gored, draft, girth, icon=ICON, widen=widened, clear=cleared, parts="skirt.gores",
    takes=("skirt.sweep", "skirt.gores"),
)  # fmt: skip
