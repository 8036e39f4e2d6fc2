"""Colours that can be read: the contrasts of both themes."""

import pytest

from studio.window.tokens import DARK, LIGHT, Theme

WORDS, LINES = 4.5, 3.0
"""WCAG 2.2, success criteria 1.4.3 (words, level AA) and 1.4.11 (what is not words)."""

GROUNDS = ("chrome", "panel", "field", "board", "tissue", "plate")
WEIGHTS = ("note", "doubt", "stop")
PAIRS = [
    *((voice, ground, WORDS) for voice in ("ink", "quiet", "accent") for ground in GROUNDS),
    *((weight, ground, WORDS) for weight in WEIGHTS for ground in ("chrome", "panel", "field", f"{weight}_bg")),
    *(("ink", f"{weight}_bg", WORDS) for weight in WEIGHTS),
    ("ink", "hover", WORDS),
    ("quiet", "hover", WORDS),
    ("on_accent", "accent", WORDS),
    ("on_accent", "accent_deep", WORDS),
    ("gather", "tissue", WORDS),
    *(("edge", ground, LINES) for ground in ("chrome", "panel", "field")),
    *(("accent", f"{weight}_bg", LINES) for weight in WEIGHTS),
    *(("quiet", f"{weight}_bg", LINES) for weight in WEIGHTS),
]


def luminance(shade: str) -> float:
    """Relative luminance of #RRGGBB, as WCAG 2.2 defines it."""
    parts = [int(shade[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21, as WCAG 2.2 defines it."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_the_contrast_formula_gives_the_known_ratios() -> None:
    """Black on white is 21:1 (WCAG's own example); #767676 is the lightest grey with 4.5:1 on white (W3C, G18)."""
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)
    assert contrast("#777777", "#FFFFFF") < 4.5 <= contrast("#767676", "#FFFFFF")


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
@pytest.mark.parametrize(("shade", "ground", "least"), PAIRS)
def test_words_and_lines_stand_out_from_every_ground_they_stand_on(
    theme: Theme, shade: str, ground: str, least: float
) -> None:
    """Words can be read and lines seen by day and by night."""
    assert contrast(getattr(theme, shade), getattr(theme, ground)) >= least


def test_the_plate_is_the_only_thing_in_its_colour() -> None:
    """What is lit is never mistaken for something else."""
    for theme in (LIGHT, DARK):
        others = [getattr(theme, name) for name in Theme.__struct_fields__ if name != "plate"]
        assert theme.plate not in others
