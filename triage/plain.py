"""The plain face: one heading, numbered answers, lines of text; good in a pipe and under a reader."""

from __future__ import annotations

from collections.abc import Callable

from triage.page.keys import keys_for
from triage.page.lines import lay_out
from triage.page.page import Page
from triage.session import Session

Read = Callable[[str], str]
Write = Callable[[str], None]

PROMPTS = {
    "ask": "Answer",
    "act": "When it is done: d",
    "end": "The end",
    "side": "A number, or Enter to go back",
    "lambs": "A number",
    "lamb": "A number to write something down",
    "form": "Type it, or Enter to go back",
    "practice": "A number",
    "round": "A number",
    "debrief": "Enter goes on",
    "sitting": "A number",
    "read": "A number, or a word to look for",
}

BELL = "\a"


def run(session: Session, read: Read, write: Write, width: int = 76) -> None:
    """Show pages and take lines until the person leaves or the input ends.

    `read` shows a prompt and returns a line, raising EOFError at the end of input; `write` takes
    one line. Nothing else is touched, so this serves a terminal, a pipe and a test alike.
    """
    shown: tuple[Page, bool] | None = None
    if session.told:
        write(session.told)
    while not session.left:
        ring(session, write, alone=False)
        page = session.page()
        if (page, session.changing) != shown:
            show(page, session, write, width)
            shown = (page, session.changing)
        try:
            typed = read(prompt(page))
        except EOFError:
            return
        session.take(typed)
        if session.told:
            write(session.told)


def ring(session: Session, write: Write, alone: bool = True) -> None:
    """Look at the clock: a look that comes due rings, and is said where no page says it (`alone`)."""
    session.told = ""
    rings = session.watch()
    if session.told:
        write(session.told)
    if rings:
        write(f"{BELL}** {session.page().alarm}" if alone else BELL)


def show(page: Page, session: Session, write: Write, width: int) -> None:
    """Write a whole page."""
    write("")
    for line in head(page, session.vet):
        write(line)
    write("")
    for laid in lay_out(page, width):
        write(laid.text)
    write("")


def head(page: Page, vet: str) -> list[str]:
    """Return what always stands first: an alarm, how urgent and why, the vet, the topic, the lamb."""
    lines = [f"** {page.alarm}"] if page.alarm else []
    if page.urgency:
        lines.append(f"** {page.urgency.say}" + (f" ({page.because})" if page.because else ""))
        lines += [f"Vet: {vet}"] if vet else []
    named = page.lamb.startswith("Lamb")  # as it is called until somebody names it
    lamb = page.lamb if named or not page.lamb else f"Lamb: {page.lamb}"
    return [*lines, *([page.title] if page.title else []), *([lamb] if lamb else [])]


def prompt(page: Page) -> str:
    """Return the prompt for a page, with the keys that work on it."""
    keys = ", ".join(f"{key.key} {key.word}" for key in keys_for(page.kind, in_view=True))
    such_as = f", like {page.example}" if page.example else ""
    asked = "Type it" if page.words and page.kind == "sitting" else PROMPTS[page.kind]
    return f"{asked}{such_as} ({keys}): "
