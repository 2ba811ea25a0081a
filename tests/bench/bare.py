"""The baselines: bare Textual apps. `python -m tests.bench.bare static`, or `still`, or `moving`."""

from __future__ import annotations

import sys

from textual import events
from textual.app import App, ComposeResult
from textual.widgets import Footer, Static

from tests.bench.bare_texts import FIRST, MOVED_KEYS, PAGES, SECOND


class OneStatic(App[None]):
    """One Static and a Footer; a key swaps the text."""

    def compose(self) -> ComposeResult:
        """The two widgets."""
        yield Static(FIRST)
        yield Footer()

    def on_key(self) -> None:
        """Show the other text."""
        widget = self.query_one(Static)
        widget.update(SECOND if widget.content == FIRST else FIRST)


class TwoPages(App[None]):
    """Three Statics laid out as head, body and keys; each key swaps all three texts."""

    CSS = """
    Screen { layout: vertical; padding: 0 1; }
    #head { height: auto; margin-bottom: 1; }
    #body { height: 1fr; }
    #keys { height: auto; }
    """
    ENABLE_COMMAND_PALETTE = False

    def __init__(self, moving: bool) -> None:
        super().__init__()
        head, body, keys = PAGES[1]
        self.pages = (PAGES[0], (head, body, MOVED_KEYS if moving else keys))
        self.shown = 0

    def compose(self) -> ComposeResult:
        """The three widgets."""
        for name in ("head", "body", "keys"):
            yield Static(id=name, markup=False)

    def on_mount(self) -> None:
        """Show the first page."""
        self.draw()

    def on_key(self, event: events.Key) -> None:
        """Show the other page."""
        event.stop()
        self.shown = 1 - self.shown
        self.draw()

    def draw(self) -> None:
        """Set all three texts."""
        for name, text in zip(("head", "body", "keys"), self.pages[self.shown], strict=True):
            self.query_one(f"#{name}", Static).update(text)


if __name__ == "__main__":
    app: App[None] = OneStatic() if sys.argv[1] == "static" else TwoPages(sys.argv[1] == "moving")
    app.run()
