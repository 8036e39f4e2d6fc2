"""A photograph of cloth: opened, laid flat, and read for its repeat, its bands and its way.

Only the values are here, so that nothing heavy is fetched before a photograph is opened. The rest is imported at use:
`opening.open_photo`, `corners.find_corners`, `flat.straighten` and `reading.read`.
"""

from .found import Band, Corners, FoundBand, Photo, Print, Repeat, word

__all__ = ["Band", "Corners", "FoundBand", "Photo", "Print", "Repeat", "word"]
