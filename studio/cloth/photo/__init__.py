"""A photograph of cloth: opened, laid flat, and read for its repeat, its bands and its way.

Only the values are here, so that nothing heavy is fetched before a photograph is opened. The rest is imported at use:
`opening.open_photo`, `corners.find_corners`, `flat.straighten` and `reading.read`.
"""

from .found import Band, Corners, Photo, Print, FoundBand, Repeat

__all__ = ["Band", "Corners", "Photo", "Print", "FoundBand", "Repeat"]
