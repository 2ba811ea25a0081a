"""The app: three plain areas, and every key passed on to the session."""

from __future__ import annotations

import asyncio
import gc
import os
import signal
import sys
import threading
from collections.abc import Callable
from typing import ClassVar

from textual import events
from textual.app import App, ComposeResult
from textual.binding import Binding, BindingType
from textual.widgets import Static

from triage.page.ascii import can_show
from triage.page.page import Page
from triage.screens import themes
from triage.screens.view import (
    AT_ONCE,
    SHORT,
    View,
    body_lines,
    follow_picked,
    head_lines,
    key_lines,
    styled,
    told_lines,
    window,
)
from triage.session import Session
from triage.walk import NotNow, Walk

DIGITS = "123456789"

WATCH = 1.0
"""Seconds between two looks at the clock."""

MOST_TYPED = 20_000
"""Signs that a box takes; more than anybody types, and few enough to be quick."""

LAST = 10_000
"""Further down than any page goes; a page is never scrolled past its end."""

DEAR = 20
"""Typed signs from which they are not thrown away by one key."""

PATIENCE = 2.0
"""Seconds to leave in order after a signal; a vanished terminal can hold the screen library for ever."""

NO_WAY_ON = "The guide has no way on from here. Phone your vet. Press b to go back."


class LambApp(App[None]):
    """Shows a session. Keys: one each, no chords; a wrong one does no harm."""

    CSS = """
    Screen { layout: vertical; padding: 0 1; overflow: hidden; }
    #head { height: auto; margin-bottom: 1; }
    #body { height: 1fr; }
    #keys { height: auto; }
    .-short #head { margin-bottom: 0; }
    """
    ENABLE_COMMAND_PALETTE = False
    TITLE = "triage"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+c", "quit", priority=True, show=False),
        Binding("ctrl+z", "suspend_process", show=False),
    ]

    def __init__(
        self,
        session: Session,
        ascii_only: bool = False,
        keep: Callable[[Walk], object] | None = None,
        colourless: str = "",
    ) -> None:
        super().__init__()
        self.colourless = colourless
        self.session = session
        self.keep = keep or (lambda walk: None)
        self.view = View(ascii=ascii_only)
        for theme in themes.THEMES:
            self.register_theme(theme)
        chosen = themes.TERMINAL if colourless else themes.theme_named(session.desk.holding.theme)
        self.theme = chosen.name

    def compose(self) -> ComposeResult:
        """Three areas: what stands on top, the page, the keys."""
        yield Static(id="head", markup=False)
        yield Static(id="body", markup=False)
        yield Static(id="keys", markup=False)

    def on_mount(self) -> None:
        """Leave cleanly when the terminal goes away or the system shuts down."""
        if sys.platform != "win32":
            loop = asyncio.get_running_loop()
            for number in (signal.SIGTERM, signal.SIGHUP):
                # Not the loop's own handler: writing to a terminal that is gone can hold the loop itself.
                signal.signal(number, lambda *_: self.cut_off(loop))
        self.draw()
        self.call_after_refresh(_collect_again)
        self.set_interval(WATCH, self.look_at_the_clock)

    def look_at_the_clock(self) -> None:
        """Look at the clock: ring for a look that is due, and show what has changed."""
        before = (self.session.told, self.session.page().alarm)
        if self.session.watch():
            self.bell()
        if (self.session.told, self.session.page().alarm) != before or self.session.page().kind == "lambs":
            self.draw()

    def cut_off(self, loop: asyncio.AbstractEventLoop) -> None:
        """Leave in order; if the terminal is gone and takes nothing any more, leave all the same."""
        last = threading.Timer(PATIENCE, self._leave_at_once)
        last.daemon = True
        last.start()
        loop.call_soon_threadsafe(self.exit)

    def _leave_at_once(self) -> None:
        try:
            self.keep(self.session.whole)
        finally:
            os._exit(0)

    def on_resize(self) -> None:
        """Lay the page out anew, now and once the new size is settled; what is typed stays."""
        self.draw()
        self.call_after_refresh(self.draw)

    def draw(self) -> None:
        """Show the session as it now is."""
        page = self.session.page()
        width, height = max(12, self.size.width - 2), self.size.height
        if not height:
            return
        short = height < SHORT
        self.screen.set_class(short, "-short")
        head = head_lines(page, self.session.vet, width, height)
        keys = key_lines(page, width, height)
        keys = [*told_lines(self.session.told, width, height), *keys]
        room = max(1, height - len(head) - len(keys) - (0 if short else 1))
        lines = body_lines(page, self.view, width, room)
        follow_picked(lines, page, self.view, room)
        lines = window(lines, self.view, room)
        for name, rows in (("head", head), ("body", styled(lines, page, self.view)), ("keys", keys)):
            self.query_one(f"#{name}", Static).update(self.view.content(rows))

    def on_key(self, event: events.Key) -> None:
        """Pass a key on. A measurement is typed and sent with Enter; all else is one key."""
        event.stop()
        try:
            self._key(event)
        except NotNow:
            self.session.told = NO_WAY_ON
        if self.session.left:
            self.exit()
            return
        self.draw()

    def _key(self, event: events.Key) -> None:
        page = self.session.page()
        self.view.warned = self.view.warned and event.key == "escape"
        if self._moves(event.key, page):
            return
        character = event.character or ""
        if not character.isprintable() or not character:
            return
        if self._types(page, character):
            self.view.typed = (self.view.typed + character)[:MOST_TYPED]
        elif character == "t":
            self._next_light()
        elif self._unread(character, page):
            self.view.show_more()
        else:
            self._send(character)

    def _unread(self, character: str, page: Page) -> bool:
        return character in page.read_first and self.view.unread

    def on_paste(self, event: events.Paste) -> None:
        """Take what is pasted into a box."""
        event.stop()
        page = self.session.page()
        if page.words or page.measure:
            self.view.typed = (self.view.typed + " ".join(event.text.splitlines()))[:MOST_TYPED]
            self.draw()

    def _next_light(self) -> None:
        if self.colourless:
            self.session.told = f"{self.colourless}. Its own two colours stay."
            return
        names = [theme.name for theme in themes.THEMES]
        self.theme = names[(names.index(self.theme) + 1) % len(names)]
        self.session.told = f"Light: {self.theme}."

    def _moves(self, key: str, page: Page) -> bool:
        """Take a key that has a name rather than a sign; False for any other."""
        choosing = bool(page.choices) and not page.measure
        match key:
            case "down" | "up" if choosing:
                self._pick(1 if key == "down" else -1, len(page.choices))
            case "pagedown" | "down":
                self._scroll(1)
            case "space" if not self.view.typed:
                self._scroll(1)
            case "pageup" | "up":
                self._scroll(-1)
            case "enter":
                self._enter()
            case "backspace":
                self.view.typed = self.view.typed[:-1]
            case "left" if self.view.typed:
                pass  # there is no cursor to move, and what is typed must not be lost
            case "escape" | "left":
                self._back(page)
            case "tab":
                self._draft = (self.session.room, self.view.typed)
                self.view.typed, self.view.top, self.view.picked = "", 0, -1
                self.session.desk.pressed = ""
                self.session.open("vet")
            case _:
                return False
        return True

    def _types(self, page: Page, character: str) -> bool:
        """Whether a character is typed into the box: a measurement takes words too, as `born 23:30`.

        On a list of up to nine a digit chooses at once; a longer one takes a number and Enter.
        """
        if self.view.typed:
            return True
        if page.words:  # beside choices a digit chooses at once
            return not (page.choices and character in DIGITS)
        if page.measure:
            return character not in AT_ONCE
        if page.timed and character == "a":
            return True
        marks = [block.mark for block in page.blocks if block.role == "choice"]
        listed = sum(mark.isdecimal() for mark in (*marks, *(choice.key for choice in page.choices)))
        return listed > len(DIGITS) and character in f"0{DIGITS}"

    def _scroll(self, way: int) -> None:
        """Go a page down, and from the end back to the top; or a page up."""
        at_end = way > 0 and self.view.top >= self.view.bottom
        step = max(1, self.view.rows - 2)  # two rows may be spent on saying that there is more
        self.view.top = 0 if at_end else max(0, self.view.top + way * step)

    def _pick(self, by: int, count: int) -> None:
        self.view.follow = True
        self.view.picked = (
            (self.view.picked + by) % count if self.view.picked >= 0 else (0 if by > 0 else count - 1)
        )

    def _enter(self) -> None:
        page = self.session.page()
        if not self.view.typed and 0 <= self.view.picked < len(page.choices):
            key = page.choices[self.view.picked].key
            if self._unread(key, page):
                self.view.show_more()
            else:
                self._send(key)
        else:
            self._send(self.view.typed, words=page.words)

    def _back(self, page: Page) -> None:
        """Empty the box, and go back from an empty one; much typed text goes only at the second time."""
        if len(self.view.typed) > DEAR and not self.view.warned:
            self.view.warned, self.session.told = True, "Esc once more throws away what is typed."
        elif self.view.typed:
            self.view.typed = ""
        elif page.words:
            self.session.back()
        else:
            self._send("b")

    def _send(self, typed: str, words: bool = False) -> None:
        """Give the session what was typed; the box is empty afterwards, and a new page begins at its top."""
        before, side = self._shown(), self.session.side
        self.session.take(typed, words)
        self.view.typed = ""
        if self._shown() != before or side or self.session.side:
            self.view.top, self.view.picked = LAST if self.session.page().from_end else 0, -1
            self.view.seen = 0

    def _shown(self) -> tuple[object, ...]:
        """What tells one page from another: what was picked on one must never be taken on the next."""
        page = self.session.page()
        return id(self.session.room), self.session.walk, page.choices, page.blocks[:1], page.blocks[-1:]


def _collect_again() -> None:
    """Turn garbage collection on again once the first question is painted, sparing what is there."""
    gc.freeze()
    gc.enable()


def run_app(session: Session, keep: Callable[[Walk], object]) -> Walk:
    """Open the full screen and return the walk as the person left it.

    `keep` is given the walk instead, where the terminal vanished and there is no way back.
    """
    LambApp(session, not can_show(sys.stdout.encoding), keep, themes.why_colourless()).run()
    return session.whole
