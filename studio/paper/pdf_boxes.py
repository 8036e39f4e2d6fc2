"""The page boxes of a PDF, made exact."""

from collections.abc import Sequence
from pathlib import Path

from .page import Size

_POINT = 72 / 25.4


def mend(path: Path, sizes: Sequence[Size], title: str, creator: str) -> None:
    """Give every page its true size, hanging from its top left corner, since Qt rounds page boxes to whole points.

    Also asks viewers to print unscaled and on one side (ISO 32000-1, 12.2), and to show the title.
    """
    import pikepdf

    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        for page, (wide, high) in zip(pdf.pages, sizes, strict=True):
            top = float(page.mediabox[3])
            page.mediabox = pikepdf.Array([0, round(top - high * _POINT, 4), round(wide * _POINT, 4), round(top, 4)])
            for other in ("/CropBox", "/TrimBox", "/BleedBox", "/ArtBox"):
                if other in page.obj:
                    del page.obj[other]
        pdf.Root.ViewerPreferences = pikepdf.Dictionary(
            PrintScaling=pikepdf.Name.None_, Duplex=pikepdf.Name.Simplex, DisplayDocTitle=True
        )
        pdf.docinfo["/Title"] = title
        pdf.docinfo["/Creator"] = creator
        pdf.save(path)
