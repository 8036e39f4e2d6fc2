"""The rack: every style there is, found by itself, so that adding one is adding a file."""

import pkgutil
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from importlib import import_module
from typing import Any, Literal

from msgspec.structs import replace

from studio.brief import Brief, Declared, Skirt, declared
from studio.brief.typed import is_usual
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
    return its_style(brief).draft(brief, brief.skirt)


def style_of(brief: Brief) -> str:
    """Name of the brief's style."""
    return str(brief.skirt.__struct_config__.tag)


def its_style(brief: Brief) -> Style[Any]:
    """What the brief's style offers."""
    return RACK[style_of(brief)]


def parted(brief: Brief, count: int) -> Edit | None:
    """The edit that parts the skirt into so many panels; None where no number of the style does."""
    path = its_style(brief).parts
    return _typed(brief, {path: count}) if path else None


def by_cloth(brief: Brief) -> Edit:
    """The edit that leaves the number of panels to the cloth; nothing where it is, or cannot be."""
    path = its_style(brief).parts
    set_by_hand = path and declarations(brief)[path].blank and value(brief, path)
    return {path: 0} if set_by_hand else {}


def laid(brief: Brief, way: Literal["along", "across"]) -> Edit | None:
    """The edit that cuts the panels along or across the cloth, as many as it asks; None where they are cut so, or the
    style has no such choice.
    """
    path = its_style(brief).lies
    return {path: way, **by_cloth(brief)} if path and value(brief, path) != way else None


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
    return its_style(brief).uses(brief.skirt)


def making(brief: Brief, drafted: Draft) -> tuple[Making, ...]:
    """The steps of sewing that are this style's own."""
    return its_style(brief).making(brief, brief.skirt, drafted)


def girth(brief: Brief, depth: float) -> float:
    """Girth of the skirt `depth` mm below the waist seam, pleats and gathers let out, mm."""
    return its_style(brief).girth(brief, brief.skirt, depth)


def widened(brief: Brief, girth: float) -> Edit | None:
    """The edit that gives the hem at least this girth (mm), if one number of the style does."""
    return _typed(brief, its_style(brief).widen(brief, brief.skirt, girth))


def cleared(brief: Brief, girth: float) -> Edit | None:
    """The edit that gives the skirt at least this girth (mm) where the hips are."""
    return _typed(brief, its_style(brief).clear(brief, brief.skirt, girth))


def loosened(brief: Brief, most: float) -> Edit | None:
    """The edit after which no seam of the skirt is gathered more than `most` to 1."""
    return _typed(brief, its_style(brief).loosen(brief, brief.skirt, most))


def _typed(brief: Brief, edit: Edit | None) -> Edit | None:
    """The edit, if the form itself would take every number in it."""
    known = declarations(brief)
    return edit if edit is not None and all(_takes(known[p], v) for p, v in edit.items()) else None


def _takes(one: Declared, value: Any) -> bool:
    """Whether a number lies in the range declared for it."""
    ranged = one.kind in ("length", "ratio", "count", "share", "weight", "price")
    return not ranged or value is None or one.least <= value <= one.most


def edit(brief: Brief, changes: Mapping[str, Any], unit: Unit = "cm") -> Brief:
    """The brief with other values at some paths; KeyError for an unknown path.

    Values are taken as `brief.typed` reads them: in range, and of the declared kind. Another style starts in round
    numbers of the unit.
    """
    for path, new in changes.items():
        if path == "skirt.style":
            brief = restyled(brief, new, unit)
            continue
        if path not in declarations(brief):
            raise KeyError(path)
        head, _, tail = path.partition(".")
        brief = replace(brief, **{head: replace(getattr(brief, head), **{tail: new}) if tail else new})
    return brief


def restyled(brief: Brief, style: str, unit: Unit = "cm", worn: Iterable[Skirt] = ()) -> Brief:
    """The same brief in another style: what the maker has set is as it was set last, in this style or in one `worn`
    before (the latest first); the rest is as it was when that style was worn, or starts at its usual value. What the
    style cannot take waits for one that can. A title that only names the style names the new one.
    """
    record, now = RACK[style].record, brief.skirt
    if type(now) is record:
        return brief
    skirts = [now, *(skirt for skirt in worn if type(skirt) is not type(now))]
    own = next((skirt for skirt in skirts if type(skirt) is record), usual(unit, style).skirt)
    last = {f: value for f in record.__struct_fields__ for value in _last_set(skirts, f)}
    kept = {f: value for f, value in last.items() if _takes(_declared(own, f), value)}
    title = _title(style) if brief.title == _title(style_of(brief)) else brief.title
    return replace(brief, skirt=replace(own, **kept), title=title)


def _last_set(skirts: Sequence[Skirt], field: str) -> tuple[Any, ...]:
    """The value to which a field was set last, if it was; back to usual is a value too, where one set before had gone
    on into that skirt.
    """
    having = [skirt for skirt in skirts if field in skirt.__struct_fields__]
    for k, skirt in enumerate(having):
        one, value = _declared(skirt, field), getattr(skirt, field)
        before = (getattr(b, field) for b in having[k + 1 :] if _has_set(b, field))
        if _has_set(skirt, field) or any(_takes(one, v) for v in before):
            return (value,)
    return ()


def _has_set(skirt: Skirt, field: str) -> bool:
    return not is_usual(_declared(skirt, field), getattr(skirt, field))


def _declared(skirt: Skirt, field: str) -> Declared:
    return _declarations(type(skirt))[f"skirt.{field}"]


def _title(style: str) -> str:
    return f"A {style} skirt"
