"""What the screen shows of a session, as styled lines for a size; no widget is touched here."""

from __future__ import annotations

import textwrap
from dataclasses import dataclass, field, replace

from textual.content import Content

from triage.page.ascii import to_ascii
from triage.page.keys import keys_for
from triage.page.lines import Line, lay_block, lay_out
from triage.page.page import Block, Page
from triage.screens.themes import STYLES

Styled = list[tuple[str, str]]
MORE = "more below: space"
SHORT = 16
"""Below this many rows a screen is short, and spares its blank lines."""


@dataclass
class View:
    """How a page is seen: how far down, which choice is picked, what is typed so far."""

    top: int = 0
    picked: int = -1
    typed: str = ""
    ascii: bool = False
    bottom: int = field(default=0, init=False)

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
    if page.urgency:
        because = f" - {page.because}" if page.because else ""
        short = f" {page.urgency.say}{because} "
        wrapped = textwrap.wrap(short, width - 2) or [""]
        if height < SHORT:
            wrapped = [_cut(short.strip(), width - 2)]
        lines += [(f" {text} ".ljust(width), STYLES["urgent"]) for text in wrapped]
    number = f"vet {vet}" if vet else ""
    # On a small screen the end of the line is cut, so what matters most comes first.
    facts = [number, page.lamb, page.title] if height < SHORT else [page.title, page.lamb, number]
    second = " | ".join(part for part in facts if part)
    shown = [_cut(second, width)] if height < SHORT else textwrap.wrap(second, width)
    lines += [(text, STYLES["title"]) for text in shown]
    return lines[: max(1, height // 4)]


def key_lines(page: Page, width: int, height: int) -> Styled:
    """The keys that work here, wrapped so that none is cut off where there is room for all."""
    words = [f"{key.key} {key.word}".replace(" ", "\u00a0") for key in keys_for(page.kind, in_view=True)]
    lead = {"act": ["Enter\u00a0done"], "ask": [], "end": [], "side": []}[page.kind]
    wrapped = textwrap.wrap("   ".join([*lead, *words]), width)
    most = max(1, height // 5)
    if len(wrapped) > most:
        wrapped = [*wrapped[: most - 1], _cut(f"{wrapped[most - 1]} ....", width)]
    return [(text.replace("\u00a0", " "), STYLES["keys"]) for text in wrapped]


def body_lines(page: Page, view: View, told: str, width: int, height: int) -> list[Line]:
    """Every line of the page, with the entry line where a measurement is typed.

    A question too tall for the screen spares its advice, which `?` shows, so that its answers fit.
    """
    lines = _with_entry(page, view, told, width)
    if len(lines) > height and page.kind == "ask":
        spare = replace(page, blocks=page.blocks[:1])
        lines = _with_entry(spare, view, told, width)
    return lines


def _with_entry(page: Page, view: View, told: str, width: int) -> list[Line]:
    lines = lay_out(page, width)
    if page.measure or (page.kind == "side" and view.typed):
        lines += [Line("blank", ""), Line("typed", f"> {view.typed}_")]
    if told:
        lines += [Line("blank", ""), *lay_block(Block("told", told, "*"), min(width, 76))]
    return lines


def window(lines: list[Line], view: View, height: int) -> list[Line]:
    """Return the lines that fit, with a sign on the last one when there is more below."""
    view.bottom = max(0, len(lines) - height)
    view.top = max(0, min(view.top, view.bottom))
    shown = lines[view.top : view.top + height]
    if view.top < view.bottom and height > 1:
        shown = [*shown[: height - 1], Line("told", MORE)]
    return shown


def styled(lines: list[Line], page: Page, view: View) -> Styled:
    """Return lines with their styles, the picked choice marked by a sign as well as by colour."""
    picked = page.choices[view.picked].key if 0 <= view.picked < len(page.choices) else ""
    out: Styled = []
    mine = False
    for line in lines:
        begins = line.role == "choice" and line.text[:3].strip() != ""
        if line.role != "choice" or begins:
            mine = bool(picked) and begins and line.text.split()[0] == picked
        if mine:
            text = f">{line.text[1:]}" if begins and line.text.startswith(" ") else line.text
            out.append((text, STYLES["picked"]))
        else:
            out.append((line.text, STYLES[line.role]))
    return out


def _cut(text: str, width: int) -> str:
    """Shorten a text to a width, with a sign that it was cut."""
    return text if len(text) <= width else f"{text[: max(0, width - 2)]}.."
