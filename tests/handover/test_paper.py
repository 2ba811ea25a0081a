"""The page to print: whole, inert, and readable."""

from __future__ import annotations

import re
from html.parser import HTMLParser

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.handover.made import HOSTILE, NOW, answered, full, lamb
from tests.published.contrast import AAA, Rgb, contrast
from triage.guide.model import Guide
from triage.handover import Situation, handover_of
from triage.handover.paper import paper_of
from triage.handover.text import lists
from triage.walk import Walk

KNOWN = {
    "html", "head", "meta", "title", "style", "body", "h1", "h2", "p", "ol", "ul", "li", "div", "section",
    "bdi",
}  # fmt: skip
WAYS_OUT = re.compile(
    r"url\(|@import|https?:|src=|href=|javascript:|<link|<img|<script|\bon[a-z]+=", re.IGNORECASE
)


class Page(HTMLParser):
    """What a browser would see: every element, and the text of every list item."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.texts: list[list[str]] = [[]]
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag != "meta":
            self.open.append(tag)
        if tag == "li":
            self.texts.append([])

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag, "elements are closed in order"

    def handle_data(self, data: str) -> None:
        if "li" in self.open:
            self.texts[-1].append(data)

    @property
    def items(self) -> list[str]:
        """The list items as text."""
        return ["".join(each) for each in self.texts[1:]]


def _hostile_page(guide: Guide, text: str) -> str:
    told = handover_of(full(answered(guide, "none", 36.2, 9.0, "given"), text))
    return paper_of(told, text, text, text)


@pytest.mark.parametrize(
    "text", [HOSTILE, "</style><script>x</script>", '" onload="x', "&lt;b&gt; &amp;", "<b>\u05d0</b>"]
)
def test_hostile_words_are_only_words(guide: Guide, text: str) -> None:
    """No element and no attribute comes from what was typed, and nothing leads out of the page."""
    html = _hostile_page(guide, text)
    page = Page(html)

    assert {tag for tag, _ in page.tags} <= KNOWN
    assert {name for _, attrs in page.tags for name in attrs} <= {
        "lang", "charset", "http-equiv", "content", "name", "class",
    }  # fmt: skip
    assert not WAYS_OUT.search(re.sub(r">[^<]*<", "><", html.partition("<body>")[2]))
    assert not WAYS_OUT.search(html.partition("<style>")[2].partition("</style>")[0])
    assert not page.open


@settings(deadline=None, max_examples=60)
@given(st.text(max_size=60))
def test_any_words_come_out_as_they_went_in(guide: Guide, text: str) -> None:
    """Every spoken and listed line stands on the page as the very same text."""
    told = handover_of(full(answered(guide, "none", 36.2), text))
    listed = [line.text for _, lines in lists(told) for line in lines]
    said = [line.text for line in (*told.spoken, *told.read_back)]

    assert Page(paper_of(told)).items == [*said, *listed]


def test_the_page_asks_nothing_of_any_network_and_runs_nothing(guide: Guide) -> None:
    """Its own policy forbids loading and running, whatever might have slipped through."""
    html = paper_of(handover_of(full(answered(guide, "none", 36.2))))

    assert "content=\"default-src 'none'; style-src 'unsafe-inline'; " in html
    assert not WAYS_OUT.search(html)


def test_its_colours_can_be_read_in_bad_light(guide: Guide) -> None:
    """Every colour on the page has a contrast of 7 to 1 against its ground, the ruled lines too."""
    html = paper_of(handover_of(Situation(Walk(guide), NOW)))
    style = html.partition("<style>")[2].partition("</style>")[0]
    colours = set(re.findall(r"#([0-9a-f]{3})\b", style))

    assert {"fff", "111"} < colours
    assert not re.findall(r"#[0-9a-f]{6}|rgb|hsl", style)
    assert all(contrast(_rgb(ink), _rgb("fff")) >= AAA for ink in colours - {"fff"})


def _rgb(colour: str) -> Rgb:
    red, green, blue = (int(sign * 2, 16) for sign in colour)
    return red, green, blue


def test_there_are_blank_lines_for_what_the_vet_said(guide: Guide) -> None:
    """Each thing to write down has a line, and orders have two."""
    told = handover_of(Situation(Walk(guide), NOW))
    write = paper_of(told).partition('<div class="write">')[2].partition("</div>")[0]

    assert re.findall(r"<p>(.*?)</p>", write) == [
        "Who spoke, and when", "What to do", "", "What to give: how much, how, how often", "",
        "What not to do", "Phone again when, and on which number",
    ]  # fmt: skip


def test_a_name_written_from_right_to_left_turns_nothing_round(guide: Guide) -> None:
    """Such words stand in an element of their own, so that the figures after them stay in place."""
    told = handover_of(Situation(answered(guide, "none", 36.2), NOW, lamb=lamb("\u05e9\u05e8\u05d4 7")))

    assert "I have a lamb: <bdi>\u05e9\u05e8\u05d4</bdi> 7, a ewe lamb" in paper_of(told)


def test_it_prints_on_either_paper(guide: Guide) -> None:
    """The page names margins and no size, so that A4 and Letter both serve."""
    style = paper_of(handover_of(Situation(Walk(guide), NOW))).partition("<style>")[2]

    assert re.search(r"@page \{ margin: [0-9]+mm", style)
    assert "size:" not in style.replace("font-size:", "").replace("box-sizing:", "")
