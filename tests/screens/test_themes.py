"""The themes by name, and when none of their colours may be shown."""

from __future__ import annotations

import os

import pytest

from triage.holding import fields
from triage.screens import themes


def test_a_theme_is_found_by_the_name_that_people_write() -> None:
    """Each name that a holding may hold is a theme of the full screen, and the other way round."""
    assert {theme.name for theme in themes.THEMES} == set(fields.THEMES)
    assert [themes.theme_named(name).name for name in fields.THEMES] == list(fields.THEMES)


@pytest.mark.parametrize("name", ["", "moon", "Day"])
def test_without_such_a_name_it_is_night(name: str) -> None:
    """Where no theme has that name, the screen is dim and warm."""
    assert themes.theme_named(name) is themes.NIGHT


@pytest.mark.parametrize(
    ("env", "why"),
    [
        ({"NO_COLOR": "1", "TERM": "xterm-256color"}, "NO_COLOR is set"),
        ({"NO_COLOR": "false", "TERM": "xterm-256color"}, "NO_COLOR is set"),
        ({"NO_COLOR": "", "TERM": "xterm-256color"}, ""),
        ({"TERM": "xterm-256color"}, ""),
        ({"TERM": "xterm", "COLORTERM": "truecolor"}, ""),
        ({"TERM": "xterm"}, "16 colours"),
        ({"TERM": "linux"}, "16 colours"),
        ({"TERM": "linux", "NO_COLOR": "1"}, "NO_COLOR is set"),
    ],
)
def test_why_no_colour_may_be_shown(monkeypatch: pytest.MonkeyPatch, env: dict[str, str], why: str) -> None:
    """The person's NO_COLOR, if not empty, and a terminal whose colours nobody knows keep our colours out."""
    # https://no-color.org
    for name in ("NO_COLOR", "COLORTERM"):
        monkeypatch.delenv(name, raising=False)
    for name, value in env.items():
        monkeypatch.setenv(name, value)

    said = themes.why_colourless()

    assert why in said
    assert bool(said) == bool(why)
    assert "NO_COLOR" not in os.environ  # the screen library would turn grey, which is a colour too
