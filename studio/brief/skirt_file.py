"""Skirt files: a brief as indented JSON, read strictly and written so that nothing is ever lost.

The first keys are `format` and `version`; then the brief, lengths in mm. A save replaces the file at once, whole,
and keeps the version before beside it with a ~ at the end of its name.
"""

import os
from functools import lru_cache
from pathlib import Path
from typing import Any, Final

import msgspec
from msgspec import Struct

from ..files import file_name, put_file, read_file, refusal
from ..trouble import Trouble, shown
from ..units import spell
from ..words import phrase, tr
from .brief import Brief
from .fault import broken, misfit
from .records import Skirt

FORMAT: Final = "skirtwright"
VERSION: Final = 1
LARGEST: Final = 1_000_000  # bytes; a brief takes about 1,500


class Damaged(Trouble, ValueError):
    """What was read is no skirt, or not a whole one; says where the fault is."""


class Kept(Trouble):
    """Nothing was saved, and what was there before is there still; says why."""


class _Seal(Struct, frozen=True):
    format: str = ""
    version: int = 0


class _Tag(Struct, frozen=True):
    style: str


class _Sketch(Struct, frozen=True):
    skirt: _Tag


def dump(brief: Brief) -> bytes:
    """The brief as a file's content, UTF-8."""
    content = {"format": FORMAT, "version": VERSION, **msgspec.to_builtins(brief)}
    return msgspec.json.format(msgspec.json.encode(content), indent=2) + b"\n"


def load(raw: bytes, styles: tuple[type[Skirt], ...]) -> Brief:
    """The brief in a file's content; its skirt is one of `styles`. Raises `Damaged` with the path of the fault."""
    return _read(raw, {str(style.__struct_config__.tag): style for style in styles})


def open_file(path: Path, styles: tuple[type[Skirt], ...]) -> Brief:
    """The brief in a file. Raises `Damaged` for a fault in it, another `Trouble` when it cannot be reached."""
    return load(read_file(path, LARGEST), styles)


def save(path: Path, brief: Brief) -> None:
    """Write the brief to a file; the version before is kept beside it, with a ~ after its name.

    What is written has been read back first. Raises `Kept` with the reason when it cannot be written, or when what
    has that name is not a whole skirt; then the file is as it was.
    """
    name = file_name(path)
    raw = _proven(name, brief)
    try:
        target = path.resolve()
        before = _before(target)
        if before == raw:
            return
        if before is not None:
            put_file(target.with_name(f"{target.name}~"), before, target)
        put_file(target, raw, target)
    except (OSError, ValueError, RuntimeError) as fault:
        elsewhere = phrase("{name:word} cannot be written here; save it elsewhere.", name=name)
        raise Kept(refusal(fault, elsewhere)) from fault


def _proven(name: str, brief: Brief) -> bytes:
    """The content, once it has been read back as the same brief."""
    try:
        raw = dump(brief)
        if load(raw, (type(brief.skirt),)) == brief:
            return raw
        why = tr("it would not read back the same.")
    except Damaged as fault:
        why = str(fault)
    except UnicodeError:
        why = tr("its names hold letters that no file can keep.")
    raise Kept(spell(phrase("{name:word} was not saved: {why:word}", name=name, why=why), "cm"))


def _before(target: Path) -> bytes | None:
    """What a save would replace: None for nothing yet; refused unless it is a whole skirt that may be changed."""
    if not target.exists():
        return None
    try:
        raw = read_file(target, LARGEST)
        _read(raw, None)
    except Trouble as fault:
        says = phrase("{why:word} It stays as it is: save under another name.", why=str(fault))
        raise Kept(spell(says, "cm")) from fault
    if not os.access(target, os.W_OK):
        says = phrase("{name:word} is write-protected: save under another name.", name=file_name(target))
        raise Kept(spell(says, "cm"))
    return raw


def _read(raw: bytes, styles: dict[str, type[Skirt]] | None) -> Brief:
    """The brief; where no styles are given, any skirt will do, and its own numbers are not looked at."""
    if len(raw) > LARGEST:
        raise Damaged(tr("This is too large to be a skirt file."))
    if not raw.strip():
        raise Damaged(tr("This file is empty."))
    if not raw.lstrip().startswith(b"{"):
        raise Damaged(tr("This is not a skirt file."))
    style: type[Skirt] | None = None
    try:
        _break_seal(msgspec.json.decode(raw, type=_Seal))
        if styles is not None:
            style = _style(msgspec.json.decode(raw, type=_Sketch).skirt.style, styles)
        sheet = msgspec.json.decode(raw, type=_sheet(style))
    except msgspec.ValidationError as fault:
        raise Damaged(misfit(str(fault), style)) from fault
    except msgspec.DecodeError as fault:
        raise Damaged(broken(str(fault), raw)) from fault
    except UnicodeError as fault:
        raise Damaged(tr("This skirt file is damaged: some of its letters cannot be read.")) from fault
    except RecursionError as fault:
        raise Damaged(tr("This skirt file is damaged: it is nested without end.")) from fault
    return Brief(**{field: getattr(sheet, field) for field in Brief.__struct_fields__})


def _break_seal(seal: _Seal) -> None:
    if seal.format != FORMAT:
        raise Damaged(tr("This is not a skirt file."))
    if seal.version > VERSION:
        text = "This skirt was saved by a newer Skirtwright (version {version:count}); update to open it."
        raise Damaged(spell(phrase(text, version=seal.version), "cm"))
    if seal.version < VERSION:
        raise Damaged(spell(phrase("version: there is no version {version:count}.", version=seal.version), "cm"))


def _style(tag: str, styles: dict[str, type[Skirt]]) -> type[Skirt]:
    if tag in styles:
        return styles[tag]
    raise Damaged(spell(phrase("skirt.style: there is no style “{style:word}” here.", style=shown(tag)), "cm"))


@lru_cache(maxsize=32)
def _sheet(style: type[Skirt] | None) -> type[Any]:
    """A brief as it stands in a file, with a skirt of one style."""
    seal: list[Any] = [("skirt", style or dict[str, Any]), ("format", str), ("version", int)]
    return msgspec.defstruct("Sheet", seal, bases=(Brief,), kw_only=True, frozen=True)
