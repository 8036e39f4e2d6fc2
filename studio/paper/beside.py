"""Writing a file so that the old one stays until the new one is whole."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import mkstemp


@contextmanager
def beside(path: Path) -> Iterator[Path]:
    """A new file next to `path` to write into. It takes the place of `path` at the end; if anything fails, it goes.

    Raises `OSError` at once where the folder is missing or cannot be written in.
    """
    path = path.resolve()
    handle, name = mkstemp(prefix=f".{path.stem[:40]}-", suffix=path.suffix, dir=path.parent)
    os.close(handle)
    fresh = Path(name)
    try:
        yield fresh
        fresh.chmod(path.stat().st_mode if path.exists() else 0o666 & ~_umask())
        with fresh.open("rb+") as file:
            os.fsync(file.fileno())
        fresh.replace(path)
    finally:
        fresh.unlink(missing_ok=True)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
