"""The book leads to the same ends as the walk, for the same answers, and calls the vet no later."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.book.conftest import DAY
from tests.book.reader import Book, Reader
from tests.book.walks import Drawing
from tests.conftest import small_guide
from tests.ways import WAYS_IN
from triage.book.making import Making
from triage.book.places import start_of
from triage.book.whole import book_of
from triage.guide.model import Guide
from triage.practice.case import Case
from triage.practice.written import case_of
from triage.units import System
from triage.walk import Walk, opens
from triage.ways_in import about

WALKS = 1000
NEAR = 6


def read_on(book: Book, guide: Guide, walk: Walk, system: System = "metric") -> Reader:
    """A reader who has gone as far as a walk went."""
    moves = [*walk.moves]
    told = bool(moves) and opens(guide, moves[0])
    start = guide.front.way_in if told else start_of(guide)
    reader = Reader(book, guide, f"node-{start}", system)
    if not told:
        reader.known.update(guide.front.unless_told)
    reader.follow(moves)
    return reader


def differs(book: Book, guide: Guide, walk: Walk, system: System = "metric") -> str:
    """What is other in the book than on a walk, or nothing."""
    reader = read_on(book, guide, walk, system)
    came = reader.at.removeprefix("node-")
    if came != walk.node.name:
        return f"the book comes to {came}, the walk to {walk.node.name}: {walk.moves}"
    by_words = {urgency.say: urgency.name for urgency in guide.front.urgencies}
    met = min((guide.rank(by_words[call]) for call in reader.calls), default=guide.rank(""))
    if met != guide.rank(walk.state.urgency):
        return f"the book calls for {reader.calls}, the walk for {walk.state.urgency}: {walk.moves}"
    return ""


def test_every_practice_case_comes_to_its_page(guide: Guide, metric: Book) -> None:
    """All of them, with the urgency of all their answers."""
    cases = [case_of(guide, written) for written in guide.cases.values()]

    assert len(cases) > 200
    assert [
        said for case in cases if not isinstance(case, Case) or (said := differs(metric, guide, case.walk))
    ] == []


@pytest.mark.parametrize("system", ["metric", "us"])
def test_walks_by_chance_come_to_the_same_end(guide: Guide, metric: Book, us: Book, system: System) -> None:
    """Readings lie right at the lines, as the instrument of that unit system shows them."""
    book = us if system == "us" else metric
    drawing = Drawing(guide, system, seed=7)
    cases = [
        case.walk for written in guide.cases.values() if isinstance(case := case_of(guide, written), Case)
    ]
    walks = [drawing.walk() for _ in range(WALKS)]
    walks += [drawing.near(case) for case in cases for _ in range(NEAR)]

    assert [said for walk in walks if (said := differs(book, guide, walk, system))][:3] == []
    assert len({walk.node.name for walk in walks}) > 190
    assert any(walk.state.times for walk in walks)


def test_an_act_that_was_done_often_enough_leads_on(tmp_path: Path) -> None:
    """The small guide's warming is done twice; who comes a third time goes to the other page."""
    small = small_guide(tmp_path, *WAYS_IN)
    book = Book(book_of(Making(small, DAY)))
    walk = Walk(small).answer("none").answer(36.0).done().answer(36.5).done().answer(36.9)

    assert walk.node.name == "still-cold"
    assert differs(book, small, walk) == ""
    assert differs(book, small, walk.back()) == ""


def test_the_other_ways_in_lead_to_their_ends(tmp_path: Path) -> None:
    """A ewe and a flock begin at the question what it is about."""
    small = small_guide(tmp_path, *WAYS_IN)
    book = Book(book_of(Making(small, DAY)))
    drawing = Drawing(small, "metric", seed=3)
    walks = [drawing.walk() for _ in range(200)]

    assert [said for walk in walks if (said := differs(book, small, walk))] == []
    assert {about(walk) for walk in walks} == {"", "ewe", "flock"}


def test_a_book_with_a_wrong_link_is_found_out(guide: Guide, metric: Book) -> None:
    """The comparison sees a single link that leads elsewhere, and a call that was left out."""
    wrong = Book(metric.html.replace('href="#node-warmth"', 'href="#node-suck"'))
    mute = Book(metric.html.replace("<strong>Phone the vet now, then go on</strong> ", ""))
    drawing = Drawing(guide, "metric", seed=5)
    walks = [walk for walk in (drawing.walk() for _ in range(300)) if not about(walk)]

    with pytest.raises(AssertionError):
        assert [said for walk in walks if (said := differs(wrong, guide, walk))] == []
    assert any("the book calls" in differs(mute, guide, walk) for walk in walks)
