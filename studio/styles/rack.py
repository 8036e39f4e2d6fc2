"""The rack: every style there is, found by itself, so that adding one is adding a file."""

import pkgutil
from collections.abc import Mapping
from functools import lru_cache
from importlib import import_module
from typing import Any

from msgspec.structs import replace

from studio.brief import Brief, Declared, Skirt, declared
from studio.draft import Draft
from studio.draft.making import Making
from studio.units import Unit, usual_in

from .style import Edit, Style

FIRST = ("gathered", "pleated", "tiered", "circle", "gored", "straight")
"""What hangs in front; other styles follow by name."""


def _found() -> dict[str, Style[Any]]:
    here = __package__ or ""
    names = sorted(m.name for m in pkgutil.iter_modules(import_module(here).__path__))
    modules = [import_module(f"{here}.{name}") for name in names if name not in ("rack", "style")]
    found = {m.STYLE.name: m.STYLE for m in modules}
    return {n: found[n] for n in sorted(found, key=lambda n: FIRST.index(n) if n in FIRST else len(FIRST))}


RACK = _found()
"""Style by name."""
RECORDS: tuple[type[Skirt], ...] = tuple(s.record for s in RACK.values())
"""The record of every style, as files know them."""


def usual(unit: Unit = "cm", style: str = "gathered") -> Brief:
    """A brief with every number at its usual value, in round numbers of the maker's unit."""
    brief = Brief(skirt=RACK[style].record(), title=_title(style))
    if unit == "cm":
        return brief
    lengths = (d for d in declarations(brief).values() if d.kind == "length" and d.default is not None)
    return edit(brief, {d.path: usual_in(d.default, unit) for d in lengths})


def draft(brief: Brief) -> Draft:
    """The drafted skirt."""
    return RACK[style_of(brief)].draft(brief, brief.skirt)


def style_of(brief: Brief) -> str:
    """Name of the brief's style."""
    return str(brief.skirt.__struct_config__.tag)


@lru_cache(maxsize=32)
def _declarations(record: type[Skirt]) -> dict[str, Declared]:
    style = Declared(
        "skirt.style", "choice", "Style", "What kind of skirt it is.", "gathered", "gathered", options=tuple(RACK)
    )
    every = (style, *declared(record, "skirt"), *declared(Brief))
    return {d.path: d for d in every}


def declarations(brief: Brief) -> Mapping[str, Declared]:
    """Everything the maker decides for this style, by path, in the order of the form."""
    return _declarations(type(brief.skirt))


def value(brief: Brief, path: str) -> Any:
    """The value at a path; KeyError for a path that this style does not have."""
    if path not in declarations(brief):
        raise KeyError(path)
    if path == "skirt.style":
        return style_of(brief)
    place: Any = brief
    for name in path.split("."):
        place = getattr(place, name)
    return place


def applies(brief: Brief, one: Declared) -> bool:
    """Whether a declaration matters to this brief as it stands: its section is one the style uses, and what it
    hangs on applies and has one of the values it asks for.
    """
    section = one.path.partition(".")[0]
    if section in OPTIONAL and section not in uses(brief):
        return False
    known = declarations(brief)
    return all(applies(brief, known[path]) and str(value(brief, path)) in values for path, values in one.when)


OPTIONAL = frozenset({"gathers"})
"""Sections that only some styles use."""


def uses(brief: Brief) -> tuple[str, ...]:
    """The optional sections this skirt needs."""
    style = RACK[style_of(brief)]
    return style.uses(brief.skirt)


def making(brief: Brief, drafted: Draft) -> tuple[Making, ...]:
    """The steps of sewing that are this style's own."""
    return RACK[style_of(brief)].making(brief, brief.skirt, drafted)


def girth(brief: Brief, depth: float) -> float:
    """Girth of the skirt `depth` mm below the waist seam, pleats and gathers let out, mm."""
    return RACK[style_of(brief)].girth(brief, brief.skirt, depth)


def widened(brief: Brief, girth: float) -> Edit | None:
    """The edit that gives the hem at least this girth (mm), if one number of the style does."""
    return _typed(brief, RACK[style_of(brief)].widen(brief, brief.skirt, girth))


def cleared(brief: Brief, girth: float) -> Edit | None:
    """The edit that gives the skirt at least this girth (mm) where the hips are."""
    return _typed(brief, RACK[style_of(brief)].clear(brief, brief.skirt, girth))


def loosened(brief: Brief, most: float) -> Edit | None:
    """The edit after which no seam of the skirt is gathered more than `most` to 1."""
    return _typed(brief, RACK[style_of(brief)].loosen(brief, brief.skirt, most))


def _typed(brief: Brief, edit: Edit | None) -> Edit | None:
    """The edit, if the form itself would take every number in it."""
    known = declarations(brief)
    ranged = ("length", "ratio", "count", "share", "weight", "price")
    if edit is None or any(
        known[p].kind in ranged and v is not None and not known[p].least <= v <= known[p].most for p, v in edit.items()
    ):
        return None
    return edit


def edit(brief: Brief, changes: Mapping[str, Any]) -> Brief:
    """The brief with other values at some paths; KeyError for an unknown path.

    Values are taken as `brief.typed` reads them: in range, and of the declared kind.
    """
    for path, new in changes.items():
        if path == "skirt.style":
            brief = restyled(brief, new)
            continue
        if path not in declarations(brief):
            raise KeyError(path)
        head, _, tail = path.partition(".")
        brief = replace(brief, **{head: replace(getattr(brief, head), **{tail: new}) if tail else new})
    return brief


def restyled(brief: Brief, style: str, worn: Skirt | None = None) -> Brief:
    """The same brief in another style: what both styles have and the maker has set is kept; the rest is as it was when
    that style was last `worn`, or starts at its usual value. A title that only names the style names the new one.
    """
    record, now = RACK[style].record, brief.skirt
    if type(now) is record:
        return brief
    own = {f: getattr(worn, f) for f in record.__struct_fields__} if isinstance(worn, record) else {}
    usual = type(now)()
    shared = {
        f: getattr(now, f)
        for f in record.__struct_fields__
        if f in now.__struct_fields__ and getattr(now, f) != getattr(usual, f)
    }
    title = _title(style) if brief.title == _title(style_of(brief)) else brief.title
    return replace(brief, skirt=record(**(own | shared)), title=title)


def _title(style: str) -> str:
    return f"A {style} skirt"
