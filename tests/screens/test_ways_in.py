"""The other ways in on the full screen."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.conftest import small_guide
from tests.screens.conftest import NOW, app_of, screen_of
from tests.ways import WAYS_IN
from triage.casebook.opening import Opened, open_casebook
from triage.screens.app import LambApp
from triage.session import Session
from triage.session.desk import House
from triage.session.keeping import Keeping
from triage.walk import Walk


@pytest.mark.parametrize("size", [(80, 24), (44, 20)])
async def test_the_first_page_shows_the_way_and_one_key_goes_there(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    """Two keys from the first question to the ewe's danger signs, on a phone too."""
    async with app_of(small_guide(tmp_path, *WAYS_IN)).run_test(size=size) as pilot:
        await pilot.pause()
        assert "one found dead? Press o." in screen_of(pilot)
        await pilot.press("o")
        await pilot.pause()
        assert "e  A ewe in trouble" in screen_of(pilot)
        await pilot.press("e")
        await pilot.pause()
        assert "Is the ewe down?" in screen_of(pilot)


async def test_letters_take_no_digit_from_the_lambs(tmp_path: Path) -> None:
    """With eight lambs on the list one digit still opens a lamb at once, and a letter a way."""
    guide = small_guide(tmp_path / "guide", *WAYS_IN)
    opened = open_casebook(tmp_path / "casebook.sqlite")
    assert isinstance(opened, Opened)
    session = Session(Walk(guide), clock=lambda: NOW, house=House(Keeping(opened.book)))
    for _ in range(8):
        session.take("1")
        session.take("o")
        session.take("1")
    session.open("lambs")
    async with LambApp(session, ascii_only=False).run_test(size=(80, 24)) as pilot:
        await pilot.press("9")
        await pilot.pause()
        assert session.page().kind == "ask"
        await pilot.press("o", "f")
        await pilot.pause()
        assert session.walk.node.name == "flock"
    opened.book.close()
