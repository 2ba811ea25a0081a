"""The book in a real browser: walked by touch with no script and no network, checked by axe-core, printed."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.book.browsing import barriers, browser
from tests.book.conftest import DAY
from tests.book.reader import Book, Link, Reader, plain
from triage.guide.model import Guide
from triage.practice.case import Case
from triage.practice.written import case_of

PHONE = {"width": 390, "height": 844}
DESK = {"width": 1280, "height": 900}
SCREENS = [(PHONE, "light"), (PHONE, "dark"), (DESK, "light"), (DESK, "dark")]
PARTED = """
([part, parts]) => {
  const all = document.querySelectorAll(
    'section.walk, section.how, section.table, section.short, section.drawn, .entries > li');
  [...all].slice(1).forEach((each, at) => {
    if (at % parts !== part) {
      const left = document.createElement(each.tagName === 'LI' ? 'li' : 'span');
      left.id = each.id;
      each.replaceWith(left);
    }
  });
}
"""
"""Keeps one part of the sections, so that the checks of all screens together see the whole book once."""


SHOWN = """
links => links.map(link => {
  const text = name => link.querySelector(name)?.innerText ?? '';
  return [text('span'), text('strong'), link.getAttribute('href'), text('i')];
})
"""
"""Reads links as they are shown."""

BEGINS = """
() => [...document.querySelectorAll('.drawn')].map(each => {
  const svg = each.querySelector('svg'), view = each.querySelector('.wide').getBoundingClientRect();
  const box = svg.querySelector('rect').getBoundingClientRect();
  const seen = box.left >= view.left - 8 && box.right <= view.right + 8 && box.top < view.top + 60;
  return [each.id, seen, svg.getBoundingClientRect().width, Number(svg.getAttribute('width'))];
})
"""
"""Tells of each map whether its first box is in view, how wide it is drawn, and how wide it should be."""


@pytest.fixture(scope="module")
def opened() -> Iterator[Any]:
    """A browser."""
    with browser() as found:
        yield found


@pytest.fixture(scope="module")
def file(metric: Book, tmp_path_factory: pytest.TempPathFactory) -> str:
    """The address of the book in metric units."""
    path = tmp_path_factory.mktemp("book") / "book.html"
    path.write_text(metric.html, encoding="utf-8")
    return path.as_uri()


class Screen:
    """The book on a screen, walked by touching its links."""

    def __init__(self, page: Any) -> None:
        self.page = page

    def kind(self, section: str) -> str:
        """Whether a section is a question, an act or an end."""
        return str(self.page.locator(f"#{section}").get_attribute("class")).split()[-1]

    def text(self, section: str) -> str:
        """All that a section shows."""
        return plain(self.page.locator(f"#{section}").inner_text())

    def call(self, section: str) -> str:
        """How soon an end calls the vet."""
        return plain(self.page.locator(f"#{section} .call strong").inner_text())

    def links(self, section: str) -> list[Link]:
        """The answers that a section shows."""
        found = self.page.locator(f"#{section} .answers a").evaluate_all(SHOWN)
        return [
            Link(plain(words), plain(call), to.removeprefix("#"), plain(number))
            for words, call, to, number in found
        ]

    def go(self, section: str, link: Link) -> str:
        """Touch a link, and return the section that the browser has come to."""
        at = self.links(section).index(link)
        self.page.locator(f"#{section} .answers a").nth(at).tap()
        to = str(self.page.url).partition("#")[2]
        box = self.page.locator(f"#{to} h3").bounding_box()
        assert 0 <= box["y"] < PHONE["height"] / 2, f"{to} is not in view: {box}"
        return to


SITUATIONS = ("cold", "scours", "ewe", "first-milk", "wounds")


@pytest.mark.parametrize("topic", SITUATIONS)
def test_a_situation_is_walked_by_touch(guide: Guide, opened: Any, file: str, topic: str) -> None:
    """With no script, no network, and nothing asked of either, to the end that the walk comes to."""
    written = next(each for each in guide.cases.values() if each.place.file == f"practice/{topic}.yaml")
    case = case_of(guide, written)
    assert isinstance(case, Case)
    context = opened.new_context(viewport=PHONE, java_script_enabled=False, offline=True, has_touch=True)
    page, asked = context.new_page(), list[str]()
    page.on("request", lambda request: asked.append(request.url))
    page.goto(file)
    reader = Reader(Screen(page), guide, "node-danger", known=dict(guide.front.unless_told))
    if topic == "ewe":
        page.get_by_role("link", name=re.compile("Another way in")).tap()
        reader.at, reader.known = page.url.partition("#")[2], {}
    reader.follow([*case.walk.moves])

    assert reader.at == f"node-{case.walk.node.name}"
    assert page.url.partition("#")[2] == reader.at
    assert asked == [file]
    context.close()


@pytest.mark.parametrize(("part", "size", "scheme"), [(at, *each) for at, each in enumerate(SCREENS)])
def test_axe_finds_nothing(opened: Any, file: str, part: int, size: dict[str, int], scheme: str) -> None:
    """Every rule that axe-core has, the enhanced contrast among them, on each kind of screen.

    A book is large, so each screen shows another quarter of its sections.
    """
    context = opened.new_context(viewport=size, color_scheme=scheme)
    page = context.new_page()
    page.goto(file)
    page.evaluate(PARTED, [part, len(SCREENS)])
    found, checked = barriers(page)
    context.close()

    assert found == []
    assert {"color-contrast-enhanced", "heading-order", "region", "link-name"} <= checked


@pytest.mark.parametrize("text", ["100%", "200%"])
def test_nothing_runs_out_of_a_narrow_screen(opened: Any, file: str, text: str) -> None:
    """At 320 pixels, and with text twice as large; a wide table scrolls in its own box."""
    context = opened.new_context(viewport={"width": 320, "height": 640})
    page = context.new_page()
    page.goto(file)
    page.add_style_tag(content=f"html {{ font-size: {text} !important }}")

    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    context.close()


@pytest.mark.parametrize("size", [PHONE, DESK])
def test_a_map_opens_where_it_begins(opened: Any, file: str, size: dict[str, int]) -> None:
    """In its real size, with the first box in view, on a phone and on a desk."""
    context = opened.new_context(viewport=size)
    page = context.new_page()
    page.goto(file)
    maps = page.evaluate(BEGINS)
    context.close()

    assert maps
    for name, seen, drawn, real in maps:
        assert seen, name
        assert drawn == real, name


def test_answers_are_large_and_the_first_screen_holds_the_danger_signs(opened: Any, file: str) -> None:
    """Each is at least 48 pixels high and as wide as a phone's page; all seven are in view at once."""
    context = opened.new_context(viewport=PHONE)
    page = context.new_page()
    page.goto(file)
    boxes = "[...document.querySelectorAll('.answers a')].map(a => a.getBoundingClientRect())"
    sizes = page.evaluate(f"{boxes}.map(box => [box.width, box.height])")
    last = page.locator("#node-danger .answers a").last.bounding_box()
    shown = page.locator("#node-danger .answers a").count()
    context.close()

    assert min(high for _, high in sizes) >= 48
    assert min(wide for wide, _ in sizes) >= PHONE["width"] - 2 * 16 - 1
    assert shown == 7
    assert last["y"] + last["height"] <= PHONE["height"]


def test_focus_and_the_section_come_to_are_seen(opened: Any, file: str) -> None:
    """A link under the keyboard has a clear outline; a section that was gone to is lit, and fills the screen."""
    context = opened.new_context(viewport=PHONE)
    page = context.new_page()
    page.goto(f"{file}#node-suck")
    page.locator("#node-suck .answers a").first.focus()
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Tab")
    outline = page.evaluate("getComputedStyle(document.activeElement).outlineWidth")
    high = page.locator("#node-suck").bounding_box()["height"]
    lit, plain_ = (
        page.evaluate(f"getComputedStyle(document.querySelector('#node-{name} h3')).backgroundColor")
        for name in ("suck", "danger")
    )
    context.close()

    assert outline == "3px"
    assert high > PHONE["height"] * 0.9
    assert lit != plain_


def test_every_printed_page_says_its_edition(opened: Any, file: str, guide: Guide) -> None:
    """With the day and the sign-off, at its foot; nothing stands on or below it but the number of the page."""
    import pypdf

    context = opened.new_context()
    page = context.new_page()
    page.goto(file)
    printed = page.pdf(prefer_css_page_size=True, format="A4")
    context.close()
    pages = pypdf.PdfReader(io.BytesIO(printed)).pages
    said = f"Edition {guide.front.edition} of {guide.front.date}. Written {DAY.day} {DAY:%B %Y}."

    assert len(pages) > 20
    for number, each in enumerate(pages, 1):
        lines = _lines(each)
        text = " ".join(words for _, words in lines)
        assert said in plain(text), f"page {number}"
        assert "Never reviewed by a vet." in text, f"page {number}"
        foot = max(high for high, words in lines if f"Written {DAY.day} {DAY:%B}" in plain(words))
        under = plain(" ".join(words for high, words in lines if high < foot - 1))
        assert re.fullmatch(
            rf"First aid and care, not a diagnosis\. .* Page {number} of {len(pages)}", under
        ), f"page {number}: {under}"


def _lines(page: Any) -> list[tuple[float, str]]:
    """The pieces of text of a page, each with how high it stands above the page's lower edge."""
    found: list[tuple[float, str]] = []

    def take(text: str, matrix: list[float], line: list[float], _font: object, _size: float) -> None:
        if text.strip():
            found.append((line[5] * matrix[3] + matrix[5], text))

    page.extract_text(visitor_text=take)
    return sorted(found, key=lambda each: -each[0])


def test_the_browser_is_asked_for_nothing_else(metric: Book) -> None:
    """The book names no address that a browser would fetch by itself."""
    assert not re.search(r"<(?:script|link|img|iframe|object|embed|video|audio)\b", metric.html)
    assert not re.search(r"url\(|@import|\bsrc=|https?://(?!www\.w3\.org/2000/svg)", metric.html)


def test_a_file_of_another_name_serves_as_well(opened: Any, metric: Book, tmp_path: Path) -> None:
    """A link stays within the file, whatever that is called."""
    path = tmp_path / "the book of lambs #1.html"
    path.write_text(metric.html, encoding="utf-8")
    context = opened.new_context(viewport=PHONE, java_script_enabled=False, offline=True)
    page = context.new_page()
    page.goto(path.as_uri())
    page.locator("#contents a").first.click()

    assert page.url == f"{path.as_uri()}#topic-first-look"
    context.close()
