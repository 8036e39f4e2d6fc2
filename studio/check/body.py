"""Rules about the measurements themselves."""

from collections.abc import Iterator

from studio.words import phrase, tr

from .finding import Finding, Worked

USUAL = {"waist": ("Waist", 579.0, 1015.0), "hip": ("Hip", 788.0, 1283.0), "height": ("Height", 1472.0, 1829.0)}
"""Least and most of 260 women, mm: Heinz, Peterson, Johnson and Kerr, "Exploring Relationships in Body Dimensions",
Journal of Statistics Education 11(2), 2003. A fit, young sample: not a population."""


def measurement_unusual(w: Worked) -> Iterator[Finding]:
    """A measurement outside the range of a table of 260 women is read once more: a doubt, never a refusal. Where height
    and girths lie below it together, as a child's do, one note says that the table is no measure for that.
    """
    measured = {name: value for name in USUAL if (value := getattr(w.brief.body, name)) is not None}
    small = [name for name, value in measured.items() if value < USUAL[name][1]]
    if "height" in small and len(small) > 1:
        says = phrase("So small as this is none of the 260 women measured. The table says nothing of children.")
        yield Finding("measurement-unusual", "note", says, "body.height")
        measured = {name: value for name, value in measured.items() if name not in small}
    for name, value in measured.items():
        words, least, most = USUAL[name]
        if not least <= value <= most:
            says = phrase(
                "{w:word} {v} lies outside {a} to {b}, the range of 260 women measured. Read the tape once more.",
                w=tr(words), v=value, a=least, b=most,
            )  # fmt: skip
            yield Finding("measurement-unusual", "doubt", says, f"body.{name}")


def hip_smaller_than_waist(w: Worked) -> Iterator[Finding]:
    """Hips smaller than the waist do happen; the skirt then hangs from the waist, and the tape is read again."""
    hip, waist = w.brief.body.hip, w.brief.body.waist
    if hip is not None and hip < waist:
        says = phrase("Hips of {h} are less than the waist of {w}. Is one in the other’s place?", h=hip, w=waist)
        yield Finding("hip-smaller-than-waist", "note", says, "body.hip")
