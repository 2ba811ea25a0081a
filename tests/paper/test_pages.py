"""What holds of every page that is printed: valid, inert, numbered, and laid on sheets of either paper."""

from __future__ import annotations

import re

import pytest

from tests.handover.made import HOSTILE
from tests.paper.made import BOTH, FOOT, of_class, pages, parsed, words
from triage.paper.laying import laid
from triage.paper.pieces import HIGH, ROOM
from triage.paper.setting import BODY, CELL, STRONG, STYLES
from triage.paper.sheets import Size, style_of
from triage.units import System

KNOWN = {
    "html", "head", "meta", "title", "style", "body", "div", "footer", "section", "h1", "h2", "h3", "p", "ul",
    "ol", "li", "i", "b", "span", "a", "bdi", "table", "colgroup", "col", "thead", "tbody", "tr", "th", "td",
}  # fmt: skip
OUTWARD = re.compile(r"url\(|@import|https?:|//|src=|javascript:|\bon[a-z]+=", re.IGNORECASE)
MM = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}


@pytest.mark.parametrize(("size", "system"), BOTH)
def test_every_page_is_valid_and_of_known_elements(size: Size, system: System) -> None:
    """A strict parser finds no fault, and there is nothing but text, lists and tables."""
    for page in pages(system):
        tree = parsed(page.html(size))

        assert {each.tag.rpartition("}")[2] for each in tree.iter() if isinstance(each.tag, str)} <= KNOWN


@pytest.mark.parametrize(("size", "system"), BOTH)
@pytest.mark.parametrize("typed", [HOSTILE[:300], "<script>alert(1)</script>", '" onload="x', "</style><b>"])
def test_what_people_typed_is_only_words(size: Size, system: System, typed: str) -> None:
    """No element, attribute or address comes from a name, a place, a number or a thing on the shelf."""
    for page in pages(system, typed):
        html = page.html(size)
        tree = parsed(html)
        attributes = {name for each in tree.iter() if isinstance(each.tag, str) for name in each.attrib}

        assert {each.tag.rpartition("}")[2] for each in tree.iter() if isinstance(each.tag, str)} <= KNOWN
        assert attributes <= {
            "lang", "charset", "http-equiv", "content", "name", "class", "style", "scope", "colspan", "href",
        }, page.name  # fmt: skip


def test_a_lamb_called_a_script_stands_on_its_plan_as_typed() -> None:
    """The name is shown whole, as text."""
    found = [page for page in pages("metric", "<script>") if page.name.startswith("plan")]

    assert len(found) == 3
    for page in found:
        assert words(of_class(parsed(page.html()), "title")[0]) == "Plan for <script>"


@pytest.mark.parametrize(("size", "system"), BOTH)
def test_nothing_is_loaded_or_run(size: Size, system: System) -> None:
    """No page names an address outside, and its own policy forbids loading, running and sending."""
    for page in pages(system):
        html = page.html(size)

        assert not OUTWARD.search(html), page.name
        assert (
            "content=\"default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'\""
            in html
        )
        assert all(re.fullmatch(r"[a-z0-9-]+\.html", link) for link in re.findall(r'href="([^"]*)"', html))


@pytest.mark.parametrize(("size", "system"), BOTH)
def test_each_sheet_says_its_day_edition_and_number(size: Size, system: System) -> None:
    """Any sheet found on a floor tells what it is of, how old it is, and how many belong together."""
    for page in pages(system):
        sheets = of_class(parsed(page.html(size)), "sheet")
        for number, sheet in enumerate(sheets, 1):
            (foot,) = of_class(sheet, "foot")

            assert words(foot).startswith(f"Page {number} of {len(sheets)}")
            assert f"{page.title}. Edition {FOOT.edition}. Printed {FOOT.day}." in words(foot)
            assert "not a diagnosis" in words(foot)


@pytest.mark.parametrize(("size", "system"), BOTH)
def test_no_sheet_holds_more_than_was_counted(size: Size, system: System) -> None:
    """What stands on a sheet has room above its foot, on the shorter paper too."""
    for page in pages(system):
        for sheet in laid(page.parts):
            assert 0 < sheet.high <= ROOM, page.name


def test_both_papers_have_room_for_a_sheet_and_safe_margins() -> None:
    """Margins are 12 mm or more all round, and what is left holds a sheet."""
    for size, (wide, tall) in MM.items():
        style = style_of("a4" if size == "a4" else "letter")
        assert f"size: {'A4' if size == 'a4' else 'letter'} portrait" in style
        margins = re.search(r"margin: ([0-9.]+)mm ([0-9.]+)mm ([0-9.]+)mm ([0-9.]+)mm", style)
        assert margins is not None
        top, right, bottom, left = map(float, margins.groups())

        assert min(top, right, bottom, left) >= 12
        assert wide - left - right >= 184
        assert tall - top - bottom >= HIGH


def test_what_is_read_on_a_wall_is_set_in_12_points_or_more() -> None:
    """Body text is no smaller, headings are larger, and all of it is black on white."""
    css = style_of("a4")

    assert min(style.pt for style in (BODY, CELL, STRONG)) >= 12
    assert all(style.css() in css for style in STYLES)
    assert set(re.findall(r"#[0-9a-f]{3,6}\b", css)) == {"#000", "#fff"}


def test_only_small_print_is_smaller() -> None:
    """On the sheets of topics and danger nothing but notes, labels and the foot goes below 12 points."""
    small = {style.name for style in STYLES if style.pt < 12}

    assert small == {"label", "note", "small", "foot"}
    for page in pages("metric"):
        if page.name.startswith(("danger", "topic")):
            assert not of_class(parsed(page.html()), "small")


def test_there_is_a_page_of_each_kind() -> None:
    """What is tested here is all that can be printed."""
    kinds = {made.name.partition("-")[0] for made in pages("metric")}

    assert kinds == {"danger", "tables", "record", "cupboard", "topic", "plan", "index"}
    assert all(made.parts for made in pages("metric"))
