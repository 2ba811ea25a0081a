"""The full screen, driven by keys, at the sizes people have."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from pytest_snapshot.plugin import Snapshot

from tests.conftest import small_guide
from tests.screens.conftest import app_of, go_to, screen_of
from triage.facts import UNSURE, Facts
from triage.guide.model import End, Finding, Guide
from triage.page.lines import lay_out
from triage.page.page import Block, Choice, Page
from triage.page.words import Reader
from triage.screens.app import LambApp
from triage.screens.themes import THEMES
from triage.screens.view import View, body_lines, head_lines, key_lines
from triage.session.signing import SigningRoom
from triage.walk import Walk

COLD = ["5", *"36.2", "enter", *"3h", "enter"]
FIRST_MILK = ["6", *"39.3", "enter", "1", "5", *"2h", "enter", "6", *"4.2kg", "enter"]
SIZES = {"wide": (120, 40), "usual": (80, 24), "phone": (44, 20), "tiny": (30, 10)}


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize(("name", "keys"), [("first", []), ("act", COLD), ("end", FIRST_MILK)])
async def test_the_screen_reads_as_it_should(
    guide: Guide, snapshot: Snapshot, name: str, keys: list[str], size: str
) -> None:
    """A question, an act and an end at each size are what they were when last approved."""
    snapshot.snapshot_dir = "tests/snapshots/screens"
    async with app_of(guide).run_test(size=SIZES[size]) as pilot:
        await pilot.press(*keys)
        await pilot.pause()

        snapshot.assert_match(screen_of(pilot), f"{name}-{size}.txt")


async def test_a_danger_sign_rings_in_one_key(guide: Guide) -> None:
    """From opening the guide, one key on a danger sign puts the call on the screen."""
    async with app_of(guide).run_test() as pilot:
        await pilot.press("1")
        await pilot.pause()

        assert "Phone the vet now" in screen_of(pilot)
        assert "01632 960111" in screen_of(pilot)


async def test_a_time_of_birth_is_typed_as_the_page_says(guide: Guide) -> None:
    """Words go into the box on a question that takes a measurement: `born 23:30` works letter by letter."""
    async with app_of(guide).run_test() as pilot:
        await pilot.press("5", *"36.2", "enter", *"born", "space", *"23:30")
        await pilot.pause()
        assert "> born 23:30_" in screen_of(pilot)

        await pilot.press("enter")
        await pilot.pause()
        assert "Taken as born 23:30" in screen_of(pilot)
        assert pilot.app.session.walk.state.known["age"] == 2.67  # type: ignore[attr-defined]


async def test_b_and_enter_go_back_from_a_measurement_too(guide: Guide) -> None:
    """Esc goes back at once, and so does b sent with Enter."""
    async with app_of(guide).run_test() as pilot:
        await pilot.press("6", "b", "enter")
        assert pilot.app.session.walk.moves == ()  # type: ignore[attr-defined]

        await pilot.press("6", "escape")
        assert pilot.app.session.walk.moves == ()  # type: ignore[attr-defined]


async def test_what_is_typed_can_be_mended(guide: Guide) -> None:
    """Backspace takes one sign away and never a step; Esc clears the box first, then goes back."""
    async with app_of(guide).run_test() as pilot:
        await pilot.press("6", *"392", "backspace")
        await pilot.pause()
        assert "> 39_" in screen_of(pilot)

        await pilot.press("backspace", "backspace", "backspace", "backspace")
        await pilot.pause()
        assert "> _" in screen_of(pilot)
        assert "What is its temperature?" in screen_of(pilot)

        await pilot.press("3", "escape", "escape")
        await pilot.pause()
        assert "Do you see any of these now?" in screen_of(pilot)


async def test_a_slip_is_told_and_the_box_is_empty_again(guide: Guide) -> None:
    """392 is refused in a sentence, and the next try starts in an empty box."""
    async with app_of(guide).run_test() as pilot:
        await pilot.press("6", *"392", "enter")
        await pilot.pause()
        assert "Did you mean 39.2?" in screen_of(pilot)

        await pilot.press(*"39.2", "enter")
        await pilot.pause()
        assert pilot.app.session.walk.state.known["temperature"] == 39.2  # type: ignore[attr-defined]


async def test_an_odd_weight_can_be_insisted_on(guide: Guide) -> None:
    """An odd weight is asked again; the same typed once more keeps it."""
    async with app_of(guide).run_test() as pilot:
        await pilot.press("6", *"39.2", "enter", "1", "5", *"3h", "enter", "6", *"42lb", "enter")
        await pilot.pause()
        assert "is unusual" in screen_of(pilot)

        await pilot.press(*"42lb", "enter")
        await pilot.pause()
        assert "First milk now, by bottle" in screen_of(pilot)


async def test_a_stray_enter_does_not_pass_an_act(guide: Guide) -> None:
    """Enter after a choice does not mark what to do as done; d does, once all of it has been seen."""
    async with app_of(guide).run_test(size=(44, 12)) as pilot:
        await pilot.press(*COLD, "enter", "enter")
        await pilot.pause()
        assert "Dry it and warm it" in screen_of(pilot)
        assert "press d when it is done" in " ".join(screen_of(pilot).split())

        await pilot.press("d")
        await pilot.pause()
        assert pilot.app.session.walk.state.times == {}  # type: ignore[attr-defined]

        await pilot.press(*"dddddd")
        await pilot.pause()
        assert pilot.app.session.walk.state.times == {"warm-by-thermometer": 1}  # type: ignore[attr-defined]


async def test_nothing_is_signed_before_it_was_shown_to_its_end(
    guide: Guide, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A digit that signs shows more of a long statement first; one that puts it off is taken at once."""
    monkeypatch.chdir(tmp_path)
    async with app_of(guide).run_test(size=(80, 24)) as pilot:
        await go_to(pilot, guide, tmp_path, "sign-page")
        app = pilot.app
        assert isinstance(app, LambApp)
        room = app.session.room
        assert isinstance(room, SigningRoom)
        assert room.signing
        assert app.view.top < app.view.bottom
        await pilot.press("down", "enter")  # the choice is in view; what stands above it is not
        assert room.signing.at == 0
        told = 0
        while app.view.unread:
            await pilot.press("1")
            assert room.signing.at == 0
            told += 1
        assert told
        assert "It is right as it stands" in screen_of(pilot)

        await pilot.press("1")
        assert room.signing.at == 1
        assert app.view.top == 0
        await pilot.press("4")
        assert room.signing.at == 2


async def test_a_new_size_is_laid_out_at_once(guide: Guide) -> None:
    """A resized window shows the page for its new size with no key pressed."""
    async with app_of(guide).run_test(size=(80, 24)) as pilot:
        await pilot.press(*COLD)
        await pilot.resize_terminal(30, 10)
        await pilot.pause()
        await pilot.pause()
        assert "more below" in screen_of(pilot)

        await pilot.resize_terminal(80, 24)
        await pilot.pause()
        await pilot.pause()
        assert "Warm it in moving air no hotter than 40 °C at its back." in screen_of(pilot)


async def test_arrows_and_enter_choose_too(guide: Guide) -> None:
    """The arrows move a mark that does not need colour, and Enter takes it."""
    async with app_of(guide).run_test() as pilot:
        await pilot.press("down", "down")
        await pilot.pause()
        assert "> 2  Bleeding" in screen_of(pilot) or ">2  Bleeding" in screen_of(pilot)

        await pilot.press("enter")
        await pilot.pause()
        assert "Press a clean cloth firmly" in screen_of(pilot)


@pytest.mark.parametrize("size", [(80, 24), (44, 20), (30, 15), (30, 10), (20, 8)])
async def test_what_the_arrows_point_at_is_in_sight(guide: Guide, size: tuple[int, int]) -> None:
    """On a screen of any size the answer that Enter would take has a sign of its own, and is in view."""
    answers = [*"123456n"]
    async with app_of(guide).run_test(size=size) as pilot:
        for way, keys in (("down", answers), ("up", answers[-2::-1])):
            for key in keys:
                await pilot.press(way)
                await pilot.pause()
                lines = [line.strip() for line in screen_of(pilot).splitlines()]
                assert [line for line in lines if line.startswith((f">{key}  ", f"{key}>"))], (way, key)
                assert sum(">" in line for line in lines) == 1, (way, key)

        await pilot.press("space")  # reading on may put the choice out of sight, and never its sign elsewhere
        await pilot.pause()
        signed = [line.strip() for line in screen_of(pilot).splitlines() if ">" in line]
        assert all(line.startswith((">1  ", "1>")) for line in signed)


def test_every_question_shows_all_its_answers_on_a_phone(guide: Guide) -> None:
    """At 44 by 20, with the call on the screen, no answer to any question is out of sight."""
    for finding in guide.findings.values():
        page = Page(
            "ask",
            "Cold, limp or flat out",
            (Block("heading", finding.ask),),
            lamb="3 days old, 4.25 kg, 38.9 °C",
        )
        page = replace(
            page, choices=_choices_of(guide, finding), urgency=guide.front.urgencies[0], because=finding.label
        )
        head = head_lines(page, "01632 960111", 42, 20)
        keys = key_lines(page, 42, 20)

        room = 20 - 1 - len(head) - len(keys)
        assert len(body_lines(page, View(), 42, room)) <= room, finding.name


def _choices_of(guide: Guide, finding: Finding) -> tuple[Choice, ...]:
    reader = Reader(guide, Facts(guide.values(), {}))
    known = [Choice(str(n), name, reader.choice(finding, name)) for n, name in enumerate(finding.choices, 1)]
    return (*known, Choice("n", UNSURE, finding.unsure or "Not sure"))


async def test_enter_with_nothing_picked_does_no_harm(guide: Guide) -> None:
    """Enter alone on a question chooses nothing."""
    async with app_of(guide).run_test() as pilot:
        await pilot.press("enter", "enter", "z", "f5", "tab")
        await pilot.pause()

        assert pilot.app.session.walk.moves == ()  # type: ignore[attr-defined]


async def test_a_resize_keeps_what_was_typed(guide: Guide) -> None:
    """A window resized in mid-question keeps the question and the typing."""
    async with app_of(guide).run_test(size=(80, 24)) as pilot:
        await pilot.press("6", *"39.")
        await pilot.resize_terminal(30, 10)
        await pilot.pause()
        await pilot.press("2", "enter")
        await pilot.resize_terminal(120, 40)
        await pilot.pause()

        assert pilot.app.session.walk.state.known["temperature"] == 39.2  # type: ignore[attr-defined]


@pytest.mark.parametrize("size", [(80, 24), (44, 20), (30, 10), (20, 6)])
async def test_nothing_below_is_hidden_without_a_sign(guide: Guide, size: tuple[int, int]) -> None:
    """Where a page is longer than the screen it says so, and space shows all of it."""
    async with app_of(guide).run_test(size=size) as pilot:
        await pilot.press(*FIRST_MILK)
        await pilot.pause()
        shown = screen_of(pilot)
        assert "more below" in shown
        seen = shown
        for _ in range(80):
            if "more below" not in shown:
                break
            await pilot.press("space")
            await pilot.pause()
            shown = screen_of(pilot)
            seen += shown

        assert "more below" not in shown
        for words in ("microwave", "pregnant", "Look again"):
            assert words in seen.replace("\n", " ") or size[0] < 30


async def test_brackets_in_the_guide_are_only_text(tmp_path: Path) -> None:
    """Text with brackets and slashes from a knowledge file is shown as it is, on every page."""
    nasty = '"see [/] and [a] [x=1] [@click=app.bell]b[/a] [red]"'
    guide = small_guide(
        tmp_path,
        ("findings/all.yaml", "ask: Is it limp?", f"ask: {nasty}"),
        ("findings/all.yaml", "why: It can die.", f"why: {nasty}"),
        ("findings/all.yaml", "{limp: Limp, none: Not limp}", f"{{limp: {nasty}, none: Not limp}}"),
        ("topics/first.yaml", "title: First\n", f"title: {nasty}\n"),
        ("topics/first.yaml", "title: Warm it\n", f"title: {nasty}\n"),
        ("topics/first.yaml", "cautions: [No milk.]", f"cautions: [{nasty}]"),
    )
    async with app_of(guide).run_test(size=(100, 30)) as pilot:
        for keys in (
            ["?"],
            ["b", "1"],
            ["v"],
            ["b", "a", "enter"],
            ["b", *"36", "enter"],
            ["d", *"36", "enter", "d", *"36", "enter"],
        ):
            await pilot.press(*keys)
            await pilot.pause()
            assert "[" in screen_of(pilot)

        assert isinstance(pilot.app.session.walk.node, End)  # type: ignore[attr-defined]


async def test_every_theme_shows_the_same_words(guide: Guide) -> None:
    """t changes the light and says its name; all other words stay, and the call is in words in each."""
    async with app_of(guide).run_test() as pilot:
        await pilot.press("1")
        shown = {}
        for _ in THEMES:
            await pilot.press("t")
            await pilot.pause()
            text = screen_of(pilot)
            assert f"Light: {pilot.app.theme}." in text
            assert "Phone the vet now" in text
            shown[pilot.app.theme] = text.replace(f"Light: {pilot.app.theme}.", "")

        assert set(shown) == {theme.name for theme in THEMES}
        assert len(set(shown.values())) == 1


async def test_ascii_only_shows_no_other_sign(guide: Guide) -> None:
    """Where the terminal has only ASCII, nothing else is sent to it."""
    async with app_of(guide, ascii_only=True).run_test() as pilot:
        await pilot.press(*COLD)
        await pilot.pause()

        assert screen_of(pilot).isascii()
        assert "36.2 C" in screen_of(pilot)


async def test_leaving_keeps_the_walk(guide: Guide) -> None:
    """q ends the app, and the walk is there to be recorded."""
    app = app_of(guide)
    async with app.run_test() as pilot:
        await pilot.press("6", "q", "q")
        await pilot.pause()

    assert app.session.left
    assert app.session.walk == Walk(guide).answer("none")


async def test_a_digit_opens_a_technique_at_once(guide: Guide) -> None:
    """On a list of up to nine one digit is enough, whether or not the box would be in view."""
    async with app_of(guide).run_test(size=(80, 24)) as pilot:
        await pilot.press(*FIRST_MILK, "?", "1")
        await pilot.pause()
        opened = screen_of(pilot)
        assert "You need:" in opened

        await pilot.press("b")
        await pilot.pause()
        assert screen_of(pilot) != opened


@pytest.mark.parametrize("size", [(30, 10), (44, 12)])
async def test_paging_passes_over_no_line(guide: Guide, size: tuple[int, int]) -> None:
    """With a message on the screen or not, space shows every line of the page."""
    async with app_of(guide).run_test(size=size) as pilot:
        await pilot.press(*COLD, "enter")
        await pilot.pause()
        seen = screen_of(pilot)
        for _ in range(30):
            await pilot.press("space")
            await pilot.pause()
            seen += screen_of(pilot)

        lines = lay_out(pilot.app.session.page(), size[0] - 2)  # type: ignore[attr-defined]
        assert [line.text for line in lines if line.text not in seen] == []
