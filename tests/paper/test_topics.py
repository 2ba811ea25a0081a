"""The sheets of topics and the danger signs say what the guide says, and nothing else of a lamb."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tests.paper.made import FOOT, HOLDING, of_class, parsed, rows, texts, words
from tests.rearing.lambs import shipped
from triage.guide.model import End, Guide
from triage.holding.holding import Holding
from triage.page.wall import FIRST_THE_GUIDE, MEASURE, SAID, Wall
from triage.paper import danger
from triage.paper.danger import danger_parts, phone_line
from triage.paper.laying import laid
from triage.paper.sheets import sheets_of
from triage.paper.topics import HEADS, INTO, NOT_IN_DOUBT, ONLY_FIRST, SHARED, STEPS, topic_parts
from triage.units import System

TOPICS = shipped().front.topics
SYSTEMS: tuple[System, ...] = ("metric", "us")


def sheet(name: str, system: System = "metric", guide: Guide | None = None) -> object:
    wall = Wall(guide or shipped(), system)
    return parsed(sheets_of(wall.guide.topics[name].title, topic_parts(wall, name), FOOT, "a4"))


def ends(name: str) -> list[End]:
    return [node for node in shipped().by_topic[name] if isinstance(node, End)]


def flat(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("name", TOPICS)
def test_each_end_of_a_topic_is_there_once_and_the_most_urgent_first(name: str, system: System) -> None:
    """Ends stand in the order of the urgencies, each under the call that is its own."""
    guide, wall = shipped(), Wall(shipped(), system)
    ranked = sorted(ends(name), key=lambda end: guide.rank(end.urgency))
    found = [row for row in rows(sheet(name, system)) if len(row) == 3 and tuple(row) != HEADS]

    assert len(found) == len(ranked)
    for end, (sign, *_) in zip(ranked, found, strict=True):
        assert sign.startswith(flat(wall.fill(end.title)))
    calls = [words(each) for each in of_class(sheet(name, system), "band")]
    order = [guide.urgency(urgency.name).say for urgency in guide.front.urgencies]
    assert list(dict.fromkeys(calls)) == [
        say for say in order if any(guide.urgency(end.urgency).say == say for end in ranked)
    ]


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("name", TOPICS)
def test_a_sheet_says_nothing_that_the_guide_does_not(name: str, system: System) -> None:
    """Each paragraph is a text of the guide with its numbers, or one of the few that tell how to read it."""
    guide, wall = shipped(), Wall(shipped(), system)
    said = {flat(wall.fill(text)) for end in ends(name) for text in (end.title, *end.cautions)}
    said |= {flat(wall.fill(step.do)) for end in ends(name) for step in end.do}
    said |= {urgency.say for urgency in guide.front.urgencies} | set(HEADS)
    asked, signs = wall.before_feed()
    said |= {guide.topics[name].title, guide.topics[name].about, asked, "Never, whichever it is"}
    said |= {f"{'. '.join(signs)}. {FIRST_THE_GUIDE}", f"{ONLY_FIRST} {NOT_IN_DOUBT}"}
    calls = flat(" ".join(wall.fill(end.call_vet) for end in ends(name)))
    for paragraph in texts(sheet(name, system), "h1", "h2", "p"):
        if paragraph in said or paragraph.startswith(("Page ", f"{guide.topics[name].title}. Edition")):
            continue
        if paragraph in (FOOT.word, FOOT.stands) or paragraph.startswith(("Look at: ", "Only if: ")):
            continue
        opened = re.split(r"(?<=\.) (?=Phone now|Phone today)", paragraph)
        assert all(each in calls and each.startswith(("Phone now", "Phone today")) for each in opened), (
            paragraph
        )


@pytest.mark.parametrize("name", TOPICS)
def test_what_puts_something_into_a_lamb_says_for_which(name: str) -> None:
    """Beside such a step stand the temperatures and the suck that its page is for."""
    guide = shipped()
    found = [row for row in rows(sheet(name)) if len(row) == 3 and tuple(row) != HEADS]
    ranked = sorted(ends(name), key=lambda end: guide.rank(end.urgency))
    for end, (sign, *_) in zip(ranked, found, strict=True):
        steps = [step for step in end.do if "phone" not in step.tag][:STEPS]
        into = any(INTO & set(step.tag) for step in steps)
        if into and {"temperature", "swallows"} & set(end.for_):
            assert "Only if: " in sign
            assert "not sure" not in sign.lower().partition("only if")[2]
        if not into:
            assert "Only if: " not in sign


@pytest.mark.parametrize("name", TOPICS)
def test_when_to_phone_sooner_than_the_end_says_stands_with_it(name: str) -> None:
    """Of an end that waits, each sentence that would call a vet sooner is there."""
    guide, said = shipped(), words(sheet(name))
    for end in ends(name):
        sooner = [each.opens for each in guide.front.urgencies[: guide.rank(end.urgency)] if each.opens]
        for sentence in flat(Wall(guide).fill(end.call_vet)).split(". "):
            if any(sentence.startswith(opens) for opens in sooner):
                assert sentence in said


def test_the_vets_number_stands_under_each_call() -> None:
    """Where one is kept; and not under what needs no vet now."""
    parts = topic_parts(Wall(shipped()), "scours", phone_line(HOLDING))
    page = parsed(sheets_of("Scours", parts, FOOT, "a4"))
    heads = [words(each) for name in ("now", "today", "later") for each in of_class(page, name)]

    assert phone_line(HOLDING) == "01632 960111, at night 01632 960222"
    assert phone_line(Holding()) == ""
    assert phone_line(replace(HOLDING, vet="")) == "01632 960222"
    assert heads
    for head in heads:
        assert ("01632 960111" in head) == head.startswith("Phone")


@pytest.mark.parametrize("name", TOPICS)
def test_no_amount_for_one_lamb_stands_on_a_wall(name: str) -> None:
    """Where the guide works out a sum, the wall says that it is this lamb's own measure."""
    said = words(sheet(name))

    assert "{" not in said
    assert "is a guess" not in said


def test_a_sum_is_named_by_what_it_is() -> None:
    """Sums become a measure, a count of feeds, or the vet's dose; numbers become figures."""
    wall = Wall(shipped(), "us")

    assert wall.fill("Give {first-milk} now.") == f"Give {MEASURE} now."
    assert wall.fill("{milk-count}") == SAID["milk-count"].capitalize()
    assert wall.fill("Above {severe-chill}.") == "Above 98.6 \u00b0F."


@pytest.mark.parametrize("name", TOPICS)
def test_a_caution_of_many_ends_stands_once_above_all(name: str) -> None:
    """It is not said again in each row."""
    wall = Wall(shipped())
    cautions = [caution for end in ends(name) for caution in dict.fromkeys(end.cautions)]
    lists = texts(sheet(name), "li")
    cells = " ".join(cell for row in rows(sheet(name)) for cell in row)
    for caution in dict.fromkeys(cautions):
        shared = cautions.count(caution) >= SHARED
        assert (f"-{flat(wall.fill(caution))}" in lists) == shared
        assert not (shared and flat(wall.fill(caution)) in cells)


def test_an_edited_guide_makes_another_sheet() -> None:
    """Words changed in the data stand on the wall at the next printing."""
    guide = shipped()
    end = ends("scours")[0]
    nodes = {**guide.nodes, end.name: replace(end, title="Invented words for this test")}

    assert "Invented words for this test" in words(sheet("scours", guide=replace(guide, nodes=nodes)))


def signs_page(holding: Holding, vet: str = "") -> object:
    return parsed(sheets_of("Danger signs", danger_parts(Wall(shipped()), holding, vet), FOOT, "a4"))


@pytest.mark.parametrize(
    "holding",
    [
        Holding(),
        HOLDING,
        Holding(
            vet="the number on the door of the dairy",
            place="Nowhere Farm at the end of the lane, Nowhere Magna",
            found_by="gate after the church, " * 6,
            out_of_hours="01632 960222 and then 2 for sheep, or 01632 960333",
        ),
    ],
)
def test_the_danger_signs_are_one_sheet_each(holding: Holding) -> None:
    """The lamb's, the ewe's and the flock's: signs, numbers and place, also where the place takes many words."""
    sheets = laid(danger_parts(Wall(shipped()), holding))

    assert len(sheets) == len(shipped().front.danger_signs) == 3
    assert all(sheet.html.count("<h1") == 1 for sheet in sheets)


def test_the_danger_signs_are_those_of_the_guide_in_its_order() -> None:
    """Each in its own words, with the call and the numbers above them, and what the guide asks."""
    guide, wall = shipped(), Wall(shipped())
    sheets = of_class(signs_page(HOLDING), "sheet")
    for (name, choices), page in zip(guide.front.danger_signs.items(), sheets, strict=True):
        finding = guide.findings[name]
        said = texts(page, "h3")
        everything = words(page)
        title = guide.topics[name.partition("-danger")[0]].title if "-" in name else danger.NAME
        assert texts(page, "h1") == [title]

        assert said == [flat(wall.fill(finding.choices[each])) for each in choices]
        assert everything.index("Phone the vet now") < everything.index("01632 960111")
        assert everything.index("01632 960111") < everything.index("01632 960222")
        assert everything.index("01632 960222") < everything.index(finding.ask) < everything.index(said[0])
        assert "Nowhere Farm" in everything
        assert "second gate" in everything


def test_first_aid_is_shown_only_where_the_sign_itself_leads_to_it() -> None:
    """A sign after which the guide asks more has no step beside it: it could be the wrong one."""
    guide = shipped()
    aid = {
        texts(section, "h3")[0]: [words(each) for each in of_class(section, "aid")]
        for section in of_class(signs_page(HOLDING), "sheet")[0].iter()
        if section.tag.endswith("section") and texts(section, "h3")
    }
    gasping = guide.nodes["gasping"]

    assert isinstance(gasping, End)
    assert aid["Gasping, or blue or grey gums"] == [gasping.do[0].do]
    assert aid["Belly tight as a drum"] == []
    assert aid["Limp, or can't stand an hour after birth"] == []


def test_a_number_given_for_now_goes_before_the_one_that_is_kept() -> None:
    """As on the screen; where none is kept there are lines to write on."""
    assert "01632 960333" in words(signs_page(HOLDING, "01632 960333"))
    assert "01632 960111" not in words(signs_page(HOLDING, "01632 960333"))
    assert "01632 960222" not in words(signs_page(HOLDING, "01632 960333"))
    assert words(signs_page(replace(HOLDING, out_of_hours=HOLDING.vet))).count("01632 960111") == 3
    assert len(of_class(signs_page(Holding()), "blank")) == 4 * 3
    assert danger.NAME in words(signs_page(Holding()))
