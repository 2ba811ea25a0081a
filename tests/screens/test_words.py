"""The words of a page on the full screen: on a phone they are paged to like everything else."""

from __future__ import annotations

import pytest

from tests.screens.conftest import app_of, screen_of
from triage.guide.model import Guide
from triage.screens.view import MORE

FIRST_MILK = ["6", *"39.3", "enter", "1", "5", *"2h", "enter", "6", *"4.2kg", "enter"]


@pytest.mark.parametrize("size", [(80, 24), (44, 20), (30, 10)])
async def test_every_word_can_be_paged_to(guide: Guide, size: tuple[int, int]) -> None:
    """From `?`, space after space shows each trade word of the page, to the last line."""
    async with app_of(guide).run_test(size=size) as pilot:
        await pilot.press(*FIRST_MILK, "?")
        await pilot.pause()
        seen = screen_of(pilot)
        for _ in range(40):
            if MORE not in screen_of(pilot):
                break
            await pilot.press("space")
            await pilot.pause()
            seen += screen_of(pilot)

        assert MORE not in screen_of(pilot)
        assert "Words" in seen
        for word in ("abort: ", "first milk: ", "navel: ", "suck: "):
            assert word in seen
