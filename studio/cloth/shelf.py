"""The shelf: named cloths to be used again, each a small file in a folder."""

import itertools
from collections.abc import Iterable, Iterator
from pathlib import Path

import msgspec

from studio.brief import Cloth
from studio.files import file_stem, put_file, read_file
from studio.trouble import Trouble
from studio.units import spell
from studio.words import phrase

LARGEST = 100_000
"""Bytes of a cloth's file; one takes about 500."""
MOST = 500
"""Cloths on one shelf."""
SUFFIX = ".cloth"


def cloths(folder: Path) -> list[Cloth]:
    """The cloths on the shelf by name; a file that is no whole cloth is passed over, and stays where it is."""
    return sorted((cloth for _, cloth in _kept(_files(folder))), key=lambda c: c.name.casefold())


def put(folder: Path, cloth: Cloth) -> None:
    """Put a cloth on the shelf, in the place of one of the same name and of no other. What is held on it and how much
    of it is there belong to one skirt, and are left out. Raises `Trouble` where the shelf is full, OSError where
    nothing can be written.
    """
    kept = msgspec.structs.replace(cloth, held=(), on_hand=None)
    folder.mkdir(parents=True, exist_ok=True)
    there = _files(folder)
    target = next((path for path, one in _kept(there) if one.name == cloth.name), None)
    if target is None and len(there) >= MOST:
        text = "The shelf is full: it holds {n:count} cloths. Take one off first."
        raise Trouble(spell(phrase(text, n=len(there)), "cm"))
    target = target or _free(folder, cloth.name)
    put_file(target, msgspec.json.format(msgspec.json.encode(kept), indent=2) + b"\n", target)


def take_off(folder: Path, name: str) -> None:
    """Take a cloth off the shelf; nothing happens where there is none of that name. Raises OSError where it cannot."""
    for path, cloth in _kept(_files(folder)):
        if cloth.name == name:
            path.unlink(missing_ok=True)


def _files(folder: Path) -> list[Path]:
    try:
        return sorted(folder.glob(f"*{SUFFIX}"))
    except OSError:
        return []


def _kept(paths: Iterable[Path]) -> Iterator[tuple[Path, Cloth]]:
    """As many whole cloths as a shelf may hold, each with its file."""
    read = (cloth for path in paths if (cloth := _read(path)) is not None)
    return itertools.islice(read, MOST)


def _read(path: Path) -> tuple[Path, Cloth] | None:
    try:
        return path, msgspec.json.decode(read_file(path, LARGEST), type=Cloth)
    except (Trouble, OSError, msgspec.DecodeError, UnicodeError):
        return None


def _free(folder: Path, name: str) -> Path:
    """A file of that name that is not there yet."""
    stem = file_stem(name)
    names = (stem, *(f"{stem}-{k}" for k in range(2, 2 + MOST)))
    return next(path for n in names if not (path := folder / f"{n}{SUFFIX}").exists())
