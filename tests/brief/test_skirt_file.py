"""Skirt files: what is kept, and what is refused."""

import errno
import io
import json
import os
import stat
from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, Any, Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from PIL import Image

from studio.brief import Body, Brief, Cloth, Skirt, skirt_file
from studio.brief.declare import one_of, times, whole, yes_no
from studio.brief.skirt_file import LARGEST, Damaged, Kept, dump, load, open_file, save
from studio.trouble import Trouble


class Tulip(Skirt, frozen=True, tag="tulip"):
    """A skirt of the tests."""

    fullness: Annotated[float, times("Fullness", 1, 5, "Cloth to seam.")] = 2.0
    cut: Annotated[Literal["along", "across"], one_of("Cut", "Which way.")] = "along"
    panels: Annotated[int, whole("Panels", 0, 24, "How many.")] = 0
    lined: Annotated[bool, yes_no("Lined", "With a lining.")] = False


class Pencil(Skirt, frozen=True, tag="pencil"):
    """Another, with other bounds for a number of the same name."""

    panels: Annotated[int, whole("Gores", 2, 6, "How many.")] = 3


STYLES = (Tulip, Pencil)
BRIEF = Brief(
    skirt=Tulip(length=611.1 / 3, fullness=2.2, panels=3),
    title="Zoë’s “Sunday” skirt ½ 🌷",
    body=Body(waist=685.0, hip=None),
    cloth=Cloth(on_hand=1234.5, shrinkage=0.05),
)
RAW = dump(BRIEF)
NEXT = replace(BRIEF, title="Another", body=Body(waist=700.0))


def changed(path: str, value: Any) -> bytes:
    """The file with one thing in it changed."""
    content = json.loads(RAW)
    *rooms, field = path.split(".")
    here = content
    for room in rooms:
        here = here[room]
    here[field] = value
    return json.dumps(content).encode()


def told(raw: bytes) -> str:
    """What the maker is told of a file that cannot be read."""
    with pytest.raises(Damaged) as fault:
        load(raw, STYLES)
    assert str(fault.value).isprintable()
    assert len(str(fault.value)) < 200
    return str(fault.value)


def test_a_skirt_is_kept_to_the_last_digit() -> None:
    """What was saved is what is opened, every length to the last digit and every letter of a name."""
    assert BRIEF == load(RAW, STYLES)
    assert Brief(skirt=Pencil()) == load(dump(Brief(skirt=Pencil())), STYLES)


def test_a_file_can_be_read_by_eye() -> None:
    """A file is indented JSON in UTF-8 that says first what it is."""
    # Python's own reader stands beside ours (RFC 8259: JSON exchanged between systems is UTF-8, without a BOM).
    content = json.loads(RAW.decode("utf-8"))
    assert ["format", "version", "skirt"] == list(content)[:3]
    assert ("skirtwright", 1, "tulip") == (content["format"], content["version"], content["skirt"]["style"])
    assert (685.0, None, 0.05) == (content["body"]["waist"], content["body"]["hip"], content["cloth"]["shrinkage"])
    assert RAW.startswith(b'{\n  "format": "skirtwright",\n  "version": 1,\n  "skirt": {\n    "style": "tulip"')
    assert RAW.endswith(b"}\n")


lengths = st.floats(400, 2000)


@given(
    lengths,
    st.none() | lengths,
    st.text(st.characters(exclude_categories=["Cc", "Cf", "Cs"]), max_size=80),
    st.integers(0, 24),
)
def test_every_skirt_is_kept(waist: float, hip: float | None, title: str, panels: int) -> None:
    """Any brief that can be made can be saved and opened again, unchanged."""
    brief = Brief(skirt=Tulip(panels=panels), title=title, body=Body(waist=waist, hip=hip))
    assert brief == load(dump(brief), STYLES)


@pytest.mark.parametrize("raw", [b"", b" \n", b"\t" * 50])
def test_an_empty_file(raw: bytes) -> None:
    """A file emptied by a crash is told as such."""
    assert told(raw) == "This file is empty."


def picture() -> bytes:
    """A PNG as a camera or a scanner might leave one."""
    out = io.BytesIO()
    Image.effect_noise((40, 30), 60).save(out, "PNG")
    return out.getvalue()


@pytest.mark.parametrize(
    "raw",
    [
        picture(),
        b"\x00" * 1500,
        b"%PDF-1.7\n",
        b"[]",
        b"3",
        b"{}",
        b'{"format": "quilt", "version": 1}',
        RAW.decode().encode("utf-16"),
        b"[" * 200_000,
    ],
    ids=["picture", "noughts", "pdf", "list", "number", "nothing", "other", "utf-16", "nest"],
)
def test_another_kind_of_file(raw: bytes) -> None:
    """A picture or any other file opened by mistake is told as what it is: no skirt."""
    assert told(raw) == "This is not a skirt file."


def test_a_file_cut_short_anywhere_is_refused() -> None:
    """Wherever a copy broke off, the file is refused: half a skirt is never opened as a whole one."""
    said = {told(RAW[:size]) for size in range(len(RAW) - 1)}
    assert {"This file is empty.", "This skirt file is cut short."} == said


def test_a_file_too_large() -> None:
    """A file of more than a megabyte is no skirt and is not read through."""
    assert told(RAW + b" " * LARGEST) == "This is too large to be a skirt file."


def test_a_file_nested_without_end() -> None:
    """A file made to choke its reader is refused like any damaged one."""
    deep = b'{"format": "skirtwright", "version": 1, "body": ' + b'{"waist":' * 100_000
    assert "damaged" in told(deep)
    assert told(b'{"a":' * 150_000) == "This skirt file is damaged: it is nested without end."


def test_a_newer_file() -> None:
    """A file from a newer version says that updating helps, whatever else is in it."""
    says = "This skirt was saved by a newer Skirtwright (version 2); update to open it."
    assert says == told(changed("version", 2))
    assert says == told(b'{"format": "skirtwright", "version": 2, "skirt": [1, 2], "people": {}}')


@pytest.mark.parametrize(
    ("path", "value", "says"),
    [
        ("version", 0, "version: there is no version 0."),
        ("version", "one", "version: what stands there does not belong there."),
        ("body.waist", 9999, "body.waist: Waist is a number from 400 to 2000 mm."),
        ("body.waist", 0, "body.waist: Waist is a number from 400 to 2000 mm."),
        ("body.waist", "68 cm", "body.waist: Waist is a number from 400 to 2000 mm."),
        ("body.waist", None, "body.waist: Waist is a number from 400 to 2000 mm."),
        ("body.waist", True, "body.waist: Waist is a number from 400 to 2000 mm."),
        ("body.hip", [960], "body.hip: Hip is a number from 400 to 2200 mm."),
        ("body", None, "body: what stands there does not belong there."),
        ("body.chest", 900, "body.chest: this Skirtwright does not know it."),
        ("mood", "blue", "mood: this Skirtwright does not know it."),
        ("x`\n" * 50, 1, "x`\ufffd" * 19 + "x`…: this Skirtwright does not know it."),
        ("fastening.count", 1.5, "fastening.count: Buttons is a whole number from 1 to 12."),
        ("cloth.shrinkage", 5, "cloth.shrinkage: Shrinkage is a number from 0 to 0.2."),
        ("opening.kind", "magic", "opening.kind: Kind is one of: invisible, lapped, centred, placket, wrap, none."),
        ("title", "x" * 81, "title: Skirt is a text of at most 80 characters, all of them to be seen."),
        ("title", 5, "title: Skirt is a text of at most 80 characters, all of them to be seen."),
        ("skirt", 5, "skirt: what stands there does not belong there."),
        ("skirt", {}, "skirt.style: it is missing."),
        ("skirt.style", "bow", "skirt.style: there is no style “bow” here."),
        ("skirt.style", ["tulip"], "skirt.style: what stands there does not belong there."),
        ("skirt.fullness", 9, "skirt.fullness: Fullness is a number from 1 to 5."),
        ("skirt.lined", "no", "skirt.lined: Lined is true or false."),
        ("skirt.tails", 2, "skirt.tails: this Skirtwright does not know it."),
        ("skirt", {"style": "tulip", "panels": 25}, "skirt.panels: Panels is a whole number from 0 to 24."),
        ("skirt", {"style": "pencil", "panels": 25}, "skirt.panels: Gores is a whole number from 2 to 6."),
    ],
)
def test_a_fault_is_told_with_its_place(path: str, value: Any, says: str) -> None:
    """Whatever is wrong in a file, the maker reads where it stands and what belongs there."""
    raw = changed(path, value) if "`" not in path else json.dumps({**json.loads(RAW), path: value}).encode()
    assert says == told(raw)


@pytest.mark.parametrize("number", [b"NaN", b"Infinity", b"-Infinity", b"1e999", b"1e99999999", b"-0x10"])
def test_numbers_that_are_none(number: bytes) -> None:
    """No length without end, and none that is no number, gets in through a file."""
    assert told(RAW.replace(b"685.0", number)).startswith(
        ("This skirt file is damaged", "body.waist: Waist is a number")
    )


def test_a_file_without_a_skirt() -> None:
    """A file that does not say which skirt it is, is refused."""
    content = json.loads(RAW)
    del content["skirt"]
    assert told(json.dumps(content).encode()) == "skirt: it is missing."


def test_letters_that_are_none() -> None:
    """A name spoilt by another program's encoding is refused, not shown as nonsense."""
    latin = RAW.replace("ë".encode(), b"\xeb")
    assert told(latin) == "This skirt file is damaged: some of its letters cannot be read."
    assert told(RAW.replace("ë".encode(), b"\\ud800")).startswith(
        "This skirt file is damaged: it makes no sense at byte"
    )


@given(st.binary(max_size=200))
def test_any_bytes_are_a_skirt_or_refused(raw: bytes) -> None:
    """No content whatever brings the program down."""
    try:
        load(b'{"format":"skirtwright","version":1,' + raw, STYLES)
    except Damaged as fault:
        assert str(fault).isprintable()


@given(st.lists(st.tuples(st.integers(0, len(RAW) - 1), st.integers(0, 255)), min_size=1, max_size=4))
def test_a_file_with_flipped_bytes_is_a_skirt_or_refused(flips: list[tuple[int, int]]) -> None:
    """A file spoilt on a bad disk is refused, or it is a skirt that can be saved again."""
    raw = bytearray(RAW)
    for at, byte in flips:
        raw[at] = byte
    try:
        brief = load(bytes(raw), STYLES)
    except Damaged as fault:
        assert str(fault).isprintable()
    else:
        assert brief == load(dump(brief), STYLES)


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


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    """A lost file is told by its name."""
    with pytest.raises(Trouble) as lost:
        open_file(tmp_path / "Anna.skirt", STYLES)
    assert "“Anna.skirt” cannot be found; its name or its folder may have changed." == str(lost.value)


def test_a_folder_is_not_a_skirt(tmp_path: Path) -> None:
    """A folder can neither be opened as a skirt nor saved over."""
    with pytest.raises(Trouble, match="is a folder, not a file"):
        open_file(tmp_path, STYLES)
    with pytest.raises(Kept, match="is a folder, not a file"):
        save(tmp_path, BRIEF)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="pipes are POSIX's")
def test_pipes_and_devices_do_not_hang(tmp_path: Path) -> None:
    """A pipe or a device in place of a file is refused at once, and never replaced."""
    pipe = tmp_path / "pipe.skirt"
    os.mkfifo(pipe)
    for place in (pipe, Path(os.devnull)):
        with pytest.raises(Trouble, match="not a file that can be opened"):
            open_file(place, STYLES)
        with pytest.raises(Kept, match="not a file that can be opened"):
            save(place, BRIEF)
    assert stat.S_ISFIFO(pipe.stat().st_mode)


def test_a_film_is_not_read_through(tmp_path: Path) -> None:
    """A file of many megabytes is refused after the first."""
    film = tmp_path / "film.skirt"
    with film.open("wb") as file:
        file.truncate(5_000_000_000)
    with pytest.raises(Trouble, match="is too large"):
        open_file(film, STYLES)
    with pytest.raises(Kept, match="is too large"):
        save(film, BRIEF)


@pytest.mark.parametrize("title", ["a\nb", "a\x00b", "\u202ecba", "a\u2066b"])
def test_a_name_nobody_can_see_is_refused(title: str) -> None:
    """A file cannot bring in what the form would not take: control characters, or a line turned round."""
    with pytest.raises(Damaged, match="title: "):
        load(changed("title", title), STYLES)


def test_what_follows_a_whole_skirt_is_no_loss() -> None:
    """A file with something behind its end is damaged, and not called cut short."""
    with pytest.raises(Damaged, match="makes no sense at byte"):
        load(dump(BRIEF) + b" x", STYLES)
