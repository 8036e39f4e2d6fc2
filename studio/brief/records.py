"""What the maker decides, in the order the form shows it. Lengths in mm; every default is the usual value."""

# fmt: off
from typing import Annotated, Literal

from msgspec import Meta, Struct

from .declare import grams, mm, one_of, per_cent, short_text, whole, yes_no

BUTTONED = ("fastening.kind", ("buttons",))


class Record(Struct, frozen=True, forbid_unknown_fields=True):
    """A part of the brief: frozen, and strict about what a file may hold."""


class Body(Record, frozen=True):
    """The person, measured. All but the waist may be unknown."""

    waist: Annotated[float, mm(
        "Waist", 400, 2000, "Level, where the body bends sideways. One finger under the tape.", step=5)] = 700.0
    hip: Annotated[float, mm(
        "Hip", 400, 2200, "Round the fullest part, feet together.", step=5, usual=960,
        blank="not known")] | None = 960.0
    waist_to_hip: Annotated[float, mm(
        "Waist to hip", 60, 400, "At the side, over the curve.", step=5, usual=200, blank="not known")] | None = 200.0
    waist_to_knee: Annotated[float, mm(
        "Waist to knee", 150, 900, "At the side, to the middle of the knee cap.", step=5, usual=580,
        blank="not known")] | None = 580.0
    height: Annotated[float, mm(
        "Height", 600, 2300, "Without shoes.", step=10, usual=1660, blank="not known")] | None = 1660.0


class Skirt(Record, frozen=True, tag_field="style"):
    """What every style has; each style adds its own numbers in its own file."""

    length: Annotated[float, mm(
        "Length", 100, 1500, "From the waistband’s lower edge to the hem.", step=5)] = 620.0
    length_includes_band: Annotated[bool, yes_no(
        "Length includes the band", "Measure the length from the band’s top edge instead.")] = False


class Waistband(Record, frozen=True):
    """The band that holds the skirt."""

    kind: Annotated[Literal["folded"], one_of("Kind", "Folded: one piece, faced with itself.")] = "folded"
    width: Annotated[float, mm("Width", 10, 150, "Finished, from fold to seam.")] = 30.0
    ease: Annotated[float, mm("Ease", 0, 100, "Room between body and band: a thumb should slip under.")] = 10.0
    extension: Annotated[float, mm("Extension", 0, 100, "Past the opening, to carry the fastening.")] = 40.0
    interfacing: Annotated[Literal["whole", "outer half", "trimmed", "none"], one_of(
        "Interfacing", "Whole: to the cut edges. Outer half: the face only. Trimmed: just past the seams.")] = "trimmed"


class Opening(Record, frozen=True):
    """Where the skirt opens, and how."""

    kind: Annotated[Literal["invisible", "lapped", "centred"], one_of("Zip", "How the zip is set in.")] = "invisible"
    place: Annotated[Literal["centre back"], one_of("Place", "Where the skirt opens.")] = "centre back"
    zip_stop: Annotated[float, mm(
        "Zip stop", 40, 600, "Where the opening ends, down from the waist seam.", step=5)] = 200.0
    zip_on_hand: Annotated[float, mm(
        "Zip on hand", 50, 1000, "Length of a zip you have; empty to buy one.", step=5, usual=250,
        blank="to buy")] | None = None


class Fastening(Record, frozen=True):
    """What closes the band."""

    kind: Annotated[Literal["buttons", "hook and bar"], one_of("Kind", "What closes the band.")] = "buttons"
    count: Annotated[int, whole("Buttons", 1, 12, "One above the other on the band.", when=BUTTONED)] = 1
    button: Annotated[Literal["flat", "domed", "ball"], one_of(
        "Button", "A thick button needs a longer hole.", when=BUTTONED)] = "flat"
    button_diameter: Annotated[float, mm(
        "Diameter", 6, 60, "Across the button; lignes are read too, as 24 L.", step=0.5, when=BUTTONED)] = 18.0
    button_height: Annotated[float, mm("Thickness", 1, 30, "How thick the button is.", step=0.5, when=BUTTONED)] = 3.0
    end_inset: Annotated[float, mm(
        "Hole from the end", 3, 80, "From the extension’s finished end to the hole’s outer end.", when=BUTTONED)] = 15.0
    button_inset: Annotated[float, mm(
        "Button from the end", 0, 100, "From the plain end to the button; empty so that the band closes true.",
        usual=25, blank="closes true", when=BUTTONED)] | None = None
    edge_inset: Annotated[float, mm(
        "From the edges", 3, 70, "First button from the top edge, last from the lower edge.", when=BUTTONED)] = 15.0


class Gathers(Record, frozen=True):
    """The rows of stitching that draw the cloth up."""

    rows: Annotated[int, whole("Rows", 1, 4, "Two rows lie flat; three for thick cloth.")] = 2
    sections: Annotated[int, whole(
        "Sections", 0, 12, "Where the rows break; by width: halves, and quarters in very wide cloth.",
        blank="by width")] = 0
    end_gap: Annotated[float, mm("Flat at the opening", 0, 80, "Left ungathered, so that the zip lies flat.")] = 20.0


class Seams(Record, frozen=True):
    """Seams and hem."""

    allowance: Annotated[float, mm("Seam allowance", 5, 40, "Beyond every seam line.")] = 15.0
    hem: Annotated[float, mm("Hem", 5, 200, "Below the hem line, the first turn included.", step=5)] = 40.0
    first_turn: Annotated[float, mm(
        "First turn", 0, 30, "Turned under at the raw edge; 0 when it is neatened instead.")] = 10.0


class Cloth(Record, frozen=True):
    """The piece of cloth."""

    width: Annotated[float, mm("Width", 300, 3200, "Selvedge to selvedge.", step=10)] = 1400.0
    selvedge: Annotated[float, mm("Selvedge", 0, 80, "The unusable edge, on each side.")] = 15.0
    on_hand: Annotated[float, mm(
        "On hand", 100, 100000, "Length you have; empty to buy what is needed.", step=50, usual=2000,
        blank="to buy")] | None = None
    shrinkage: Annotated[float, per_cent(
        "Shrinkage", 0, 0.2, "Lost along the length in the first wash; test a piece.")] = 0.0
    weight: Annotated[float, grams(
        "Weight", 20, 1000, "Grams a square metre; poplin is about 120, denim about 350.", usual=140,
        blank="not known")] | None = None


class Paper(Record, frozen=True):
    """What the pieces are printed on."""

    size: Annotated[Literal["A4", "A3", "US Letter", "roll"], one_of("Size", "The sheet in the printer.")] = "A4"
    roll_width: Annotated[float, mm(
        "Roll width", 280, 2000, "Across the roll.", step=10, when=("paper.size", ("roll",)))] = 914.4
    margin: Annotated[float, mm("Margin", 3, 30, "The edge the printer cannot reach.")] = 10.0
    overlap: Annotated[float, mm("Overlap", 8, 30, "The strip where sheets are glued.")] = 12.0
    panels: Annotated[Literal["template", "whole", "chalk list"], one_of(
        "Panels as", "A narrow template to move along, the whole panel, or distances only.")] = "template"


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
    cloth: Annotated[Cloth, Meta(title="Cloth")] = Cloth()
    paper: Annotated[Paper, Meta(title="Paper")] = Paper()

    @property
    def closed(self) -> float:
        """B, the finished, closed band and the waist seam (mm): waist and ease."""
        return self.body.waist + self.waistband.ease

    @property
    def usable_width(self) -> float:
        """U, the cloth's width less both selvedges (mm)."""
        return self.cloth.width - 2 * self.cloth.selvedge

    @property
    def finished_length(self) -> float:
        """L, from the waist seam to the hem line (mm); at least 10, however much of it the band takes."""
        taken = self.waistband.width if self.skirt.length_includes_band else 0.0
        return max(10.0, self.skirt.length - taken)
