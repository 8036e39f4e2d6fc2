"""Skirt files: a brief as indented JSON, read strictly and written so that nothing is ever lost.

The first keys are `format` and `version`; then the brief, lengths in mm. A file is written beside, synced and put in
place at once; the version before stays beside it with a ~ at the end of its name.
"""

import errno
import os
import re
import secrets
import stat
from functools import lru_cache
from pathlib import Path
from typing import Any, Final

import msgspec
from msgspec import Struct

from ..trouble import Trouble, shown
from ..units import spell
from ..words import Value, phrase, tr
from .declare import Declared, declared
from .records import Brief, Skirt

FORMAT: Final = "skirtwright"
VERSION: Final = 1
LARGEST: Final = 1_000_000  # bytes; a brief takes about 1,500


class Damaged(Trouble, ValueError):
    """What was read is no skirt, or not a whole one; says where the fault is."""


class Kept(Trouble):
    """Nothing was saved, and what was there before is there still; says why."""


class _Seal(Struct):
    format: str = ""
    version: int = 0


class _Tag(Struct):
    style: str = ""


class _Sketch(Struct):
    skirt: _Tag = _Tag()


def dump(brief: Brief) -> bytes:
    """The brief as a file's content, UTF-8."""
    content = {"format": FORMAT, "version": VERSION, **msgspec.to_builtins(brief)}
    return msgspec.json.format(msgspec.json.encode(content), indent=2) + b"\n"


def load(raw: bytes, styles: tuple[type[Skirt], ...]) -> Brief:
    """The brief in a file's content; its skirt is one of `styles`. Raises `Damaged` with the path of the fault."""
    return _read(raw, {str(style.__struct_config__.tag): style for style in styles})


def open_file(path: Path, styles: tuple[type[Skirt], ...]) -> Brief:
    """The brief in a file. Raises `Damaged` for a fault in it, `Trouble` when it cannot be reached."""
    try:
        return load(_content(path), styles)
    except (OSError, ValueError) as fault:
        if isinstance(fault, Trouble):
            raise
        raise Trouble(_says(_reason(fault, "{name:word} cannot be read here."), name=_name(path))) from fault


def save(path: Path, brief: Brief) -> None:
    """Write the brief to a file; the version before is kept beside it, with a ~ after its name.

    What is written has been read back first. Raises `Kept` with the reason when it cannot be, or when a file of that
    name is there that is not a whole skirt; then nothing has changed.
    """
    name = _name(path)
    try:
        raw = dump(brief)
        if load(raw, (type(brief.skirt),)) != brief:
            raise Damaged(tr("it does not read back as it is."))
    except (Trouble, UnicodeError) as fault:
        raise Kept(_says("{name:word} was not saved: {why:word}", name=name, why=str(fault))) from fault
    try:
        target = path.resolve()
        before = _before(target)
        if before == raw:
            return
        if before is not None:
            _put(target.with_name(target.name + "~"), before, target)
        _put(target, raw, target)
    except (OSError, ValueError, RuntimeError) as fault:
        raise Kept(
            _says(_reason(fault, "{name:word} cannot be written here; save it elsewhere."), name=name)
        ) from fault


def _before(target: Path) -> bytes | None:
    """What a save would replace: None for nothing yet, refused unless it is a whole skirt that may be changed."""
    if not target.exists():
        return None
    try:
        raw = _content(target)
        _read(raw, None)
    except Damaged as fault:
        says = "{why:word} It was left as it is: save under another name."
        raise Kept(_says(says, why=str(fault))) from fault
    if not os.access(target, os.W_OK):
        raise Kept(_says("{name:word} is write-protected: save under another name.", name=_name(target)))
    return raw


def _put(target: Path, raw: bytes, like: Path) -> None:
    """Write beside, sync, then replace: at every moment the whole old file or the whole new one is there."""
    beside = target.with_name(f".{target.name}.{secrets.token_hex(4)}")
    try:
        with beside.open("xb") as file:
            file.write(raw)
            file.flush()
            os.fsync(file.fileno())
        if like.exists():
            beside.chmod(stat.S_IMODE(like.stat().st_mode))
        os.replace(beside, target)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise


def _content(path: Path) -> bytes:
    """A file's bytes; refuses at once what is no plain file, or too large to be a skirt."""
    seen = path.stat()
    if not stat.S_ISREG(seen.st_mode):
        what = "{name:word} is a folder, not a skirt file." if path.is_dir() else "{name:word} is not a file."
        raise Damaged(_says(what, name=_name(path)))
    with path.open("rb") as file:
        raw = file.read(LARGEST + 1)
    if len(raw) > LARGEST:
        raise Damaged(_says("{name:word} is too large to be a skirt file.", name=_name(path)))
    return raw


def _read(raw: bytes, styles: dict[str, type[Skirt]] | None) -> Brief:
    """The brief; with no styles given, its skirt is any skirt, unread."""
    _refuse_strangers(raw)
    style: type[Skirt] | None = None
    try:
        seal = msgspec.json.decode(raw, type=_Seal)
        if seal.format != FORMAT:
            raise Damaged(tr("This is not a skirt file."))
        if seal.version > VERSION:
            says = "This skirt was saved by a newer Skirtwright (version {version:count}); update to open it."
            raise Damaged(_says(says, version=seal.version))
        if seal.version < 1:
            raise Damaged(_says("version: there never was a version {version:count}.", version=seal.version))
        if styles is not None:
            tag = msgspec.json.decode(raw, type=_Sketch).skirt.style
            if tag not in styles:
                raise Damaged(_says("skirt.style: there is no style “{style:word}” here.", style=shown(tag)))
            style = styles[tag]
        sheet = msgspec.json.decode(raw, type=_sheet(style))
    except msgspec.ValidationError as fault:
        raise Damaged(_fault(str(fault), style)) from fault
    except (msgspec.DecodeError, UnicodeError) as fault:
        raise Damaged(_broken(str(fault))) from fault
    except RecursionError as fault:
        raise Damaged(tr("This skirt file is damaged: one thing in another without end.")) from fault
    return Brief(**{field: getattr(sheet, field) for field in Brief.__struct_fields__})


@lru_cache(maxsize=32)
def _sheet(style: type[Skirt] | None) -> type[Struct]:
    """A brief as it stands in a file, with a skirt of one style."""
    seal: list[Any] = [("skirt", style or dict[str, Any]), ("format", str), ("version", int)]
    return msgspec.defstruct("Sheet", seal, bases=(Brief,), kw_only=True, frozen=True)


def _refuse_strangers(raw: bytes) -> None:
    if len(raw) > LARGEST:
        raise Damaged(tr("This is too large to be a skirt file."))
    if not raw.strip():
        raise Damaged(tr("This file is empty."))
    if not raw.lstrip().startswith(b"{"):
        raise Damaged(tr("This is not a skirt file."))


def _broken(fault: str) -> str:
    at = re.search(r"byte (\d+)", fault)
    if at:
        return _says("This skirt file is damaged: it makes no sense after byte {at:count}.", at=int(at[1]))
    if "truncated" in fault:
        return tr("This skirt file is cut short.")
    return tr("This skirt file is damaged: some of its letters are not UTF-8.")


def _fault(fault: str, style: type[Skirt] | None) -> str:
    """msgspec's words for what is wrong and where, in the maker's."""
    what, path = re.fullmatch(r"(.*?)(?: - at `\$\.?([^`]*)`)?", fault, re.DOTALL).groups(default="")  # type: ignore[union-attr]
    if field := re.search(r"(unknown|missing required) field `(.*)`", what, re.DOTALL):
        here = shown(f"{path}.{field[2]}" if path else field[2], 60)
        if field[1] == "unknown":
            return _says("{here:word}: not known to this Skirtwright.", here=here)
        return _says("{here:word}: it is missing.", here=here)
    known = {d.path: d for d in declared(Brief) + (declared(style, "skirt") if style else ())}
    if path in known:
        return f"{path}: {_wants(known[path])}"
    return _says("{path:word}: what stands there does not belong there.", path=shown(path, 60) or FORMAT)


def _wants(one: Declared) -> str:
    """What a file may hold for one declaration."""
    field = tr(one.words)
    match one.kind:
        case "name":
            return _says("{field:word} is a text of at most 80 characters.", field=field)
        case "switch":
            return _says("{field:word} is true or false.", field=field)
        case "choice":
            return _says("{field:word} is one of: {options:word}.", field=field, options=", ".join(one.options))
        case _:
            says = "{field:word} is a number from {least:word} to {most:word}{unit:word}."
            unit = " mm" if one.kind == "length" else ""
            return _says(says, field=field, least=f"{one.least:g}", most=f"{one.most:g}", unit=unit)


def _reason(fault: Exception, otherwise: str) -> str:
    """Why the machine refused, as a sentence with a way out."""
    match fault.errno if isinstance(fault, OSError) else None:
        case errno.ENOENT:
            return "{name:word} is not there; look whether its folder was moved or renamed."
        case errno.ENOSPC | errno.EDQUOT:
            return "{name:word} was not saved: the disk is full. Make room, or save it elsewhere."
        case errno.EROFS | errno.EACCES | errno.EPERM:
            return "{name:word} is out of bounds: its folder does not let you in. Choose another."
        case errno.ENAMETOOLONG:
            return "{name:word} is too long a name; choose a shorter one."
        case _:
            return otherwise


def _name(path: Path) -> str:
    return f"“{shown(path.name or str(path), 60)}”"


def _says(text: str, **values: Value) -> str:
    return spell(phrase(text, **values), "cm")
