"""From a piece to its place on the cloth, as Qt maps it."""

from PySide6.QtGui import QTransform

from studio.cloth.placed import Placed


def to_cloth(placed: Placed) -> QTransform:
    """From a piece's own millimetres to those of the cloth; see `Placed.on_cloth`."""
    box = placed.outline.box
    way = QTransform()
    way.translate(placed.at.x, placed.at.y)
    match placed.turn:
        case 90:
            way.translate(placed.along, 0)
        case 180:
            way.translate(placed.along, placed.across)
        case 270:
            way.translate(0, placed.across)
    way.rotate(placed.turn)
    if placed.mirrored:
        way.scale(-1, 1)
        way.translate(-box.right, -box.top)
    else:
        way.translate(-box.left, -box.top)
    return way
