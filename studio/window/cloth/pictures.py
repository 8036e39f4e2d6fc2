"""Pictures of cloths, laid flat: kept by the desktop for this maker, and fetched by name when they are painted."""

import hashlib
from functools import lru_cache
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QStandardPaths, Qt
from PySide6.QtGui import QImage, QPixmap

from studio.files import put_file

_QUALITY = 88
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
        picture.cache_clear()
        scaled.cache_clear()
    return name


@lru_cache(maxsize=4)
def picture(name: str) -> QImage:
    """A picture by its name; an empty one where it is not here, as with a skirt from another desk."""
    return QImage(str(folder() / f"{name}.jpg")) if name.isalnum() else QImage()


@lru_cache(maxsize=4)
def scaled(name: str, high: int) -> QPixmap:
    """The picture so many dots high, never larger than it is."""
    whole = picture(name)
    if whole.isNull() or high >= whole.height():
        return QPixmap.fromImage(whole)
    return QPixmap.fromImage(whole.scaledToHeight(max(1, high), Qt.TransformationMode.SmoothTransformation))
