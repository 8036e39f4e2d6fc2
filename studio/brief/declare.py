"""How a number is declared: once, beside its name and type, with all that follows from it.

A record's field is annotated with one of the functions here. msgspec enforces the range when a file is read;
`declared` hands the same words and bounds to the form, the command line, the docs and the rules.
"""

from functools import lru_cache
from typing import Annotated, Any, Literal, TypeAlias, get_args, get_origin, get_type_hints

from msgspec import Meta, Struct
from msgspec.structs import fields

Kind: TypeAlias = Literal[
    "length", "ratio", "count", "share", "weight", "price", "choice", "switch", "name", "bands", "held", "picture"
]
When: TypeAlias = tuple[tuple[str, tuple[str, ...]], ...]
"""Paths, each with the values of it for which a field applies; all must hold."""


SEEN = r"^[^\x00-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]*\Z"
"""A name holds no control characters, and none that turn the line round."""


class Declared(Struct, frozen=True):
    """One thing the maker decides.

    `usual`, `least` and `most` are in mm for lengths, plain numbers otherwise (a share is 0 to 1). `default` is
    what a new brief holds: the usual value, or None where a field starts empty.
    """

    path: str
    kind: Kind
    words: str
    hint: str
    usual: Any
    default: Any
    least: float = 0.0
    most: float = 0.0
    step: float = 1.0
    unknown: bool = False  # may be left empty
    blank: str = ""  # what an empty field means
    options: tuple[str, ...] = ()
    when: When = ()


def _number(
    kind: Kind, words: str, least: float, most: float, hint: str, step: float, usual: float | None,
    blank: str, when: When,
) -> Meta:  # fmt: skip
    extra = {"kind": kind, "step": step, "usual": usual, "blank": blank, "when": when}
    return Meta(title=words, description=hint, ge=least, le=most, extra=extra)


def mm(
    words: str, least: float, most: float, hint: str, *, step: float = 1.0, usual: float | None = None,
    blank: str = "", when: When = (),
) -> Meta:  # fmt: skip
    """A length in mm. `usual` is for a field that may be left empty; `blank` says what empty means."""
    return _number("length", words, least, most, hint, step, usual, blank, when)


def times(words: str, least: float, most: float, hint: str, *, step: float = 0.05, when: When = ()) -> Meta:
    """Cloth to seam, as 2.20 times."""
    return _number("ratio", words, least, most, hint, step, None, "", when)


def whole(words: str, least: int, most: int, hint: str, *, blank: str = "", when: When = ()) -> Meta:
    """A whole number; `blank` says what nought means where nought lets the draft choose."""
    return _number("count", words, least, most, hint, 1, None, blank, when)


def per_cent(words: str, least: float, most: float, hint: str, *, when: When = ()) -> Meta:
    """Part of a whole, typed as per cent, kept as 0 to 1."""
    return _number("share", words, least, most, hint, 0.005, None, "", when)


def grams(words: str, least: float, most: float, hint: str, *, usual: float, blank: str) -> Meta:
    """Cloth weight in grams per square metre."""
    return _number("weight", words, least, most, hint, 5, usual, blank, ())


def money(words: str, least: float, most: float, hint: str, *, usual: float, blank: str) -> Meta:
    """The price of a metre of cloth, in the maker's own money."""
    return _number("price", words, least, most, hint, 0.5, usual, blank, ())


def bands_of(words: str, hint: str) -> Meta:
    """Bands of a print; a cloth has at most 12."""
    return Meta(title=words, description=hint, max_length=12, extra={"kind": "bands", "blank": "none"})


def held_of(words: str, hint: str) -> Meta:
    """Pieces held on the cloth by hand, at most 400."""
    return Meta(title=words, description=hint, max_length=400, extra={"kind": "held", "blank": "none"})


def picture_of(words: str, hint: str) -> Meta:
    """The name of a picture that the desktop keeps; nothing for none."""
    return Meta(title=words, description=hint, max_length=64, pattern=r"^[0-9a-z]*\Z", extra={"kind": "picture"})


def one_of(words: str, hint: str, *, when: When = ()) -> Meta:
    """One of a few words."""
    return Meta(title=words, description=hint, extra={"kind": "choice", "when": when})


def yes_no(words: str, hint: str, *, when: When = ()) -> Meta:
    """Yes or no."""
    return Meta(title=words, description=hint, extra={"kind": "switch", "when": when})


def short_text(words: str, hint: str) -> Meta:
    """A short name; 80 characters are enough for a title block."""
    return Meta(title=words, description=hint, max_length=80, pattern=SEEN, extra={"kind": "name"})


@lru_cache(maxsize=256)
def declared(record: type[Struct], path: str = "") -> tuple[Declared, ...]:
    """Every declaration in a record and the records inside it, in order, with its path."""
    found: list[Declared] = []
    usual = {f.name: f.default for f in fields(record)}
    for field, hint in get_type_hints(record, include_extras=True).items():
        here = f"{path}.{field}" if path else field
        core = next((t for t in get_args(hint) if get_origin(t) is Annotated), hint)
        inner, *notes = get_args(core) or (core,)
        meta = next((m for m in notes if isinstance(m, Meta)), None)
        if isinstance(inner, type) and issubclass(inner, Struct):
            found += declared(inner, here) if meta else ()
        elif meta is not None and meta.extra is not None:
            found.append(_one(here, inner, meta, meta.extra, usual[field], type(None) in get_args(hint)))
    return tuple(found)


def _one(path: str, inner: Any, meta: Meta, extra: dict[str, Any], default: Any, unknown: bool) -> Declared:
    kind: Kind = extra["kind"]
    usual = extra.get("usual")
    return Declared(
        path=path,
        kind=kind,
        words=meta.title or "",
        hint=meta.description or "",
        usual=default if usual is None else float(usual),
        default=default,
        least=float(meta.ge or 0),
        most=float(meta.le or 0),
        step=extra.get("step", 1),
        unknown=unknown,
        blank=extra.get("blank", ""),
        options=tuple(get_args(inner)) if kind == "choice" else (),
        when=extra.get("when", ()),
    )
