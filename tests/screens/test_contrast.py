"""Every text on every screen is read easily in every theme: 7 to 1 on its ground, as it is really drawn.

The formula and the limit are the W3C's, in `tests/published/contrast.py`. A new kind of screen is looked
at as soon as it stands in the list `PLACES`.
"""

from __future__ import annotations

from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from rich.color import Color, ColorSystem
from rich.segment import Segment
from rich.style import Style

from tests.published.contrast import AAA, contrast
from tests.screens.conftest import PLACES, go_to, night, segments_of
from triage.guide.model import Guide
from triage.screens.app import LambApp
from triage.screens.themes import TERMINAL, THEMES

OWN = [theme.name for theme in THEMES if not theme.ansi]
SIZES = [(120, 36), (80, 24), (44, 20), (30, 15), (20, 8)]
SYSTEMS = (ColorSystem.TRUECOLOR, ColorSystem.EIGHT_BIT)
"""What terminals can show: any colour, or the nearest of 256."""

MARKS = ("bold", "dim", "italic", "underline", "blink", "reverse", "conceal", "strike")
"""The ways in which a terminal can mark a text without a colour."""


def seen(style: Style, system: ColorSystem) -> tuple[Color, Color]:
    """Return the colours of letters and ground as they are seen; reversing turns them round."""
    assert style.color is not None
    assert style.bgcolor is not None
    assert not style.dim, "how dim is drawn is the terminal's affair, so its contrast can't be known"
    assert not style.conceal
    assert not style.blink
    letters, ground = style.color.downgrade(system), style.bgcolor.downgrade(system)
    return (ground, letters) if style.reverse else (letters, ground)


@pytest.mark.parametrize("theme", OWN)
@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_every_text_stands_out(guide: Guide, tmp_path: Path, theme: str, size: tuple[int, int]) -> None:
    """On every kind of screen, each sign that is drawn has a contrast of at least 7 to 1."""
    async for place, segments in drawn(guide, tmp_path, theme, size):
        styles = {segment.style for segment in segments}
        assert None not in styles, place
        for style in filter(None, styles):
            for system in SYSTEMS:
                letters, ground = (each.get_truecolor() for each in seen(style, system))
                said = [segment.text for segment in segments if segment.style == style]
                assert contrast(letters, ground) >= AAA, (place, system, letters, ground, said)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_the_terminal_theme_has_no_colour(guide: Guide, tmp_path: Path, size: tuple[int, int]) -> None:
    """With the terminal's own colours every sign is in its two defaults, so its contrast is the person's own.

    Weight and reversing are the only marks.
    """
    marks = set()
    async for place, segments in drawn(guide, tmp_path, TERMINAL.name, size):
        for style in {segment.style for segment in segments} - {None}:
            assert style is not None
            assert style.color is None or style.color.is_default, (place, style)
            assert style.bgcolor is None or style.bgcolor.is_default, (place, style)
            marks |= {name for name in MARKS if getattr(style, name)}
    assert marks == {"bold", "reverse"}


async def drawn(
    guide: Guide, folder: Path, theme: str, size: tuple[int, int]
) -> AsyncIterator[tuple[str, list[Segment]]]:
    """Yield every kind of screen with its visible segments, all in one run of the app."""
    app = LambApp(night(guide, folder))
    app.theme = theme
    async with app.run_test(size=size) as pilot:
        assert app.theme == theme
        for place in PLACES:
            await go_to(pilot, guide, folder, place)
            segments = [segment for segment in segments_of(pilot) if segment.text.strip()]
            assert segments, place
            yield place, segments
