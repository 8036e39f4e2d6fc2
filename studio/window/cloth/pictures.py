"""Pictures of cloths, laid flat: kept by the desktop for this maker, and fetched by name when they are painted."""

import hashlib
from functools import lru_cache
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QStandardPaths, Qt
from PySide6.QtGui import QImage

from studio.files import put_file

_QUALITY = 88
_LEAST = 32
"""No smaller size is made (dots high)."""
_NAME = 24  # letters of a name, which says what the picture holds


def folder() -> Path:
    """Where pictures of cloths are kept."""
    place = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppDataLocation)
    return Path(place) / "cloths"


def keep(image: QImage) -> str:
    """Keep a picture; its name. The same picture is kept once. Raises OSError where nothing can be written."""
    held = QByteArray()
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    if not image.save(buffer, "JPEG", _QUALITY):  # type: ignore[call-overload]
        raise OSError("the picture cannot be written as JPEG")
    raw = bytes(held.data())
    name = hashlib.sha256(raw).hexdigest()[:_NAME]
    target = folder() / f"{name}.jpg"
    if not target.exists():
        target.parent.mkdir(parents=True, exist_ok=True)
        put_file(target, raw, target)
        sizes.cache_clear()
    return name


def picture(name: str) -> QImage:
    """A picture by its name; an empty one where it is not here, as with a skirt from another desk."""
    return QImage(str(folder() / f"{name}.jpg")) if name.isalnum() else QImage()


@lru_cache(maxsize=2)
def sizes(name: str) -> tuple[QImage, ...]:
    """A picture as it is and again and again half as high: made once, a third more memory than the picture alone.

    Empty where it is not here.
    """
    made = [picture(name)]
    while made[-1].height() >= 2 * _LEAST:
        half = made[-1].height() // 2
        made.append(made[-1].scaledToHeight(half, Qt.TransformationMode.SmoothTransformation))
    return () if made[0].isNull() else tuple(made)


def scaled(name: str, high: int) -> QImage:
    """The smallest of a picture's sizes that is still as high (dots), else the largest; no dot is made anew."""
    made = sizes(name)
    return next((image for image in reversed(made) if image.height() >= high), made[0] if made else QImage())
