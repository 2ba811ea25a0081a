"""Every kind of screen, at three sizes, as it was last approved."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytest_snapshot.plugin import Snapshot

from tests.screens.conftest import PLACES, go_to, night, screen_of
from triage.guide.model import Guide
from triage.screens.app import LambApp

SIZES = {"wide": (120, 36), "usual": (80, 24), "phone": (44, 20), "tiny": (30, 15)}


@pytest.mark.parametrize("size", SIZES)
async def test_every_kind_of_screen_reads_as_it_should(
    guide: Guide, tmp_path: Path, snapshot: Snapshot, size: str
) -> None:
    """The list, each page of a walk, the lamb, its card, the forms, the vet and the holding are unchanged."""
    snapshot.snapshot_dir = f"tests/snapshots/kinds-{size}"
    app = LambApp(night(guide, tmp_path))
    async with app.run_test(size=SIZES[size]) as pilot:
        shown = {}
        for place in PLACES:
            await go_to(pilot, guide, tmp_path, place)
            shown[f"{place}.txt"] = screen_of(pilot)
    for name, text in shown.items():
        snapshot.assert_match(text, name)


@pytest.mark.parametrize("size", [(80, 24), (44, 20), (30, 15), (20, 8), (200, 60)])
async def test_nothing_is_cut_without_a_sign(guide: Guide, tmp_path: Path, size: tuple[int, int]) -> None:
    """On no screen of any size is a line wider than the screen, and what does not fit says that there is more."""
    app = LambApp(night(guide, tmp_path))
    async with app.run_test(size=size) as pilot:
        for place in PLACES:
            await go_to(pilot, guide, tmp_path, place)
            text = screen_of(pilot)
            assert all(len(line) <= size[0] for line in text.splitlines()), place
            if app.view.top < app.view.bottom and app.view.rows > 1:
                assert "more below"[: size[0] - 2] in text, place


async def test_words_are_typed_pasted_and_kept_whole(guide: Guide, tmp_path: Path) -> None:
    """A note of 10,000 signs with markup and control codes is shown inert and stored whole."""
    from textual.events import Paste

    hostile = "[/] [bold]" + "\u202e" + "x" * 10_000
    app = LambApp(night(guide, tmp_path))
    async with app.run_test(size=(44, 20)) as pilot:
        await go_to(pilot, guide, tmp_path, "note-words")
        app.on_paste(Paste(hostile))
        await pilot.press("enter")
        await pilot.pause()
        text = screen_of(pilot)
        book, lamb = app.session.desk.keeping.book, app.session.desk.keeping.lamb
        kept = book.observations_of(lamb.id)  # type: ignore[union-attr]

    assert kept[-1].parts == {"note": f"It{hostile}"}  # type: ignore[index]
    assert "\u202e" not in text
    assert "It[/] [bold]x" in text


async def test_much_typed_text_is_not_thrown_away_by_one_key(guide: Guide, tmp_path: Path) -> None:
    """Esc in a box with a sentence asks first; the arrow that moves no cursor loses nothing."""
    app = LambApp(night(guide, tmp_path))
    async with app.run_test() as pilot:
        await go_to(pilot, guide, tmp_path, "note-words")
        await pilot.press(*"a sentence of some length", "left", "escape")
        assert "Ita sentence of some length" in screen_of(pilot)
        assert "throws away" in screen_of(pilot)
        await pilot.press("escape")
        await pilot.pause()
        assert "sentence" not in screen_of(pilot)


async def test_tab_opens_the_vets_page_from_a_box(guide: Guide, tmp_path: Path) -> None:
    """Where every letter is text, one key still leads to the vet's page, and back to what was typed for."""
    app = LambApp(night(guide, tmp_path))
    async with app.run_test() as pilot:
        await go_to(pilot, guide, tmp_path, "note-words")
        await pilot.press("tab")
        await pilot.pause()
        assert "Phone the vet" in screen_of(pilot)
        await pilot.press("b")
        await pilot.pause()
        assert "What do you want to remember?" in screen_of(pilot)


async def test_a_time_is_typed_on_a_list_of_choices(guide: Guide, tmp_path: Path) -> None:
    """On a form's list, `at 1:30` goes into the box, letter by letter, and is told."""
    app = LambApp(night(guide, tmp_path))
    async with app.run_test() as pilot:
        await go_to(pilot, guide, tmp_path, "note-feed")
        await pilot.press(*"at", "space", *"1:30", "enter")
        await pilot.pause()
        assert "At 01:30." in screen_of(pilot)


async def test_a_due_look_rings_the_bell(
    guide: Guide, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """While the app is open and nothing is pressed, a look that comes due rings and is said."""
    rung = []
    monkeypatch.setattr(LambApp, "bell", lambda self: rung.append(1))
    app = LambApp(night(guide, tmp_path))
    async with app.run_test() as pilot:
        app.look_at_the_clock()
        app.look_at_the_clock()
        await pilot.pause()
        assert "Look again now: Blue 7." in screen_of(pilot)

    assert rung == [1]
