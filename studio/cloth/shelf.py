"""The shelf: named cloths to be used again, each a small file in a folder."""

from pathlib import Path

import msgspec

from studio.brief import Cloth
from studio.files import file_stem, put_file, read_file
from studio.trouble import Trouble

LARGEST = 100_000
"""Bytes of a cloth's file; one takes about 500."""
MOST = 500
"""Cloths looked at."""
SUFFIX = ".cloth"


def cloths(folder: Path) -> list[Cloth]:
    """The cloths on the shelf by name; a file that is no whole cloth is passed over, and stays where it is."""
    found = []
    try:
        paths = sorted(folder.glob(f"*{SUFFIX}"))[:MOST]
    except OSError:
        return []
    for path in paths:
        try:
            found.append(msgspec.json.decode(read_file(path, LARGEST), type=Cloth))
        except (Trouble, OSError, msgspec.DecodeError):
            continue
    return sorted(found, key=lambda c: c.name.casefold())


def put(folder: Path, cloth: Cloth) -> None:
    """Put a cloth on the shelf under its name, in the place of one of that name. What is held on it and how much of it
    is there belong to one skirt, and are left out. Raises OSError where nothing can be written.
    """
    kept = msgspec.structs.replace(cloth, held=(), on_hand=None)
    folder.mkdir(parents=True, exist_ok=True)
    target = _place(folder, cloth.name)
    put_file(target, msgspec.json.format(msgspec.json.encode(kept), indent=2) + b"\n", target)


def take_off(folder: Path, name: str) -> None:
    """Take a cloth off the shelf; nothing happens where there is none of that name."""
    _place(folder, name).unlink(missing_ok=True)


def _place(folder: Path, name: str) -> Path:
    return folder / f"{file_stem(name)}{SUFFIX}"
