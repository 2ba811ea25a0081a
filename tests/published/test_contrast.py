"""Contrast of every colour that a theme has of its own, by the formula of the W3C, as others have worked it."""

from __future__ import annotations

import re

import pytest
from rich.color import ColorSystem
from textual.color import Color
from textual.style import Style
from textual.theme import Theme

from tests.published.contrast import AAA, Rgb, contrast, luminance
from triage.screens.themes import STYLES, THEMES

OWN = [theme for theme in THEMES if not theme.ansi]
"""The themes that choose colours; the last leaves them to the terminal."""

GROUNDS = ("background", "surface")
"""The grounds that text stands on: a Textual screen's own and its widgets' surface."""


def rgb(code: str) -> Rgb:
    """Return `#rrggbb` as three numbers."""
    return (int(code[1:3], 16), int(code[3:5], 16), int(code[5:7], 16))


@pytest.mark.parametrize(
    ("one", "other", "published"),
    [
        # W3C, WCAG 2.2, definition of contrast ratio: it ranges from 1 to 21.
        ("#000000", "#ffffff", "21"),
        ("#ffffff", "#ffffff", "1"),
        # W3C, CSS Color Module Level 5, working drafts of 2021, the example of choosing by contrast: wheat
        # against tan, sienna and firebrick.
        ("#f5deb3", "#d2b48c", "1.501"),
        ("#f5deb3", "#a0522d", "4.273"),
        ("#f5deb3", "#b22222", "5.081"),
        # Deque University, "Check Text and Background for Sufficient Color Contrast", table of examples.
        ("#000000", "#ffff00", "19.56"),
        ("#0000ff", "#ffa500", "4.35"),
        ("#ffffff", "#800080", "9.42"),
        ("#008000", "#ff0000", "1.28"),
    ],
)
def test_formula_gives_the_published_ratios(one: str, other: str, published: str) -> None:
    """The formula gives the ratios that were published, whichever colour comes first."""
    # Some round the last figure and some cut it; the two ends of the scale are exact.
    figures = len(published.partition(".")[2])
    off = 10.0**-figures if figures else 1e-9
    assert contrast(rgb(one), rgb(other)) == pytest.approx(float(published), abs=off)
    assert contrast(rgb(other), rgb(one)) == contrast(rgb(one), rgb(other))


@pytest.mark.parametrize(
    ("code", "published"), [("#f5deb3", 0.749), ("#d2b48c", 0.482), ("#a0522d", 0.137), ("#b22222", 0.107)]
)
def test_formula_gives_the_published_luminances(code: str, published: float) -> None:
    """The same example of the W3C tells the luminance of each of its colours."""
    assert luminance(rgb(code)) == pytest.approx(published, abs=0.0005)


def variables(theme: Theme) -> dict[str, str]:
    """Return the names that a theme gives colours to, as Textual's app works them out."""
    return {**theme.to_color_system().generate(), **theme.variables}


def drawn(theme: Theme, style: str, ground: str) -> tuple[Color, Color]:
    """Return the colours of the letters and of what is behind them, reversed where the style says so."""
    names = variables(theme)
    parsed = Style.parse(style, names)
    assert parsed.foreground is not None, f"'{style}' names no colour in {theme.name}"
    behind = parsed.background or Color.parse(names[ground])
    assert parsed.foreground.a == behind.a == 1.0, "not solid, so its contrast can't be known"
    assert not parsed.dim, "how dim is drawn is the terminal's affair, so its contrast can't be known"
    return (behind, parsed.foreground) if parsed.reverse else (parsed.foreground, behind)


@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize("role", STYLES)
@pytest.mark.parametrize("theme", OWN, ids=lambda theme: theme.name)
def test_every_style_has_seven_to_one_in_every_theme(theme: Theme, role: str, ground: str) -> None:
    """Every kind of line stands at 7:1 or more on its ground, in every theme with colours of its own."""
    # W3C, WCAG 2.2, success criterion 1.4.6.
    letters, behind = drawn(theme, STYLES[role], ground)
    assert contrast(letters.rgb, behind.rgb) >= AAA, (letters, behind)


@pytest.mark.parametrize("role", STYLES)
@pytest.mark.parametrize("theme", OWN, ids=lambda theme: theme.name)
def test_a_terminal_of_256_colours_keeps_the_contrast(theme: Theme, role: str) -> None:
    """Where only 256 colours can be shown, the nearest of them stand at 7:1 or more as well."""
    # W3C, WCAG 2.2, success criterion 1.4.6. The colours from 16 on are the same in every terminal that has
    # them; the first 16 are whatever the person chose, so no theme may come down to one of those.
    near = [
        colour.rich_color.downgrade(ColorSystem.EIGHT_BIT)
        for colour in drawn(theme, STYLES[role], "background")
    ]
    assert all(each.number is not None and each.number >= 16 for each in near)
    letters, behind = (each.get_truecolor() for each in near)
    assert contrast(letters, behind) >= AAA, (letters, behind)


def test_reverse_swaps_the_colours() -> None:
    """A reversed style is drawn with its colour behind letters in the ground's colour."""
    # ECMA-48 (1991), graphic rendition 7, negative image: from memory.
    theme = THEMES[0]
    letters, behind = drawn(theme, "$warning", "background")
    assert drawn(theme, "reverse $warning", "background") == (behind, letters)


def test_names_are_resolved_and_not_guessed() -> None:
    """Each name in a style is a colour of each theme, and the styles of a theme are those it was given."""
    for theme in OWN:
        names = variables(theme)
        for style in STYLES.values():
            for name in re.findall(r"\$([a-z-]+)", style):
                assert re.fullmatch("#[0-9A-Fa-f]{6}", names[name]), (theme.name, name)
        # Textual carries colours through HSL, which may move a channel by one step of 255.
        given = Color.parse(theme.primary)
        resolved = Color.parse(names["primary"])
        assert max(abs(a - b) for a, b in zip(given.rgb, resolved.rgb, strict=True)) <= 1
