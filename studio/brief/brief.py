"""One skirt: everything the maker decides together, and what follows at once from it. Lengths in mm."""

# fmt: off
from typing import Annotated

from msgspec import Meta

from .conditions import BANDS, ZIPS
from .declare import short_text
from .hems import usual_hem
from .records import (
    Body,
    Cloth,
    Fastening,
    Gathers,
    Lining,
    Opening,
    Paper,
    Pockets,
    Record,
    Seams,
    Skirt,
    Waistband,
)


class Brief(Record, frozen=True):
    """One skirt, for one person, from one cloth."""

    skirt: Skirt
    title: Annotated[str, short_text("Skirt", "What you call this skirt.")] = "A gathered skirt"
    who: Annotated[str, short_text("For", "Who will wear it.")] = ""
    body: Annotated[Body, Meta(title="Measurements")] = Body()
    waistband: Annotated[Waistband, Meta(title="Waistband")] = Waistband()
    opening: Annotated[Opening, Meta(title="Opening")] = Opening()
    fastening: Annotated[Fastening, Meta(title="Fastening")] = Fastening()
    gathers: Annotated[Gathers, Meta(title="Gathers")] = Gathers()
    seams: Annotated[Seams, Meta(title="Seams and hem")] = Seams()
    pockets: Annotated[Pockets, Meta(title="Pockets")] = Pockets()
    lining: Annotated[Lining, Meta(title="Lining")] = Lining()
    cloth: Annotated[Cloth, Meta(title="Cloth")] = Cloth()
    paper: Annotated[Paper, Meta(title="Paper")] = Paper()

    # fmt: on

    @property
    def closed(self) -> float:
        """B, the finished, closed band (mm): waist and ease."""
        return self.body.waist + self.waistband.ease

    @property
    def waist_seam(self) -> float:
        """Length of the seam that the skirt's top is sewn along (mm): B, and a wrap's overlap; under elastic, what
        passes the hips.
        """
        if self.waistband.kind == "elastic":
            return max(self.closed, self.hips + ELASTIC_OVER)
        return self.closed + self.over

    @property
    def over(self) -> float:
        """How far the edges of a wrap lie over each other at the waist (mm); 0 where the skirt opens otherwise."""
        return self.opening.overlap if self.opening.kind == "wrap" else 0.0

    @property
    def lap(self) -> float:
        """How far the band goes past the opening to carry its fastening (mm): the extension, where there is a slit and
        a band to lap over it.
        """
        kinds = (self.waistband.kind, self.opening.kind)
        laps = kinds[0] in BANDS and kinds[1] in (*ZIPS, "placket") and self.waistband.extension > SEEN
        return self.waistband.extension if laps else 0.0

    @property
    def band_length(self) -> float:
        """The band from end to end, mm: the waist seam and the lap."""
        return self.waist_seam + self.lap

    @property
    def hips(self) -> float:
        """The hip (mm), or what the waist leads one to expect: 43.80 cm + 0.7428 waist, the regression over 260
        women (Heinz et al., Journal of Statistics Education 11(2), 2003).
        """
        return self.body.hip if self.body.hip is not None else 438.0 + 0.7428 * self.body.waist

    @property
    def hip_depth(self) -> float:
        """From waist to hip (mm); 200 where it was not measured (common practice, no source)."""
        return self.body.waist_to_hip if self.body.waist_to_hip is not None else 200.0

    @property
    def hem(self) -> float:
        """What is left below the hem line (mm): the maker's number, or what suits the skirt and its cloth; a faced
        hem has a seam there.
        """
        if self.seams.hem_kind == "faced":
            return self.seams.allowance
        if self.seams.hem is not None:
            return self.seams.hem
        return usual_hem(self.skirt.flare, self.seams.hem_kind, self.cloth.weight)

    @property
    def first_turn(self) -> float:
        """How much is turned under at the hem's raw edge (mm): at most half of a hem that follows from the skirt."""
        if self.seams.hem_kind in ("single", "faced"):
            return 0.0
        return self.seams.first_turn if self.seams.hem is not None else min(self.seams.first_turn, self.hem / 2)

    @property
    def stop(self) -> float:
        """How deep the opening is, down from the waist seam (mm): 0 where there is none, the whole length of a wrap;
        a zip or placket ends at least 5 above the hem line.
        """
        match self.opening.kind:
            case "none":
                return 0.0
            case "wrap":
                return self.finished_length
        return min(self.opening.zip_stop, self.finished_length - 5)

    @property
    def finished_length(self) -> float:
        """L, from the waist seam to the hem line (mm); at least 10, however much of it the band takes."""
        taken = self.waistband.depth if self.skirt.length_includes_band else 0.0
        return max(10.0, self.skirt.length - taken)


OVER_HIPS = 20.0
"""An opening must be larger than the hip by 20 to 40 mm (common practice, no source)."""
ELASTIC_OVER = 40.0
"""A skirt without an opening goes over the hips with 20 to 40 mm to spare (common practice, no source)."""
SEEN = 0.05
"""Less than this (mm) is no extension at all."""
