"""Skirt files: what is kept, and what is refused."""

import json
import os
import stat
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from skirts import BRIEF, RAW, STYLES, Pencil, Tulip, changed, picture, told

from studio.brief import Body, Brief
from studio.brief.skirt_file import LARGEST, Damaged, Kept, dump, load, open_file, save
from studio.trouble import Trouble


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
        (
            "cloth.held",
            [{"piece": "skirt", "copy": k, "x": 0, "y": 15} for k in range(401)],
            "cloth.held: At most 400 pieces are held on a cloth, each in a place on it.",
        ),
        ("cloth.held", 7, "cloth.held: At most 400 pieces are held on a cloth, each in a place on it."),
        (
            "cloth.bands",
            [{"start": 20 * k, "end": 20 * k + 10} for k in range(13)],
            "cloth.bands: A cloth has at most 12 bands, each from less to more.",
        ),
        (
            "cloth.photo",
            "../secret",
            "cloth.photo: Picture is the name of a kept picture, in small letters and digits.",
        ),
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
