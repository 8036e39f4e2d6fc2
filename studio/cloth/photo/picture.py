"""Pictures from files, and pictures bent flat: the one place that knows Pillow.

A file may hold anything, so what it says of itself is looked at before a dot is unpacked, and no more memory is used
than a few hundred megabytes.
"""

import io
import warnings
from pathlib import Path
from typing import Any

import numpy as np

from studio.files import file_name, read_file
from studio.trouble import Trouble
from studio.units import spell
from studio.words import Phrase, phrase

from .found import Photo

LONGEST = 3000
"""A picture is reduced to this many dots on its longer side."""
SMALLEST = 120
"""A shorter side under this shows no print (dots)."""
MOST = 400_000_000
"""Dots of the largest photograph that is read: a plain JPEG, which is reduced while it is unpacked."""
MOST_WHOLE = 50_000_000
"""Dots of the largest picture of a kind that must be unpacked whole."""
MOST_BYTES = 200_000_000
"""The largest file."""
KINDS = ("JPEG", "PNG", "WEBP", "TIFF")


def open_photo(path: Path) -> Photo:
    """A picture from a file, upright, in sRGB, at most `LONGEST` dots long. Raises `Trouble` in one sentence."""
    from PIL import Image, UnidentifiedImageError

    raw = read_file(path, MOST_BYTES)
    name = file_name(path)
    Image.MAX_IMAGE_PIXELS = None  # our own bounds are below, and none of them is a mere warning
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            with Image.open(io.BytesIO(raw), formats=KINDS) as image:
                return _photo(image, name)
        except Trouble:
            raise
        except MemoryError as fault:
            raise _trouble(
                "{name:word} needs more memory than there is; save it smaller and open that.", name
            ) from fault
        except UnidentifiedImageError as fault:
            raise _trouble("{name:word} is no picture that can be read; JPEG, PNG, WebP and TIFF are.", name) from fault
        except Exception as fault:  # a broken file makes the decoders raise nearly anything
            raise _trouble("{name:word} is damaged or not complete; copy it again from the camera.", name) from fault


def _photo(image: Any, name: str) -> Photo:
    """The picture, once its size is known to be in bounds."""
    wide, high = image.size
    notes = []
    whole = image.format not in ("JPEG", "MPO") or image.info.get("progressive") or image.info.get("progression")
    if wide * high > (MOST_WHOLE if whole else MOST):
        raise _trouble("{name:word} has too many dots to be read; save it smaller and open that.", name)
    if min(wide, high) * min(1, LONGEST / max(wide, high)) < SMALLEST:
        raise _trouble("{name:word} is too small to show a print; take the photograph nearer or larger.", name)
    if getattr(image, "is_animated", False) and image.format != "MPO":
        notes.append(phrase("{name:word} holds more than one picture; the first is shown.", name=name))
    if max(wide, high) > LONGEST:
        image.draft(None, (LONGEST * wide // max(wide, high), LONGEST * high // max(wide, high)))
        notes.append(phrase("{name:word} is large; it was reduced to be read.", name=name))
    image.load()
    image = _upright(_plain(image))
    return Photo(np.array(image, np.uint8), tuple(notes))


def _plain(image: Any) -> Any:
    """Red, green and blue from whatever a picture holds, on white where it is clear, and not too long."""
    from PIL import Image

    exif = image.getexif() if hasattr(image, "getexif") else None
    if image.mode in ("I", "F", "I;16", "I;16B", "I;16L", "I;16N"):
        image = Image.fromarray(_eight_bits(np.asarray(image)))
    elif image.mode in ("P", "PA", "LA", "La", "RGBa") or "transparency" in image.info:
        image = image.convert("RGBA")
    elif image.mode not in ("L", "RGB", "RGBA", "CMYK"):
        image = image.convert("RGB")
    image.thumbnail((LONGEST, LONGEST), Image.Resampling.LANCZOS, reducing_gap=2.0)
    if image.mode == "RGBA":
        image = Image.alpha_composite(Image.new("RGBA", image.size, "white"), image)
    image = image.convert("RGB")
    image.info["exif"] = exif
    return image


def _upright(image: Any) -> Any:
    """Turned as the camera was held: the eight orientations of Exif 2.3 (tag 0x0112), as what is to be done."""
    from PIL import Image

    turns = Image.Transpose
    todo = {
        2: turns.FLIP_LEFT_RIGHT, 3: turns.ROTATE_180, 4: turns.FLIP_TOP_BOTTOM, 5: turns.TRANSPOSE,
        6: turns.ROTATE_270, 7: turns.TRANSVERSE, 8: turns.ROTATE_90,
    }  # fmt: skip
    try:
        turn = todo.get(image.info["exif"].get(0x0112))
    except Exception:  # notes of the camera that cannot be read are no reason to refuse its picture
        turn = None
    return image if turn is None else image.transpose(turn)


def _eight_bits(values: "np.typing.NDArray[Any]") -> "np.typing.NDArray[np.uint8]":
    """Grey values of any size as 0 to 255: whole numbers over 255 are taken as 16 bits, parts as shares of the most."""
    if values.dtype.kind == "f":
        values = np.nan_to_num(values, posinf=0, neginf=0)
        most = float(values.max(initial=0.0))
        return np.asarray(np.clip(values * (255 / most if most > 0 else 0), 0, 255), np.uint8)
    deep = values.dtype.itemsize == 2 or values.max(initial=0) > 255
    return np.asarray(np.clip(values >> 8 if deep else values, 0, 255), np.uint8)


def warped(photo: Photo, coefficients: tuple[float, ...], width: int, height: int) -> Photo:
    """A picture of `width` by `height` dots, each fetched from ((ax + by + c) / d, (ex + fy + g) / d) of the photo.

    The eight coefficients are a, b, c, e, f, g and the first two of d = hx + iy + 1; x and y are the middles of dots,
    counted from the upper left edge. Bilinear; what lies outside the photo is black.
    """
    from PIL import Image

    image = Image.fromarray(photo.pixels)
    flat = image.transform((width, height), Image.Transform.PERSPECTIVE, coefficients, Image.Resampling.BILINEAR)
    return Photo(np.array(flat, np.uint8), photo.notes)


def _trouble(text: str, name: str) -> Trouble:
    return Trouble(spell(Phrase(text, {"name": name}), "cm"))
