"""What the maker decides, in the order the form shows it. Lengths in mm; every default is the usual value."""

# fmt: off
from typing import Annotated, Literal

from msgspec import Meta, Struct

from .conditions import BANDED, BUTTONED, ELASTIC, OPENS, SLIT, ZIPPED
from .declare import bands_of, grams, held_of, mm, money, one_of, per_cent, picture_of, short_text, whole, yes_no
from .hems import Flare


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

    @property
    def flare(self) -> Flare:
        """How the hem runs, for what it can be turned by."""
        return "straight"


class Waistband(Record, frozen=True):
    """The band that holds the skirt, or the edge that stands for one."""

    kind: Annotated[Literal["folded", "two-piece", "contour", "elastic", "bound", "faced"], one_of(
        "Kind", "Folded: one piece, faced with itself. Two-piece: band and facing, of two cloths if you like. Contour: "
        "shaped to the body. Elastic: a casing. Bound: a narrow edge. Faced: no band at all.")] = "folded"
    width: Annotated[float, mm("Width", 10, 150, "Finished, from top edge to seam.", when=BANDED)] = 30.0
    ease: Annotated[float, mm(
        "Ease", 0, 100, "Room between body and band: a thumb should slip under.",
        when=(("waistband.kind", ("folded", "two-piece", "contour", "bound", "faced")),))] = 10.0
    extension: Annotated[float, mm(
        "Extension", 0, 100, "Past the opening, to carry the fastening.", when=(*BANDED, *SLIT))] = 40.0
    upper_less: Annotated[float, mm(
        "Top edge shorter by", 0, 150, "Than the lower edge, closed: measure the body where it will lie.",
        when=(("waistband.kind", ("contour",)),))] = 20.0
    facing_cloth: Annotated[Literal["main", "lining"], one_of(
        "Facing of", "What the inside of the band is cut of; lining cloth spares a border print.",
        when=(("waistband.kind", ("two-piece", "contour")),))] = "main"
    interfacing: Annotated[Literal["whole", "outer half", "trimmed", "none"], one_of(
        "Interfacing", "Whole: to the cut edges. Outer half: the face only. Trimmed: just past the seams.",
        when=(("waistband.kind", ("folded", "two-piece", "contour", "faced")),))] = "trimmed"
    interfacing_width: Annotated[float, mm(
        "Interfacing width", 200, 3200, "From edge to edge, as it is sold.", step=10,
        when=(("waistband.interfacing", ("whole", "outer half", "trimmed")),
              ("waistband.kind", ("folded", "two-piece", "contour", "faced")),))] = 900.0
    elastic: Annotated[float, mm("Elastic", 5, 100, "Width of the elastic.", when=ELASTIC)] = 25.0
    elastic_less: Annotated[float, mm(
        "Elastic shorter by", 0, 200, "Than the waist, so that it holds; try it on before you join it.",
        when=ELASTIC)] = 25.0
    binding: Annotated[float, mm(
        "Binding", 4, 20, "Finished width of the bound edge.", when=(("waistband.kind", ("bound",)),))] = 8.0
    facing_depth: Annotated[float, mm(
        "Facing", 30, 120, "How deep the facing lies inside.", when=(("waistband.kind", ("faced",)),))] = 60.0

    @property
    def depth(self) -> float:
        """How far the finished band stands above the waist seam, mm."""
        match self.kind:
            case "elastic":
                return self.elastic + CASING
            case "bound":
                return self.binding
            case "faced":
                return 0.0
        return self.width


CASING = 6.35
"""A casing is wider than its elastic by this (mm), so that it slides: 1/2 in in all (a magazine's method: casing cut
2 × elastic + 2 × allowance + 1/2 in)."""


class Opening(Record, frozen=True):
    """Where the skirt opens, and how."""

    kind: Annotated[Literal["invisible", "lapped", "centred", "placket", "wrap", "none"], one_of(
        "Kind", "A zip set in one of three ways, a buttoned placket, a wrap, or none where elastic stretches."
    )] = "invisible"
    place: Annotated[Literal["centre back", "side", "front"], one_of(
        "Place", "Where the skirt opens; at the side, it is the wearer’s left.", when=OPENS)] = "centre back"
    zip_stop: Annotated[float, mm(
        "Zip stop", 40, 600, "Where the opening ends, down from the waist seam.", step=5, when=SLIT)] = 200.0
    zip_on_hand: Annotated[float, mm(
        "Zip on hand", 50, 1000, "Length of a zip you have; empty to buy one.", step=5, usual=250,
        blank="to buy", when=ZIPPED)] | None = None
    buttons: Annotated[int, whole(
        "Buttons down it", 0, 20, "Below the band’s own; by length: about 5 cm apart.", blank="by length",
        when=(("opening.kind", ("placket",)),))] = 0
    overlap: Annotated[float, mm(
        "Overlap", 50, 800, "How far the two edges of a wrap lie over each other at the waist.", step=5,
        when=(("opening.kind", ("wrap",)),))] = 250.0


class Fastening(Record, frozen=True):
    """What closes the band."""

    kind: Annotated[Literal["buttons", "hook and bar", "snap"], one_of(
        "Kind", "What closes the band.", when=OPENS)] = "buttons"
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
        usual=25, blank="to fit", when=BUTTONED)] | None = None
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
    hem_kind: Annotated[Literal["turned twice", "single", "narrow", "faced"], one_of(
        "Hem kind", "Turned twice, or single with a neatened edge; narrow for round hems; faced for shaped ones."
    )] = "turned twice"
    hem: Annotated[float, mm(
        "Hem", 5, 200, "Below the hem line, the first turn included; empty for what suits skirt and cloth.", step=5,
        usual=40, blank="as suits", when=(("seams.hem_kind", ("turned twice", "single", "narrow")),))] | None = None
    first_turn: Annotated[float, mm(
        "First turn", 0, 30, "Turned under at the raw edge; 0 when it is neatened instead.",
        when=(("seams.hem_kind", ("turned twice",)),))] = 10.0
    hem_facing: Annotated[float, mm(
        "Hem facing", 20, 150, "How deep the facing lies inside.", when=(("seams.hem_kind", ("faced",)),))] = 50.0


class Pockets(Record, frozen=True):
    """Pockets: in the side seam, or set on."""

    kind: Annotated[Literal["none", "in seam", "patch"], one_of(
        "Kind", "In seam: bags in the side seams. Patch: set on the front.")] = "none"
    opening: Annotated[float, mm(
        "Hand opening", 100, 250, "How wide a hand goes in; 15 to 17 cm is usual.", step=5,
        when=(("pockets.kind", ("in seam",)),))] = 160.0
    top: Annotated[float, mm(
        "Below the waist", 0, 300, "From the waist seam to the top of the pocket.", step=5,
        when=(("pockets.kind", ("in seam", "patch")),))] = 60.0
    width: Annotated[float, mm(
        "Patch width", 80, 300, "Finished.", step=5, when=(("pockets.kind", ("patch",)),))] = 150.0
    depth: Annotated[float, mm(
        "Patch depth", 80, 350, "Finished.", step=5, when=(("pockets.kind", ("patch",)),))] = 170.0


LINED = (("lining.kind", ("straight", "A-line")),)


class Lining(Record, frozen=True):
    """A lining under the skirt."""

    kind: Annotated[Literal["none", "straight", "A-line"], one_of(
        "Kind", "Straight, or A-line for a longer step; its darts are laid as tucks.")] = "none"
    shorter: Annotated[float, mm(
        "Shorter by", 0, 200, "Than the skirt, hem to hem.", step=5, when=LINED)] = 25.0
    width: Annotated[float, mm("Cloth width", 300, 3200, "Of the lining cloth.", step=10, when=LINED)] = 1400.0


class PrintBand(Record, frozen=True):
    """A band of the print along the selvedge: from and to across the cloth, from its first edge (mm).

    `holds` says what should show it, and `by` what of that is laid on it: its hem line, its top (the seam line there)
    or its fold on the edge of the band that is nearer to a selvedge, or the middle of its face on the band's middle.
    `tops` is the edge of the cloth that the motif's top points to; where that is given, the piece lies so.
    """

    start: Annotated[float, Meta(ge=0, le=3200)]
    end: Annotated[float, Meta(ge=0, le=3200)]
    holds: Literal[
        "skirt", "waistband", "tier 1", "tier 2", "tier 3", "tier 4", "tier 5", "tier 6", "nothing"] = "skirt"
    by: Literal["hem", "top", "fold", "face centre"] = "hem"
    tops: Literal["either", "first", "second"] = "either"

    def __post_init__(self) -> None:  # noqa: D105
        if self.end <= self.start:
            raise ValueError("a band ends farther across than it starts")


class Held(Record, frozen=True):
    """A copy of a piece that lies where the maker has put it: the corner of its box from the cut end and from the first
    edge of the cloth, or its fold (mm); turned over, then turned by quarter turns in degrees.
    """

    piece: Annotated[str, Meta(max_length=40)]
    copy: Annotated[int, Meta(ge=0, le=999)]
    x: Annotated[float, Meta(ge=0, le=1_000_000)]
    y: Annotated[float, Meta(ge=0, le=3200)]
    turn: Literal[0, 90, 180, 270] = 0
    over: bool = False


class Cloth(Record, frozen=True):
    """The piece of cloth."""

    name: Annotated[str, short_text("Name", "What you call this cloth.")] = ""
    width: Annotated[float, mm("Width", 300, 3200, "Selvedge to selvedge.", step=10)] = 1400.0
    selvedge: Annotated[float, mm("Selvedge", 0, 80, "The unusable edge, on each side.")] = 15.0
    on_hand: Annotated[float, mm(
        "On hand", 100, 100000, "Length you have; empty to buy what is needed.", step=50, usual=2000,
        blank="to buy")] | None = None
    lies: Annotated[Literal["open", "folded"], one_of(
        "Lies", "Open in a single layer, or folded along its length, selvedge on selvedge.")] = "open"
    one_way: Annotated[bool, yes_no(
        "One way", "Print, nap or sheen has a top: every piece lies the same way up.")] = False
    gap: Annotated[float, mm("Between pieces", 0, 50, "Room for the shears.")] = 0.0
    repeat: Annotated[float, mm(
        "Repeat", 5, 3000, "From a motif to the same motif along the selvedge; empty for a plain cloth.",
        usual=320, blank="none")] | None = None
    offset: Annotated[float, mm("First motif", 0, 3000, "From the cut end to where a motif starts.")] = 0.0
    bands: Annotated[tuple[PrintBand, ...], bands_of(
        "Bands", "Where the print runs in bands: from and to across the cloth, and what should show it.")] = ()
    held: Annotated[tuple[Held, ...], held_of(
        "Held", "Pieces that you have put in their place on the cloth; the rest is planned round them.")] = ()
    photo: Annotated[str, picture_of(
        "Picture", "A photograph of the cloth, laid flat, that shows under the pieces.")] = ""
    match: Annotated[bool, yes_no(
        "Match at seams", "The motif runs on across the seams: panels become whole repeats wide.")] = False
    shrinkage: Annotated[float, per_cent(
        "Shrinkage", 0, 0.2, "Lost along the length in the first wash; test a piece.")] = 0.0
    shrinkage_across: Annotated[float, per_cent(
        "Shrinkage across", 0, 0.2, "Lost across the width; bands are measured after the wash.")] = 0.0
    weight: Annotated[float, grams(
        "Weight", 20, 1000, "Grams a square metre; poplin is about 120, denim about 350.", usual=140,
        blank="not known")] | None = None
    price: Annotated[float, money(
        "Price", 0, 10000, "Of a metre, or a yard, in your own money.", usual=12.0, blank="not known")] | None = None

    @property
    def usable(self) -> float:
        """U (mm): the width between the selvedges; of folded cloth, from the fold to the selvedges."""
        return self.seen - (self.selvedge if self.lies == "folded" else 2 * self.selvedge)

    @property
    def washed(self) -> float:
        """The width that is left after the first wash, mm; bands and repeat are those of the washed cloth."""
        return self.width * (1 - self.shrinkage_across)

    @property
    def seen(self) -> float:
        """The width as it lies on the table, mm: half of it where it is folded."""
        return self.washed / 2 if self.lies == "folded" else self.washed


class Paper(Record, frozen=True):
    """What the pieces are printed on."""

    size: Annotated[Literal["A4", "A3", "US Letter", "roll"], one_of("Size", "The sheet in the printer.")] = "A4"
    roll_width: Annotated[float, mm(
        "Roll width", 280, 2000, "Across the roll.", step=10, when=(("paper.size", ("roll",)),))] = 914.4
    margin: Annotated[float, mm("Margin", 3, 30, "The edge the printer cannot reach.")] = 10.0
    overlap: Annotated[float, mm("Overlap", 8, 30, "The strip where sheets are glued.")] = 12.0
    panels: Annotated[Literal["template", "whole", "chalk list"], one_of(
        "Panels as", "A narrow template to move along, the whole panel, or distances only: pleats have no template.",
    )] = "template"
