"""Saving a skirt: whole or not at all, and nothing that was there is lost."""

import errno
import io
import os
import stat
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace
from skirts import BRIEF, NEXT, RAW, STYLES, Pencil, changed, picture

from studio.brief import Body, Brief, skirt_file
from studio.brief.skirt_file import Kept, dump, open_file, save
from studio.trouble import Trouble


def beside(folder: Path) -> list[str]:
    """Every name in the folder, hidden ones too."""
    return sorted(os.listdir(folder))


@pytest.fixture
def path(tmp_path: Path) -> Iterator[Path]:
    """A place for a skirt; whatever happens, nothing half-written is left beside it."""
    yield tmp_path / "Zoë.skirt"
    assert set(beside(tmp_path)) <= {"Zoë.skirt", "Zoë.skirt~"}


def test_save_and_open(path: Path) -> None:
    """A saved skirt opens as it was."""
    save(path, BRIEF)
    assert BRIEF == open_file(path, STYLES)
    assert ["Zoë.skirt"] == beside(path.parent)


def test_the_version_before_is_kept(path: Path) -> None:
    """Saving again keeps the version before beside the new one; saving the same once more does not lose it."""
    save(path, BRIEF)
    save(path, NEXT)
    save(path, NEXT)
    assert NEXT == open_file(path, STYLES)
    assert BRIEF == open_file(path.with_name("Zoë.skirt~"), STYLES)
    assert ["Zoë.skirt", "Zoë.skirt~"] == beside(path.parent)


def test_a_skirt_of_another_style_may_be_saved_over(path: Path) -> None:
    """One may change the style of a skirt and save it under the same name."""
    save(path, Brief(skirt=Pencil()))
    save(path, BRIEF)
    assert BRIEF == open_file(path, STYLES)


@pytest.mark.parametrize("there", [b"My shopping list", b"", RAW[:400], picture(), changed("version", 2)])
def test_what_cannot_be_read_is_never_overwritten(path: Path, there: bytes) -> None:
    """A file that is not a whole skirt, or a newer one, stays as it is, and the maker is told so."""
    path.write_bytes(there)
    with pytest.raises(Kept, match="It stays as it is: save under another name"):
        save(path, BRIEF)
    assert there == path.read_bytes()


@pytest.mark.parametrize("fails", ["fsync", "replace"])
@pytest.mark.parametrize(
    ("number", "says"),
    [
        (errno.ENOSPC, "The disk is full, so “Zoë.skirt” was not saved; make room or save it elsewhere."),
        (errno.EROFS, "“Zoë.skirt” is out of bounds: the computer gives no permission; choose another folder."),
        (errno.EIO, "“Zoë.skirt” cannot be written here; save it elsewhere."),
    ],
)
def test_a_save_that_fails_changes_nothing(
    path: Path, monkeypatch: pytest.MonkeyPatch, fails: str, number: int, says: str
) -> None:
    """On a full disk or a broken one, the skirt saved before is whole, and nothing half-written is left."""
    save(path, BRIEF)

    def fail(*_: object) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, fails, fail)
    with pytest.raises(Kept) as fault:
        save(path, NEXT)
    assert says == str(fault.value)
    assert RAW == path.read_bytes()


def test_a_disk_that_fills_while_writing(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When the disk takes half of the file and no more, the skirt saved before is whole."""
    save(path, BRIEF)

    class Full(io.FileIO):
        def write(self, raw: Any, /) -> int:
            super().write(bytes(raw)[:100])
            raise OSError(errno.ENOSPC, "No space left on device")

    whole = Path.open
    monkeypatch.setattr(Path, "open", lambda self, mode: Full(self, mode) if "w" in mode else whole(self, mode))
    with pytest.raises(Kept, match="The disk is full"):
        save(path, NEXT)
    assert RAW == path.read_bytes()


def test_a_folder_that_lets_nobody_write(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """In a read-only folder nothing is written, and the maker is told to choose another."""

    def refuse(self: Path, mode: str) -> Any:
        raise PermissionError(errno.EACCES, "Permission denied", str(self))

    monkeypatch.setattr(Path, "open", refuse)
    with pytest.raises(Kept, match="choose another folder"):
        save(path, BRIEF)
    assert [] == beside(path.parent)


def test_a_write_protected_skirt_stays(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A skirt that was write-protected on purpose is not replaced."""
    save(path, BRIEF)
    monkeypatch.setattr(os, "access", lambda where, how: False)
    with pytest.raises(Kept, match="write-protected"):
        save(path, NEXT)
    assert RAW == path.read_bytes()


def test_a_break_in_the_middle_leaves_nothing(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A save broken off by hand leaves the skirt saved before, and no rest."""
    save(path, BRIEF)

    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", stop)
    with pytest.raises(KeyboardInterrupt):
        save(path, NEXT)
    assert RAW == path.read_bytes()


def test_what_would_not_read_back_is_not_written(path: Path) -> None:
    """A brief that no file could give back is refused before the old file is touched."""
    save(path, BRIEF)
    for bad, says in [
        (replace(BRIEF, body=Body(waist=float("nan"))), "“Zoë.skirt” was not saved: body.waist: Waist is a number"),
        (replace(BRIEF, body=Body(waist=5.0)), "“Zoë.skirt” was not saved: body.waist: Waist is a number"),
        (replace(BRIEF, title="\ud800"), "“Zoë.skirt” was not saved: its names hold letters that no file can keep."),
    ]:
        with pytest.raises(Kept) as fault:
            save(path, bad)
        assert str(fault.value).startswith(says)
    assert RAW == path.read_bytes()


def test_a_brief_that_reads_back_otherwise_is_not_written(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Should the writer ever lose something, the save is refused rather than the work lost."""
    monkeypatch.setattr(skirt_file, "dump", lambda brief: dump(BRIEF))
    with pytest.raises(Kept, match="would not read back the same"):
        save(path, NEXT)
    assert [] == beside(path.parent)


def test_a_link_is_followed(path: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    """A skirt kept elsewhere and linked to is saved where it is kept; the link stays a link."""
    kept = tmp_path_factory.mktemp("elsewhere") / "kept.skirt"
    save(kept, BRIEF)
    path.symlink_to(kept)
    save(path, NEXT)
    assert path.is_symlink()
    assert NEXT == open_file(kept, STYLES)
    assert ["kept.skirt", "kept.skirt~"] == beside(kept.parent)


@pytest.mark.skipif(os.name != "posix", reason="permissions are POSIX's")
def test_permissions_are_kept(path: Path) -> None:
    """A skirt that only its owner may read stays so, and so does the version before."""
    save(path, BRIEF)
    path.chmod(0o600)
    save(path, NEXT)
    assert 0o600 == stat.S_IMODE(path.stat().st_mode) == stat.S_IMODE(path.with_name("Zoë.skirt~").stat().st_mode)


@pytest.mark.parametrize("name", ["nowhere/Zoë.skirt", "x" * 300, "a\0b"])
def test_places_where_nothing_can_be(tmp_path: Path, name: str) -> None:
    """A folder that is not there, or a name no disk takes, is told in a sentence when saving and when opening."""
    with pytest.raises(Kept) as kept:
        save(tmp_path / name, BRIEF)
    with pytest.raises(Trouble) as lost:
        open_file(tmp_path / name, STYLES)
    assert [] == beside(tmp_path)
    for fault in (kept, lost):
        assert str(fault.value).isprintable()
        assert len(str(fault.value)) < 160
