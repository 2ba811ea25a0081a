"""Contrast of every colour on the screen, by the formula of the W3C.

W3C, Web Content Accessibility Guidelines 2.2 (2023): relative luminance and contrast ratio are defined in its
glossary; success criterion 1.4.6 asks for at least 7:1.
"""

from __future__ import annotations

import re

import pytest
from textual.color import Color
from textual.style import Style
from textual.theme import Theme

from triage.screens.themes import STYLES, THEMES

GROUNDS = ("background", "surface")
"""The grounds that text stands on: a Textual screen's own and its widgets' surface."""


def luminance(colour: str) -> float:
    """Return the relative luminance of `#rrggbb`, as WCAG 2.2 defines it."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colours, 1 to 21, as WCAG 2.2 defines it."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


@pytest.mark.parametrize(
    ("one", "other", "published"),
    [
        ("#000000", "#ffffff", 21.0),
        ("#ffffff", "#ffffff", 1.0),
        ("#777777", "#ffffff", 4.48),
        ("#767676", "#ffffff", 4.54),
        ("#ff0000", "#000000", 5.25),
        ("#ff0000", "#ffffff", 4.0),
        ("#0000ff", "#ffffff", 8.59),
    ],
)
def test_formula_gives_the_published_ratios(one: str, other: str, published: float) -> None:
    """The formula gives 21:1 for black on white, 4.48:1 for #777777 on white, and other well-known pairs."""
    # W3C, WCAG 2.2 (ratios run from 1 to 21); the others are often printed, WebAIM among them, and are typed
    # here from memory.
    assert contrast(one, other) == pytest.approx(published, abs=0.005)
    assert contrast(other, one) == contrast(one, other)


def variables(theme: Theme) -> dict[str, str]:
    """Return the names that a theme gives colours to, as Textual's app works them out."""
    return {**theme.to_color_system().generate(), **theme.variables}


def drawn(theme: Theme, style: str, ground: str) -> tuple[str, str]:
    """Return the colours of the letters and of what is behind them, reversed where the style says so."""
    names = variables(theme)
    parsed = Style.parse(style, names)
    assert parsed.foreground is not None, f"'{style}' names no colour in {theme.name}"
    behind = parsed.background.hex if parsed.background else Color.parse(names[ground]).hex
    letters = parsed.foreground.hex
    assert re.fullmatch("#[0-9A-F]{6}", letters), f"{letters} is not solid, so its contrast can't be known"
    assert re.fullmatch("#[0-9A-F]{6}", behind), f"{behind} is not solid, so its contrast can't be known"
    return (behind, letters) if parsed.reverse else (letters, behind)


@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize("role", STYLES)
@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_every_style_has_seven_to_one_in_every_theme(theme: Theme, role: str, ground: str) -> None:
    """Every kind of line stands at 7:1 or more on its ground, in every theme."""
    # W3C, WCAG 2.2, success criterion 1.4.6.
    letters, behind = drawn(theme, STYLES[role], ground)
    assert contrast(letters, behind) >= 7.0, (letters, behind)


def test_reverse_swaps_the_colours() -> None:
    """A reversed style is drawn with its colour behind letters in the ground's colour."""
    # ECMA-48 (1991), graphic rendition 7, negative image: from memory.
    theme = THEMES[0]
    letters, behind = drawn(theme, "$warning", "background")
    assert drawn(theme, "reverse $warning", "background") == (behind, letters)


def test_names_are_resolved_and_not_guessed() -> None:
    """Each name in a style is a colour of each theme, and the styles of a theme are those it was given."""
    for theme in THEMES:
        names = variables(theme)
        for style in STYLES.values():
            for name in re.findall(r"\$([a-z-]+)", style):
                assert re.fullmatch("#[0-9A-Fa-f]{6}", names[name]), (theme.name, name)
        # Textual carries colours through HSL, which may move a channel by one step of 255.
        given = Color.parse(theme.primary)
        resolved = Color.parse(names["primary"])
        assert max(abs(a - b) for a, b in zip(given.rgb, resolved.rgb, strict=True)) <= 1
