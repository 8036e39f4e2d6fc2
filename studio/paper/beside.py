"""Writing page by page so that the old file stays until the new one is whole."""

import os
import secrets
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path


@contextmanager
def beside(path: Path) -> Iterator[Path]:
    """A new file next to `path` to write into. It takes the place of `path` at the end; if anything fails, it goes.

    Raises `OSError` at once where the folder is missing or cannot be written in. For what is written in one go
    there is `files.put_file`.
    """
    path = path.resolve()
    fresh = path.with_name(f".{path.stem[:40]}.{secrets.token_hex(4)}{path.suffix}")
    fresh.open("xb").close()
    try:
        yield fresh
        with fresh.open("rb+") as file:
            os.fsync(file.fileno())
        if path.exists():
            with suppress(OSError):  # some memory sticks know no permissions
                fresh.chmod(stat.S_IMODE(path.stat().st_mode))
        fresh.replace(path)
    finally:
        fresh.unlink(missing_ok=True)
