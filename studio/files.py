"""Reading and writing files so that nothing hangs, nothing is half-written and nothing is lost."""

import errno
import os
import secrets
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from .trouble import Trouble, shown
from .units import spell
from .words import Phrase, phrase, tr


def read_file(path: Path, largest: int) -> bytes:
    """A file's bytes. Raises `Trouble` at once for what is no plain file or has more than `largest` bytes."""
    name = file_name(path)
    try:
        kind = path.stat().st_mode
        if stat.S_ISDIR(kind):
            raise Trouble(spell(phrase("{name:word} is a folder, not a file.", name=name), "cm"))
        if not stat.S_ISREG(kind):
            raise Trouble(spell(phrase("{name:word} is not a file that can be opened.", name=name), "cm"))
        with path.open("rb") as file:
            raw = file.read(largest + 1)
    except (OSError, ValueError) as fault:
        raise Trouble(refusal(fault, phrase("{name:word} cannot be read here.", name=name))) from fault
    if len(raw) > largest:
        raise Trouble(spell(phrase("{name:word} is too large to be what it says.", name=name), "cm"))
    return raw


def put_file(path: Path, raw: bytes, like: Path | None = None) -> None:
    """Write a file in one go, as `beside` does; it gets the permissions of `like`, where that is there."""
    with beside(path, like) as fresh, fresh.open("wb") as file:
        file.write(raw)


@contextmanager
def beside(path: Path, like: Path | None = None) -> Iterator[Path]:
    """A new file next to `path` to write into, which is synced and takes the place of `path` at the end.

    At every moment the whole old file or the whole new one is there. It gets the permissions of `like`, or of the
    file it replaces. Raises `OSError`, at once where the folder is missing or cannot be written in, and then leaves
    all as it was.
    """
    path = path.resolve()
    fresh = path.with_name(f".{path.stem[:40]}.{secrets.token_hex(4)}{path.suffix}")
    fresh.open("xb").close()
    try:
        yield fresh
        with fresh.open("rb+") as file:
            os.fsync(file.fileno())
        if (like := like or path).exists():
            with suppress(OSError):  # some memory sticks know no permissions
                fresh.chmod(stat.S_IMODE(like.stat().st_mode))
        os.replace(fresh, path)
    finally:
        fresh.unlink(missing_ok=True)


def refusal(fault: Exception, otherwise: Phrase) -> str:
    """Why the computer refused, as a sentence with a way out; `otherwise` holds the file's `name`."""
    match fault.errno if isinstance(fault, OSError) else None:
        case errno.ENOENT:
            says = phrase("{name:word} cannot be found; its name or its folder may have changed.")
        case errno.ENOSPC | errno.EDQUOT:
            says = phrase("The disk is full, so {name:word} was not saved; make room or save it elsewhere.")
        case errno.EROFS | errno.EACCES | errno.EPERM:
            says = phrase("{name:word} is out of bounds: the computer gives no permission; choose another folder.")
        case errno.EEXIST | errno.ENOTDIR:
            says = phrase("{name:word} is not a folder; choose another.")
        case errno.ENAMETOOLONG:
            says = phrase("{name:word} is too long a name; choose a shorter one.")
        case _:
            says = otherwise
    return spell(Phrase(says.text, otherwise.values), "cm")


def file_name(path: Path) -> str:
    """A file's name as it stands in a sentence."""
    return f"“{shown(path.name or str(path), 60)}”"


def file_stem(title: str) -> str:
    """A file name from a skirt's title: its letters and figures, as every system takes them."""
    plain = "".join(c if c.isalnum() else "-" for c in title.replace("’", "").replace("'", "").lower())
    return "-".join(part for part in plain.split("-") if part)[:40] or tr("skirt")
