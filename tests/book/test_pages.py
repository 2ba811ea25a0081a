"""The book as HTML: sound, whole, and the same each time."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from xml.etree.ElementTree import Element

import pytest

from tests.book.conftest import DAY
from tests.book.reader import Book, words_of
from tests.conftest import small_guide
from triage.book.keyless import KEYED, keyless
from triage.book.making import Making, Told
from triage.book.review import told_of, told_once
from triage.book.whole import book_of
from triage.guide.model import PLACEHOLDER, Ask, End, Guide
from triage.guide.texts import all_texts, practice_texts, said_on, steps_of

MOST = 1_500_000
"""Bytes of a book: a page that an old phone still opens."""

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("which", ["metric", "us"])
def test_it_is_sound_html_and_no_larger_than_a_phone_takes(
    which: str, request: pytest.FixtureRequest
) -> None:
    """A strict parser finds nothing to mend."""
    book: Book = request.getfixturevalue(which)
    Book(book.html, strict=True)

    assert len(book.html.encode()) <= MOST


def test_without_maps_it_is_smaller(guide: Guide, metric: Book) -> None:
    """They are at least a tenth of it, and no link leads to one that is not drawn."""
    bare = Book(book_of(Making(guide, DAY, maps=False)))

    assert len(bare.html) < len(metric.html) * 0.9
    assert "<svg" not in bare.html
    assert list(astray(bare)) == []


def test_the_same_guide_day_and_choice_make_the_same_bytes(guide: Guide, metric: Book) -> None:
    """Nothing of the hour, the machine or the order of a set is in it."""
    assert book_of(Making(guide, DAY, told=told_of(guide, DAY))) == metric.html


def astray(book: Book) -> Iterator[str]:
    """Each link that leads nowhere in the book, or shows another number than that of its section."""
    for link in (*book.root.iter("a"), *book.root.iter(f"{SVG}a")):
        to = link.attrib["href"]
        if to.startswith("tel:"):
            continue
        there = book.by_id.get(to[1:]) if to.startswith("#") else None
        shown = re.search(r"(?:go to |, |table )([0-9]+)\)?$", words_of(link))
        if there is None:
            yield to
        elif shown and "contents" not in to and number_of(there) != int(shown[1]):
            yield f"{to} shows {shown[1]}"


def number_of(section: Element) -> int | None:
    """The number of a section, where it has one."""
    for each in section.iter("span"):
        if each.attrib.get("class") == "no":
            return int(words_of(each))
    return None


def test_every_link_leads_to_a_section_and_shows_its_number(metric: Book, us: Book) -> None:
    """On paper the number is all there is."""
    assert list(astray(metric)) == []
    assert list(astray(us)) == []


def test_a_map_has_the_numbers_of_the_sections(guide: Guide, metric: Book) -> None:
    """So that paper can be walked from a map: on each box, beside each answer, and on each way out of the topic."""
    boxes = dict[str, int]()
    for link in metric.root.iter(f"{SVG}a"):
        if first := re.match(r"([0-9]+)\. ", words_of(link)):
            boxes[link.attrib["href"][1:]] = int(first[1])

    assert boxes == {f"node-{name}": number_of(metric.by_id[f"node-{name}"]) for name in guide.nodes}
    for topic in guide.topics:
        drawn = metric.by_id.get(f"map-{topic}")
        if drawn is not None:
            leads = set(map(int, re.findall("\u2192 ([0-9]+)", words_of(drawn))))
            assert leads <= {boxes[f"node-{node.name}"] for node in guide.by_topic[topic]}


def test_no_anchor_is_there_twice(metric: Book) -> None:
    """Else a link would lead to the first of them."""
    anchors = re.findall(r' id="([^"]+)"', metric.html)

    assert len(anchors) == len(set(anchors))


def test_numbers_run_on_through_the_book(guide: Guide, metric: Book) -> None:
    """From 1 at the danger signs, each once, in the order of the sections, one for every node."""
    numbers = [int(words_of(each)) for each in metric.root.iter("span") if each.attrib.get("class") == "no"]

    assert numbers == [*range(1, len(numbers) + 1)]
    assert number_of(metric.by_id["node-danger"]) == 1
    assert {f"node-{name}" for name in guide.nodes} <= metric.by_id.keys()


def test_headings_go_down_one_step_at_a_time(metric: Book) -> None:
    """With one first heading."""
    levels = [int(each.tag[1]) for each in metric.root.iter() if re.fullmatch("h[1-6]", str(each.tag))]

    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(later - level <= 1 for level, later in pairwise(levels))


def test_every_text_of_the_guide_is_in_it(guide: Guide, metric: Book) -> None:
    """Each piece between two numbers, but for practice, for the phone, and what speaks of keys."""
    shown = words_of(metric.root).lower().replace("\u00a0", " ")
    played = {passage.text for passage in practice_texts(guide)}
    # What is asked again only is called by its label, and what no question asks stands nowhere.
    asked = {node.finding for node in guide.nodes.values() if isinstance(node, Ask)}
    unasked = {guide.findings[name].place for name in guide.findings.keys() - asked}
    phoned = {urgency.asks for urgency in guide.front.urgencies}
    missing = [
        piece
        for passage in all_texts(guide)
        if passage.text not in played | phoned
        and passage.place not in unasked
        and passage.kind not in UNSHOWN
        for piece in PLACEHOLDER.sub("\n", keyless(passage.text)).lower().split("\n")
        if " ".join(piece.split()) not in shown
    ]
    assert missing == []


UNSHOWN = ("label",)
"""Labels of findings serve for lists; where a finding is asked its question stands."""


def test_each_page_says_all_that_the_walk_says_there(guide: Guide, metric: Book) -> None:
    """Steps, cautions, the call and what it may be stand in the section of their own node."""
    for node in guide.nodes.values():
        text = metric.text(f"node-{node.name}").lower().replace("\u00a0", " ")
        for said in said_on(node):
            for piece in PLACEHOLDER.sub("\n", keyless(said)).lower().split("\n"):
                assert " ".join(piece.split()) in text, f"{node.name}: {piece}"
        for step in steps_of(node):
            how = guide.how_tos.get(step.how)
            assert how is None or how.title.lower() in text
        if isinstance(node, End):
            assert guide.urgency(node.urgency).say.lower() in text


def test_no_text_speaks_of_keys(metric: Book) -> None:
    """Who holds paper can press none; what is to be answered otherwise is linked."""
    assert KEYED.findall(words_of(metric.root)) == []
    assert "Go back, and change the trouble" in words_of(metric.root)
    assert "node-glucose" in [
        link.attrib["href"][1:] for link in metric.by_id["node-glucose-first"].iter("a")
    ]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Seen it? Press a, and change the trouble to scours.", "Seen it? Go back, and change the trouble to scours."),
        ("Then press a, and change Glucose.", "Then go back, and change Glucose."),
        ("At once counts as none, so type 0.", "At once counts as none, so count it as 0."),
        ("Type 10 h, or born 23:30. Not seen? Count, or type n.", "Not seen? Count, or take the last answer."),
        ("Press a clean cloth on it.", "Press a clean cloth on it."),
    ],
)  # fmt: skip
def test_keys_become_what_a_reader_can_do(text: str, said: str) -> None:
    """And nothing else of a text is changed."""
    assert keyless(text) == said


def test_words_that_look_like_markup_stay_words(tmp_path: Path) -> None:
    """Nothing that a guide says is read as a tag, an entity or an attribute."""
    nasty = '<script>alert(1)</script> & \\"quoted\\" <b>'
    small = small_guide(
        tmp_path,
        ("topics/first.yaml", "title: Warm it\n", f'title: "{nasty}"\n'),
        ("findings/all.yaml", "limp: Limp,", f'limp: "{nasty}",'),
        ("guide.yaml", "title: A small guide", f'title: "{nasty}"'),
    )
    book = Book(book_of(Making(small, DAY)), strict=True)

    assert book.html.count("<script") == 0
    assert '<script>alert(1)</script> & "quoted" <b>' in book.text("node-warm-it")
    assert '<script>alert(1)</script> & "quoted" <b>' in [link.words for link in book.links("node-danger")]


def test_a_guide_with_little_in_it_makes_a_book(small: Guide) -> None:
    """Parts that it has nothing for are left out, of the contents too."""
    book = Book(book_of(Making(small, DAY)), strict=True)

    assert list(astray(book)) == []
    assert {"rules", "raising", "laws", "cupboard"}.isdisjoint(book.by_id)
    assert {"numbers", "words", "sources", "how-measure-it"} <= book.by_id.keys()


def test_review_stands_at_the_top_at_the_foot_and_at_each_statement(small: Guide) -> None:
    """With the code of each topic, and that it is overdue."""
    each = {"node/well": "Changed since.", "number/chill": "Objected to.", "how-to/measure-it": "Signed."}
    told = Told("Reviewed by A. Name.", "Overdue: read it again.", each, {"first": "12ab-34cd"})
    book = Book(book_of(Making(small, DAY, told=told)), strict=True)
    top, foot = (words_of(next(book.root.iter(name))) for name in ("header", "footer"))

    assert all("Reviewed by A. Name." in text and "Overdue: read it again." in text for text in (top, foot))
    assert "Edition test of 2026-01-01. Written 1 December 2026." in foot
    assert "Code of this topic as printed here: 12ab-34cd." in book.text("topic-first")
    assert "Changed since." in book.text("node-well")
    assert "Signed." in book.text("how-measure-it")
    assert "Objected to." in book.text("numbers")
    assert "Changed since." not in book.text("node-warm-it")


def test_what_holds_of_most_statements_is_said_once() -> None:
    """And only what stands otherwise has a line."""
    each = {"a": "Signed.", "b": "Signed.", "c": "Changed."}

    assert told_once("All.", each) == ("All. Where no line says otherwise: Signed.", {"c": "Changed."})
    assert told_once("All.", {"a": "Signed.", "b": "Signed."}) == ("All.", {})
    assert told_once("Never.", {}) == ("Never.", {})


def test_codes_are_those_that_are_signed(guide: Guide, metric: Book) -> None:
    """Each topic shows its own."""
    from triage.review.codes import code_of

    codes = {name: code_of(guide, name) for name in guide.topics}
    assert len(set(codes.values())) == len(codes)
    assert [
        name for name, code in codes.items() if f"printed here: {code}." not in metric.text(f"topic-{name}")
    ] == []


def test_the_vets_numbers_are_links_that_dial(small: Guide) -> None:
    """By day and at night; without one there is room on paper to write it."""
    book = Book(book_of(Making(small, DAY, phone=("01234 567 890", "<b>none"))), strict=True)
    head = next(book.root.iter("header"))

    assert [link.attrib["href"] for link in head.iter("a")] == ["tel:01234567890"]
    assert "Your vet: 01234 567 890, at night: <b>none" in words_of(head)
    assert "tel:" not in book_of(Making(small, DAY))
