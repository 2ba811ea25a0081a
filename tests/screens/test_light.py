"""The light in a real terminal: no colour where none is wanted or none can be relied on, and none left behind."""

from __future__ import annotations

import signal

import pytest

from tests.screens.in_terminal import COLOURS, FIRST, all_written, opened, wait_for, what_is_left
from triage.screens.themes import THEMES

LIGHTS = [theme.name for theme in THEMES]


@pytest.mark.parametrize("light", ["", "day"])
def test_no_color_means_no_colour_at_all(light: str) -> None:
    """With NO_COLOR set not one colour is sent, whatever light the holding has, nor by the key for the light."""
    # https://no-color.org
    child = opened(light, NO_COLOR="1")
    for key, text in (
        ("t", "NO_COLOR is set"),
        ("\x1b[B", ">1"),
        ("?", "why"),
        ("b", FIRST),
        ("6", "temperature"),
        ("36.2", "36.2_"),
        ("\r", "Phone the vet now"),
    ):
        child.send(key)
        wait_for(child, text)
    child.send("\x03")
    written = all_written(child)

    assert not COLOURS.search(written)
    assert "\x1b[1;39;49m" in written  # a heading still stands out by its weight
    assert "\x1b[1;7;39;49m" in written  # and the call by being reversed


@pytest.mark.parametrize("light", LIGHTS)
def test_an_empty_no_color_does_not_count(light: str) -> None:
    """An empty NO_COLOR leaves the light as it was chosen."""
    # https://no-color.org
    child = opened(light, NO_COLOR="")
    child.send("\x03")

    assert bool(COLOURS.search(all_written(child))) == (light != "terminal")


def test_sixteen_colours_are_not_relied_on() -> None:
    """What 16 colours look like is the terminal's affair, so such a one keeps its own two, and the key says why."""
    child = opened("day", TERM="xterm")
    child.send("t")
    wait_for(child, "only 16 colours")
    child.send("\x03")

    assert not COLOURS.search(all_written(child))


def test_the_key_goes_through_every_light() -> None:
    """t shows the next light, each by its name, and comes back to the first."""
    child = opened("stark")
    at = LIGHTS.index("stark")
    for light in (*LIGHTS[at + 1 :], *LIGHTS[: at + 1]):
        child.send("t")
        wait_for(child, f"Light: {light}.")
    child.send("\x03")
    all_written(child)


@pytest.mark.parametrize("light", LIGHTS)
@pytest.mark.parametrize("ending", [None, signal.SIGTERM, signal.SIGHUP])
def test_the_terminal_is_left_as_it_was(light: str, ending: signal.Signals | None) -> None:
    """Ctrl-C or a signal, under each light: screen, cursor, mouse, keys and colours are given back."""
    child = opened(light)
    child.send("1")
    wait_for(child, "Phone the vet now")
    if ending:
        child.kill(ending)
    else:
        child.send("\x03")
    written = all_written(child)

    assert "\x1b[?1049h" in written
    assert what_is_left(child, written) == []
    assert "Traceback" not in written
    assert child.exitstatus == 0
