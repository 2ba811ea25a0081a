"""What the screen shows of a session, as styled lines for a size; no widget is touched here."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from textual.content import Content

from triage.page.ascii import to_ascii
from triage.page.keys import keys_for
from triage.page.lines import Line, lay_block, lay_out
from triage.page.page import Block, Page
from triage.screens.themes import STYLES

Styled = list[tuple[str, str]]
MORE = "more below: space"
MORE_ABOVE = "more above: PgUp"
NO_BREAK = "\u00a0"
SHOWN = 200
"""Signs of a long text that the box shows: its end, where it is being typed."""

AT_ONCE = "?vnqlo"
"""The keys that act at once even where letters are typed, while nothing is typed yet."""

TALL_ENOUGH = 3
"""Rows of a page from which one may be spent on saying that there is more above."""

SHORT = 16
"""Below this many rows a screen is short, and spares its blank lines."""


@dataclass
class View:
    """How a page is seen: how far down, which choice is picked, what is typed so far."""

    top: int = 0
    picked: int = -1
    typed: str = ""
    ascii: bool = False
    warned: bool = False
    """Whether it was told that one more key throws away what is typed."""
    follow: bool = False
    """Whether the picked choice was moved, and is to be seen wherever it now is."""
    bottom: int = field(default=0, init=False)
    rows: int = field(default=1, init=False)
    """How many rows of the page were shown last."""
    whole: int = field(default=0, init=False)
    """How many lines the page has."""
    seen: int = field(default=0, init=False)
    """How many of them have been shown, from the first on and without a gap."""

    @property
    def unread(self) -> bool:
        """Whether some of the page has not been shown yet."""
        return self.seen < self.whole

    def show_more(self) -> None:
        """Go to the first line that has not been shown."""
        self.top = max(0, self.seen - (self.rows > TALL_ENOUGH))

    def content(self, lines: Styled) -> Content:
        """Return lines as content. The text is never read as markup, whatever brackets it holds."""
        parts: list[tuple[str, str]] = []
        for text, style in lines:
            parts.append((to_ascii(text) if self.ascii else text, style))
            parts.append(("\n", ""))
        return Content.assemble(*parts[:-1])


def head_lines(page: Page, vet: str, width: int, height: int) -> Styled:
    """The lines that always stand on top: how urgent and why, the vet's number, the lamb."""
    lines: Styled = []
    if page.alarm:
        lines += [(text, STYLES["told"]) for text in textwrap.wrap(page.alarm, width)[: max(1, height // 8)]]
    if page.urgency:
        whole = f"{page.urgency.say} - {page.because}" if page.because else page.urgency.say
        if height < SHORT and len(whole) > width - 2:
            whole = page.urgency.say
        wrapped = textwrap.wrap(whole, width - 2)
        lines += [(f" {text} ".ljust(width), STYLES["urgent"]) for text in wrapped]
    number = f"vet {vet}" if vet else ""
    # On a small screen the end of the line is cut, so what matters most comes first.
    facts = [number, page.lamb, page.title] if height < SHORT else [page.title, page.lamb, number]
    second = " | ".join(_unbroken(part) for part in facts if part)
    wrapped = textwrap.wrap(second, width) or [""]
    shown = [_cut(second, width)] if height < SHORT else wrapped
    lines += [(text.replace(NO_BREAK, " ").removesuffix(" |"), STYLES["title"]) for text in shown]
    # An alarm takes a line of its own, so that it never pushes the number out of sight.
    return lines[: max(1, height // 4) + bool(page.alarm)]


def key_lines(page: Page, width: int, height: int) -> Styled:
    """The keys that work here, wrapped so that none is cut off where there is room for all."""
    words = [f"{key.key} {key.word}" for key in keys_for(page.kind, in_view=True)]
    if page.words and page.choices:
        words = ["1-9 choose", "Enter look for it", "Esc leave", "Tab vet"]
    elif page.words:
        words = ["Enter send", "Esc back", "Tab vet"]
    elif page.measure:
        # Letters are typed here, so going back is on Esc.
        words = ["Enter send", "Esc back", *(word for word in words if word[0] in AT_ONCE)]
    wrapped = textwrap.wrap("   ".join(map(_unbroken, words)), width)
    most = max(1, height // 5)
    if len(wrapped) > most:
        wrapped = [*wrapped[: most - 1], _cut(f"{wrapped[most - 1]} ....", width)]
    return [(text.replace(NO_BREAK, " "), STYLES["keys"]) for text in wrapped]


def told_lines(told: str, width: int, height: int) -> Styled:
    """What the person is told now, above the keys, where no page can push it out of sight."""
    lines = lay_block(Block("told", told, "*"), min(width, 76)) if told else []
    return [(line.text, STYLES["told"]) for line in lines[: max(1, height // 3)]]


def body_lines(page: Page, view: View, width: int, height: int) -> list[Line]:
    """Every line of the page, with the entry line where a measurement is typed.

    A question too tall for the screen spares its advice, which `?` shows, so that its answers fit; where
    that is not enough, also who stands behind it, which every end shows.
    """
    lines = _with_entry(page, view, width)
    for blocks in _spared(page.blocks) if page.kind == "ask" else ():
        if len(lines) <= height:
            break
        lines = _with_entry(replace(page, blocks=blocks), view, width)
    return lines


def _spared(blocks: tuple[Block, ...]) -> Iterator[tuple[Block, ...]]:
    """Yield the blocks of a question with ever more of them left out."""
    for roles in (("label", "caution", "quiet"), ("label",)):
        needed = (blocks[0], *(block for block in blocks[1:] if block.role in roles))
        if len(needed) < len(blocks):
            yield (*needed, Block("quiet", "How to look: ?"))
    yield needed


def _with_entry(page: Page, view: View, width: int) -> list[Line]:
    lines = lay_out(page, width)
    if page.measure or page.words or view.typed:
        such_as = f"   like {page.example}" if page.example and not view.typed else ""
        typed = view.typed if len(view.typed) <= SHOWN else f"..{view.typed[-SHOWN:]}"
        lines += [Line("blank", ""), *lay_block(Block("typed", f"> {typed}_{such_as}"), width)]
    return lines


def window(lines: list[Line], view: View, height: int) -> list[Line]:
    """Return the lines that fit, with a sign on the last one when there is more below."""
    view.bottom, view.rows = max(0, len(lines) - height), height
    view.top = max(0, min(view.top, view.bottom))
    shown = lines[view.top : view.top + height]
    above, below = bool(view.top and height > TALL_ENOUGH), bool(view.top < view.bottom and height > 1)
    _note(view, len(lines), view.top + above, view.top + len(shown) - below)
    if above:
        shown = [Line("told", MORE_ABOVE), *shown[1:]]
    if below:
        shown = [*shown[: height - 1], Line("told", MORE)]
    return shown


def _note(view: View, whole: int, first: int, last: int) -> None:
    """Note which lines are shown now. A page of another length is another page, or laid out anew."""
    if whole != view.whole:
        view.whole, view.seen = whole, 0
    if first <= view.seen:
        view.seen = max(view.seen, last)


def follow_picked(lines: list[Line], page: Page, view: View, height: int) -> None:
    """Scroll no further than it takes to see the choice that was picked, or as much as there is room for."""
    if not view.follow:
        return
    view.follow = False
    rows = _picked_rows(lines, page, view)
    bottom = max(0, len(lines) - height)
    for wanted in (rows, rows[:1]):
        tops = [top for top in range(bottom + 1) if _shows(wanted, top, bottom, height)]
        if tops:
            view.top = min(tops, key=lambda top: abs(top - view.top))
            return


def _shows(rows: range, top: int, bottom: int, height: int) -> bool:
    """Whether rows are in view from a top on, beside the signs that there is more."""
    first = top + (top > 0 and height > TALL_ENOUGH)
    last = top + height - (top < bottom and height > 1)
    return first <= rows.start and rows.stop <= last


def _picked_rows(lines: list[Line], page: Page, view: View) -> range:
    """Return which of the lines are those of the picked choice."""
    key = page.choices[view.picked].key if 0 <= view.picked < len(page.choices) else ""
    begins = [at for at, line in enumerate(lines) if _begins(line) and line.text.split()[0] == key]
    if not begins:
        return range(0)
    end = begins[0] + 1
    while end < len(lines) and lines[end].role == "choice" and not _begins(lines[end]):
        end += 1
    return range(begins[0], end)


def _begins(line: Line) -> bool:
    """Whether a line is the first of a choice; the others are indented."""
    return line.role == "choice" and line.text[:2].strip() != ""


def styled(lines: list[Line], page: Page, view: View) -> Styled:
    """Return lines with their styles, the picked choice marked by a sign as well as by colour."""
    picked = _picked_rows(lines, page, view)
    out: Styled = []
    for at, line in enumerate(lines):
        if at in picked:
            out.append((_pointed_at(line.text) if at == picked.start else line.text, STYLES["picked"]))
        else:
            out.append((line.text, STYLES[line.role]))
    return out


def _pointed_at(text: str) -> str:
    """Put a sign at a choice: before its key, or behind it on a screen so narrow that the key comes first."""
    return f">{text[1:]}" if text.startswith(" ") else text.replace(" ", ">", 1)


def _unbroken(text: str) -> str:
    return text.replace(" ", NO_BREAK)


def _cut(text: str, width: int) -> str:
    """Shorten a text to a width, with a sign that it was cut."""
    return text if len(text) <= width else f"{text[: max(0, width - 2)]}.."
