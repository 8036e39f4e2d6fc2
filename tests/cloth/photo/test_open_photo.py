"""Files that people have, and files that nobody should send."""

import io
import os
import struct
import subprocess
import sys
import zlib
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from studio.cloth.photo import Photo
from studio.cloth.photo.picture import LONGEST, open_photo
from studio.trouble import Trouble

RED, GREEN = (220, 30, 30), (30, 160, 60)


def halves(wide: int = 400, high: int = 200) -> Image.Image:
    """Red above, green below, and a white patch at the upper left."""
    image = Image.new("RGB", (wide, high), GREEN)
    image.paste(RED, (0, 0, wide, high // 2))
    image.paste((255, 255, 255), (0, 0, wide // 8, high // 8))
    return image


def near(photo: Photo, x: float, y: float, colour: tuple[int, ...], slack: int = 12) -> bool:
    """Whether a place, in shares of the picture, has a colour."""
    at = photo.pixels[int(y * (photo.height - 1)), int(x * (photo.width - 1))].astype(int)
    return bool((np.abs(at - colour[:3]) <= slack).all())


@pytest.mark.parametrize("suffix", ["jpg", "png", "webp", "tif"])
def test_every_kind_of_picture_is_read(tmp_path: Path, suffix: str):
    """JPEG, PNG, WebP and TIFF show the same."""
    halves().save(tmp_path / f"p.{suffix}", quality=95)
    photo = open_photo(tmp_path / f"p.{suffix}")
    assert (400, 200, ()) == (photo.width, photo.height, photo.notes)
    assert near(photo, 0.5, 0.25, RED) and near(photo, 0.5, 0.75, GREEN)


@pytest.mark.parametrize(
    ("orientation", "size", "white"),
    [
        (1, (400, 200), (0, 0)), (2, (400, 200), (1, 0)), (3, (400, 200), (1, 1)), (4, (400, 200), (0, 1)),
        (5, (200, 400), (0, 0)), (6, (200, 400), (1, 0)), (7, (200, 400), (1, 1)), (8, (200, 400), (0, 1)),
    ],
)  # fmt: skip
def test_the_picture_is_upright(tmp_path: Path, orientation: int, size: tuple[int, int], white: tuple[int, int]):
    """Where row 0 and column 0 of the file stand: Exif 2.3 (CIPA DC-008), table of tag 274: 1 top left, 2 top right,
    3 bottom right, 4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom.
    """
    exif = Image.Exif()
    exif[274] = orientation
    halves().save(tmp_path / "p.jpg", exif=exif, quality=95)
    photo = open_photo(tmp_path / "p.jpg")
    assert size == (photo.width, photo.height)
    assert near(photo, *white, (255, 255, 255), 40)


@pytest.mark.parametrize("mode", ["CMYK", "L", "P", "1", "LA", "RGBA", "I;16", "F", "YCbCr", "LAB"])
def test_every_way_to_hold_colours_is_read(tmp_path: Path, mode: str):
    """Four inks, grey, a palette, two tones, 16 bits and the rest: light stays light and dark stays dark."""
    grey = Image.new("L", (300, 200), 230)
    grey.paste(20, (0, 100, 300, 200))
    if mode == "I;16":
        image = Image.fromarray(np.asarray(grey).astype(np.uint16) * 257)
    elif mode == "LAB":
        image = Image.merge("LAB", (grey, Image.new("L", grey.size, 128), Image.new("L", grey.size, 128)))
    else:
        image = (grey.convert("RGB") if mode in ("CMYK", "YCbCr") else grey).convert(mode, dither=Image.Dither.NONE)
    image.save(tmp_path / "p.tif")
    pixels = open_photo(tmp_path / "p.tif").pixels
    assert pixels[20, 150].min() > 200
    assert pixels[180, 150].max() < 60


def test_four_inks_in_a_jpeg_are_read(tmp_path: Path):
    """A print shop's JPEG, whose inks are kept upside down, is as light and as dark as it was."""
    halves().convert("CMYK").save(tmp_path / "p.jpg", quality=95)
    photo = open_photo(tmp_path / "p.jpg")
    assert near(photo, 0.5, 0.25, RED, 25) and near(photo, 0.5, 0.75, GREEN, 25)


@pytest.mark.parametrize("held", ["a clear entry of the palette", "a palette with shares of clear"])
def test_a_palette_that_is_partly_clear_lies_on_white(tmp_path: Path, held: str):
    """A drawing saved with few colours and a clear ground."""
    image = Image.new("P", (200, 200), 0)
    image.putpalette([10, 20, 30, 200, 40, 60])
    image.paste(1, (0, 0, 200, 100))
    image.save(tmp_path / "p.png", transparency=0 if "entry" in held else bytes([0, 255]))
    photo = open_photo(tmp_path / "p.png")
    assert near(photo, 0.5, 0.9, (255, 255, 255)) and near(photo, 0.5, 0.1, (200, 40, 60))


def test_sixteen_bits_of_three_colours_are_read(tmp_path: Path):
    """A PNG of a scanner, 16 bits to a colour (ISO/IEC 15948, 11.2.2: depth 16, colour type 2), written by hand."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    row = b"\0" + struct.pack(">HHH", *(c * 257 for c in RED)) * 200
    raw = b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", 200, 150, 16, 2, 0, 0, 0))
    (tmp_path / "p.png").write_bytes(raw + chunk(b"IDAT", zlib.compress(row * 150)) + chunk(b"IEND", b""))
    assert near(open_photo(tmp_path / "p.png"), 0.5, 0.5, RED, 1)


def test_what_is_clear_is_white(tmp_path: Path):
    """Cut-out cloth lies on white."""
    image = Image.new("RGBA", (200, 200), (10, 20, 30, 0))
    image.paste((10, 20, 30, 255), (0, 0, 200, 100))
    image.save(tmp_path / "p.png")
    photo = open_photo(tmp_path / "p.png")
    assert near(photo, 0.5, 0.9, (255, 255, 255)) and near(photo, 0.5, 0.1, (10, 20, 30))


def test_the_first_of_many_is_shown_and_said(tmp_path: Path):
    """A moving picture stands still, and the maker is told."""
    halves().save(tmp_path / "p.webp", save_all=True, append_images=[Image.new("RGB", (400, 200))], duration=100)
    photo = open_photo(tmp_path / "p.webp")
    assert near(photo, 0.5, 0.25, RED, 30)
    assert ["{name:word} holds more than one picture; the first is shown."] == [n.text for n in photo.notes]


def test_a_large_photograph_is_reduced(tmp_path: Path):
    """More dots than a camera has cost no more memory and are said to be reduced."""
    halves(7000, 3500).save(tmp_path / "p.jpg")
    photo = open_photo(tmp_path / "p.jpg")
    assert (LONGEST, LONGEST // 2) == (photo.width, photo.height)
    assert near(photo, 0.5, 0.25, RED) and near(photo, 0.5, 0.75, GREEN)
    assert 1 == len(photo.notes)


def png_that_says(wide: int, high: int) -> bytes:
    """The head of a PNG (ISO/IEC 15948, 11.2.2) with next to no data."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    head = struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"\0" * 999)) + chunk(b"IEND", b"")
    )


def jpeg(**how: object) -> bytes:
    """A sound JPEG."""
    stream = io.BytesIO()
    halves().save(stream, "JPEG", **how)
    return stream.getvalue()


def jpeg_that_says(wide: int, high: int, **how: object) -> bytes:
    """A JPEG with another size in its frame header (ITU-T T.81, B.2.2)."""
    raw = bytearray(jpeg(**how))
    at = raw.index(b"\xff\xc2" if how else b"\xff\xc0")
    raw[at + 5 : at + 9] = struct.pack(">HH", high, wide)
    return bytes(raw)


def webp_that_says(wide: int, high: int) -> bytes:
    """A WebP with another canvas in its VP8X chunk (RFC 9649, 2.7)."""
    stream = io.BytesIO()
    halves().save(stream, "WEBP", save_all=True, append_images=[Image.new("RGB", (400, 200))])
    raw = bytearray(stream.getvalue())
    at = raw.index(b"VP8X") + 12
    raw[at : at + 6] = (wide - 1).to_bytes(3, "little") + (high - 1).to_bytes(3, "little")
    return bytes(raw)


def tiff() -> bytes:
    """A sound TIFF, packed."""
    stream = io.BytesIO()
    halves().save(stream, "TIFF", compression="tiff_lzw")
    return stream.getvalue()


HOSTILE = {
    "empty": b"", "words": b"Two metres of lawn, please\n" * 40, "svg": b"<svg xmlns='http://www.w3.org/2000/svg'/>",
    "gif": b"GIF89a" + bytes(60), "png head": png_that_says(400, 300)[:40], "png short": png_that_says(400, 300),
    "png bomb": png_that_says(60000, 60000), "png widest": png_that_says(2**31 - 1, 2**31 - 1),
    "jpeg half": jpeg()[:1500], "jpeg head": jpeg()[:300], "jpeg bomb": jpeg_that_says(65000, 65000),
    "jpeg in passes": jpeg_that_says(16000, 16000, progressive=True), "webp bomb": webp_that_says(16383, 16383),
    "webp half": webp_that_says(400, 200)[:90], "tiff half": tiff()[: len(tiff()) // 2], "tiff head": tiff()[:12],
    "noise": np.random.default_rng(5).bytes(5000), "jpeg noise": b"\xff\xd8\xff\xe0" + np.random.default_rng(6).bytes(5000),
    "tiff noise": b"II*\0" + np.random.default_rng(7).bytes(5000),
}  # fmt: skip
SAYS = (
    "is no picture that can be read; JPEG, PNG, WebP and TIFF are.",
    "is damaged or not complete; copy it again from the camera.",
    "has too many dots to be read; save it smaller and open that.",
)


@pytest.mark.parametrize("kind", HOSTILE)
def test_a_file_that_cannot_be_read_is_refused_in_a_sentence(tmp_path: Path, kind: str):
    """Broken, false and monstrous files are named and refused; nothing crashes."""
    path = tmp_path / "cloth.jpg"
    path.write_bytes(HOSTILE[kind])
    with pytest.raises(Trouble) as told:
        open_photo(path)
    assert str(told.value) in [f"“cloth.jpg” {says}" for says in SAYS]
    if "bomb" in kind or kind in ("png widest", "jpeg in passes"):
        assert "too many dots" in str(told.value)


@pytest.mark.parametrize("size", [(20, 20), (1, 1), (8000, 40), (119, 400), (20000, 3), (3, 20000), (20000, 700)])
def test_a_picture_too_small_is_refused(tmp_path: Path, size: tuple[int, int]):
    """A thumbnail or a sliver shows no print."""
    Image.new("RGB", size).save(tmp_path / "p.png")
    with pytest.raises(Trouble, match="too small to show a print"):
        open_photo(tmp_path / "p.png")


def test_what_is_no_file_is_refused(tmp_path: Path):
    """A folder, a missing file and a pipe are told apart, and nothing waits."""
    os.mkfifo(tmp_path / "pipe")
    for path, says in [
        (tmp_path, "is a folder"),
        (tmp_path / "none.jpg", "cannot be found"),
        (tmp_path / "pipe", "is not a file"),
    ]:
        with pytest.raises(Trouble, match=says):
            open_photo(path)


def test_notes_of_the_camera_that_are_broken_do_no_harm(tmp_path: Path):
    """A picture whose Exif cannot be read is shown as it lies."""
    exif = Image.Exif()
    exif[274] = 6
    raw = jpeg(exif=exif)
    at = raw.index(b"Exif\0\0") + 6
    (tmp_path / "p.jpg").write_bytes(raw[: at + 4] + b"\xff\xff\xff\xff" + raw[at + 8 :])
    assert 400 == open_photo(tmp_path / "p.jpg").width


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="only Linux tells the most a program has held")
def test_memory_stays_bounded(tmp_path: Path):
    """A JPEG of 144 million dots is read with less than 200 MB, by the system's own count of the whole program."""
    Image.new("L", (12000, 12000), 200).save(tmp_path / "p.jpg")
    code = (
        "import sys; from pathlib import Path; from studio.cloth.photo.picture import open_photo; "
        "photo = open_photo(Path(sys.argv[1])); "
        "print(photo.width, Path('/proc/self/status').read_text().split('VmHWM:')[1].split()[0])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path / "p.jpg")], capture_output=True, text=True, check=True
    )
    wide, kilobytes = map(int, done.stdout.split())
    assert LONGEST == wide
    assert kilobytes < 200_000
