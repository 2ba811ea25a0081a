"""Colours: each text at least 7:1 on its ground (WCAG 2.2, success criterion 1.4.6), by a test.

Night is dim and warm: amber on black keeps more of the eye's adaptation than white does. Terminal has
no colour of its own: it takes the terminal's two, and marks by weight and by reversing alone, so that its
contrast is the one that the person has chosen.
"""

from __future__ import annotations

import os

from rich.console import Console
from textual import constants
from textual.theme import BUILTIN_THEMES, Theme

NIGHT = Theme(
    name="night",
    primary="#ffc04d",
    secondary="#d9a45b",
    accent="#ffd27a",
    foreground="#e8a33d",
    background="#000000",
    surface="#000000",
    panel="#1a0d00",
    error="#3a1200",
    warning="#ffc04d",
    dark=True,
)

DAY = Theme(
    name="day",
    primary="#1f3a1d",
    secondary="#44403a",
    accent="#123d52",
    foreground="#1d1b18",
    background="#fbf7ee",
    surface="#fbf7ee",
    panel="#efe7d6",
    error="#f7d9c9",
    warning="#6b1f00",
    dark=False,
)

STARK = Theme(
    name="stark",
    primary="#ffffff",
    secondary="#ffffff",
    accent="#ffff66",
    foreground="#ffffff",
    background="#000000",
    surface="#000000",
    panel="#000000",
    error="#000000",
    warning="#ffff66",
    dark=True,
)

TERMINAL = Theme(
    name="terminal",
    ansi=True,
    primary="ansi_default",
    secondary="ansi_default",
    accent="ansi_default",
    foreground="ansi_default",
    background="ansi_default",
    surface="ansi_default",
    panel="ansi_default",
    boost="ansi_default",
    error="ansi_default",
    warning="ansi_default",
    success="ansi_default",
    dark=True,
    # The library's own styles name these; every one of them is the terminal's own colour here.
    variables=dict.fromkeys(BUILTIN_THEMES["ansi-dark"].variables, "ansi_default"),
)

THEMES = (NIGHT, DAY, STARK, TERMINAL)
"""In the order in which one key goes through them."""


def theme_named(name: str) -> Theme:
    """Return a theme by its name; night where there is none of that name."""
    return next((theme for theme in THEMES if theme.name == name), NIGHT)


def why_colourless() -> str:
    """Return why nothing but the terminal's own two colours may be shown; empty where all may.

    What 16 colours look like is up to each terminal, so that no contrast of ours would hold in them.
    """
    # By the no-color convention an empty value does not count. Textual would only turn grey, which is
    # colour too, so it never sees the variable.
    if os.environ.pop("NO_COLOR", ""):
        return "NO_COLOR is set for this terminal"
    shown = Console(force_terminal=True, color_system=constants.COLOR_SYSTEM).color_system  # type: ignore[arg-type]
    return "" if shown in ("256", "truecolor") else "This terminal has only 16 colours"


STYLES = {
    "heading": "bold $primary",
    "body": "$foreground",
    "label": "bold $secondary",
    "step": "$foreground",
    "caution": "$warning",
    "choice": "$foreground",
    "quiet": "$secondary",
    "urgent": "bold reverse $warning",
    "blank": "$foreground",
    "title": "$secondary",
    "picked": "bold $accent",
    "typed": "bold $accent",
    "told": "bold $warning",
    "keys": "$secondary",
}
"""The style of each kind of line; colour never carries a meaning that the words do not."""
