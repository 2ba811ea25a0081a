"""Every text in every theme is read easily: 7 to 1 on its ground, and never by colour alone.

The formula: WCAG 2.2, definitions of relative luminance and of contrast ratio; the limit: success
criterion 1.4.6 (level AAA). https://www.w3.org/TR/WCAG22/
"""

from __future__ import annotations

from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from rich.segment import Segment
from textual.color import Color

from tests.screens.conftest import PLACES, go_to, night
from triage.guide.model import Guide
from triage.screens.app import LambApp
from triage.screens.themes import TERMINAL, THEMES

AAA = 7.0
OWN = [theme.name for theme in THEMES if not theme.ansi]


def luminance(rgb: tuple[int, int, int]) -> float:
    """Relative luminance (WCAG 2.2): channels linearised at 0.04045, then weighted."""
    linear = [
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in (each / 255 for each in rgb)
    ]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: tuple[int, int, int], other: tuple[int, int, int]) -> float:
    """Contrast ratio (WCAG 2.2): (L1 + 0.05) / (L2 + 0.05), the lighter first."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ((0, 0, 0), (255, 255, 255), 21.0),  # WCAG 2.2, contrast ratio: ranges from 1 to 21
        ((255, 255, 255), (255, 255, 255), 1.0),
        ((255, 0, 0), (255, 255, 255), 4.0),  # W3C, Understanding SC 1.4.3: pure red on white is 4:1
        (
            (119, 119, 119),
            (255, 255, 255),
            4.48,
        ),  # W3C, technique G18's note on rounding: #777 is 4.47 to 4.48
        ((255, 0, 0), (0, 0, 0), 5.25),
    ],
)
def test_the_formula_gives_the_published_ratios(
    one: tuple[int, int, int], other: tuple[int, int, int], ratio: float
) -> None:
    """The formula here agrees with ratios that the W3C names."""
    assert contrast(one, other) == pytest.approx(ratio, abs=0.011)


def colours(segment: Segment) -> tuple[Color, Color]:
    """The colours that a segment is really seen in; reverse turns them round."""
    assert segment.style is not None
    style = segment.style
    assert style.color is not None
    assert style.bgcolor is not None
    assert not style.dim
    pair = Color.from_rich_color(style.color), Color.from_rich_color(style.bgcolor)
    return (pair[1], pair[0]) if style.reverse else pair


@pytest.mark.parametrize("theme", OWN)
@pytest.mark.parametrize("size", [(80, 24), (44, 20), (30, 15)])
async def test_every_text_stands_out(guide: Guide, tmp_path: Path, theme: str, size: tuple[int, int]) -> None:
    """On every kind of screen, each sign that is drawn has a contrast of at least 7 to 1."""
    async for place, segments in drawn(guide, tmp_path, theme, size):
        for segment in segments:
            fore, back = colours(segment)
            assert contrast(fore.rgb, back.rgb) >= AAA, (place, segment.text, fore, back)


async def test_the_terminal_theme_has_no_colour(guide: Guide, tmp_path: Path) -> None:
    """With the terminal's own colours every sign is in its two defaults, so its contrast is the person's own."""
    async for place, segments in drawn(guide, tmp_path, TERMINAL.name, (80, 24)):
        for segment in segments:
            style = segment.style
            assert style is None or style.color is None or style.color.is_default, (place, segment)
            assert style is None or style.bgcolor is None or style.bgcolor.is_default, (place, segment)


async def drawn(
    guide: Guide, folder: Path, theme: str, size: tuple[int, int]
) -> AsyncIterator[tuple[str, list[Segment]]]:
    """Yield every kind of screen with its visible segments, all in one run of the app."""
    app = LambApp(night(guide, folder))
    app.theme = theme
    async with app.run_test(size=size) as pilot:
        for place in PLACES:
            await go_to(pilot, guide, folder, place)
            strips = app.screen._compositor.render_strips()
            segments = [segment for strip in strips for segment in strip if segment.text.strip()]
            assert segments
            yield place, segments
