"""Canaries for the wording: a small guide that says it badly, and what is said of it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.conftest import SMALL, small_guide
from tests.cupboard.made import CHANGES as STOCKED
from triage.check.wording import items, orders, reading, trade, unwritten
from triage.check.wording.stems import stems
from triage.guide.glossary import tokens_of
from triage.guide.model import Guide
from triage.guide.model_rearing import Duty, Law
from triage.problems import Place, Problem

FIRST = "topics/first.yaml"
HOW_TO = "how-to/measure-it.yaml"
FINDINGS = "findings/all.yaml"
Change = tuple[str, str, str]

CHECKS = (
    reading.long_sentences, reading.long_on_average, reading.grades, items.too_many, orders.vague,
    trade.unexplained, trade.unused,
    unwritten.left,
)  # fmt: skip

LONG_SENTENCES = f"It is {'very ' * 19}ill. " * 14
HARD_WORDS = "Unnecessary hesitation habitually endangers defenceless animals. " * 20

CANARIES: list[tuple[str, str, list[Change]]] = [
    ("long-sentence", "23 words in one sentence, 22 at most", [(FIRST, "It is ill.", f"It is {'very ' * 20}ill.")]),
    ("long-on-average", "the sentences of topic 'first' have 1", [(FIRST, "It is ill.", LONG_SENTENCES)]),
    ("long-on-average", "the sentences of how-to 'measure-it' have 14.7", [
        (HOW_TO, "Hold it still.", f"Hold it {'very ' * 17}still., Hold it {'very ' * 19}still."),
    ]),
    ("long-on-average", "the sentences of the questions have 1", [(FINDINGS, "It can die.", LONG_SENTENCES)]),
    ("reading-grade", "the reading grade of topic 'first' is", [(FIRST, "It is ill.", HARD_WORDS)]),
    ("reading-grade", "the reading grade of the how-tos is", [(HOW_TO, "Hold it still.", HARD_WORDS)]),
    ("reading-grade", "the reading grade of the questions is", [(FINDINGS, "It can die.", HARD_WORDS)]),
    ("reading-grade", "the reading grade of the cupboard is", [*STOCKED, ("cupboard.yaml", "It feeds.", HARD_WORDS)]),
    ("too-many-items", "'well' has 5 cautions; 4 at most", [(FIRST, "[Not too much.]", "[A., B., C., D., E.]")]),
    ("too-many-items", "'measure-it' has 5 cautions; 4 at most", [(HOW_TO, "[Be gentle.]", "[A., B., C., D., E.]")]),
    ("too-many-items", "'measure-it' has 8 steps; 7 at most", [(HOW_TO, "[Hold it still.]", "[A., B., C., D., E., F., G., H.]")]),
    ("vague-order", "'often' says no time", [(FIRST, "Feed it., tag", "Feed it often., tag")]),
    ("vague-order", "'Keep an eye on' says no time", [(FIRST, "Not too much.", "Keep an eye on it.")]),
    ("vague-order", "'soon' says no time", [(FIRST, "Phone if it goes limp.", "Phone soon.")]),
    ("vague-order", "'as soon as possible' says no time", [(FIRST, "Phone if it goes limp.", "Phone as soon as possible.")]),
    ("vague-order", "'monitor' says no time", [(HOW_TO, "Hold it still.", "Then monitor it.")]),
    ("vague-order", "'Watch for' says no time", [(HOW_TO, "Be gentle.", "Watch for pain.")]),
    ("vague-order", "'if necessary' names no sign to go by", [(FIRST, "Feed it., tag", "Feed it if necessary., tag")]),
    ("vague-order", "'as needed' names no sign to go by", [(FIRST, "Feed it., tag", '"Warm it below {chill} as needed.", tag')]),
    ("vague-order", "'a little milk' says no amount", [(FIRST, "Feed it., tag", "Give a little milk., tag")]),
    ("vague-order", "'some warm milk' says no amount", [(FIRST, "Feed it., tag", '"Give some warm milk in {pause}.", tag')]),
    ("vague-order", "'often' says no time", [(FIRST, "Feed it., tag", '"Wait {pause}. Feed it often.", tag')]),
    ("no-glossary-entry", "'hypothermic' is no plain word", [(FIRST, "It is ill.", "It is hypothermic.")]),
    ("no-glossary-entry", "'meconium' is no plain word", [(FINDINGS, "Is it limp?", "Is there meconium?")]),
    ("no-glossary-entry", "'abomasum' is no plain word", [(HOW_TO, "Be gentle.", "Mind the abomasum.")]),
    ("no-glossary-entry", "'ketosis' is no plain word", [("glossary.yaml", "Soft, with no strength.", "Soft from ketosis.")]),
    ("no-glossary-entry", "write it under 'also' of 'limp'", [(FIRST, "It is ill.", "It is limping.")]),
    ("unwritten", "still to be written: 'TOWRITE: it'", [(FIRST, "It is ill.", "'TOWRITE: it'")]),
    ("unwritten", "still to be written: 'TOWRITE'", [("sources.yaml", "An invented paper", "TOWRITE")]),
    ("unused", "no text uses the glossary entry 'wether'", [
        ("glossary.yaml", "limp:", "wether: {means: A male sheep. A wether has no lambs.}\nlimp:"),
    ]),
]  # fmt: skip


def found(folder: Path, *changes: Change) -> list[Problem]:
    guide = small_guide(folder, *changes)
    return [problem for each in CHECKS for problem in each(guide)]


def test_the_small_guide_is_well_worded(small: Guide) -> None:
    """The guide that the canaries spoil is silent."""
    assert [problem for each in CHECKS for problem in each(small)] == []


def raised(
    guide: Guide, do: str = "Rub it dry.", caution: str = "Be kind.", says: str = "Ask a vet."
) -> Guide:
    """Return a guide with a raising plan of one duty and one law; a bar parts the items of a list."""
    place = Place("rearing.yaml", 1, 1)
    duty = Duty("dry-it", "health", "Dry it", tuple(do.split("|")), ("a-paper",), "high", place=place)
    law = Law("here", "Here", (says,), "2026-11-29", ("a-paper",), "low", no_ring=True, place=place)
    cautious = replace(duty, cautions=tuple(caution.split("|")))
    return replace(guide, duties={"dry-it": cautious}, laws={"here": law})


def test_the_small_plan_is_well_worded(small: Guide) -> None:
    """The plan that is spoilt below is silent, and so is one of seven steps and four cautions."""
    for guide in (raised(small), raised(small, "A.|B.|C.|D.|E.|F.|G.", "A.|B.|C.|D.")):
        assert [problem for each in CHECKS for problem in each(guide)] == []


@pytest.mark.parametrize(("rule", "said", "spoilt"), [
    ("reading-grade", "the reading grade of the raising plan is", {"do": HARD_WORDS}),
    ("reading-grade", "the reading grade of the raising plan is", {"says": HARD_WORDS}),
    ("long-on-average", "the sentences of the raising plan have 1", {"caution": LONG_SENTENCES}),
    ("long-on-average", "the sentences of the raising plan have 1", {"says": LONG_SENTENCES}),
    ("too-many-items", "'dry-it' has 8 steps; 7 at most", {"do": "A.|B.|C.|D.|E.|F.|G.|H."}),
    ("too-many-items", "'dry-it' has 5 cautions; 4 at most", {"caution": "A.|B.|C.|D.|E."}),
])  # fmt: skip
def test_a_badly_worded_plan_is_caught(small: Guide, rule: str, said: str, spoilt: dict[str, str]) -> None:
    """Duties and laws are counted as one plan, and each duty's lists have their ends."""
    problems = [problem for each in CHECKS for problem in each(raised(small, **spoilt))]

    caught = [problem for problem in problems if problem.rule == rule and said in problem.what]
    assert caught, "\n".join(map(str, problems))
    assert caught[0].place.file == "rearing.yaml"


@pytest.mark.parametrize(("rule", "said", "changes"), CANARIES)
def test_bad_wording_is_caught(tmp_path: Path, rule: str, said: str, changes: list[Change]) -> None:
    """Each rule catches its canary, at a place in a file."""
    problems = found(tmp_path, *changes)

    caught = [problem for problem in problems if problem.rule == rule and said in problem.what]
    assert caught, "\n".join(map(str, problems))
    assert caught[0].place.file


@pytest.mark.parametrize(
    "order",
    [
        "Feed it often, each {pause}.",
        "Look for the next {pause} as needed.",
        "Bottle feed it as soon as it sucks.",
        "Give it some company, and a little shade.",
    ],
)
def test_an_order_that_says_when_or_how_much_is_no_vague_one(tmp_path: Path, order: str) -> None:
    """A time in the same sentence, or a sign, makes an order definite."""
    problems = found(tmp_path, (FIRST, "Feed it., tag", f'"{order}", tag'))

    assert [problem for problem in problems if problem.rule == "vague-order"] == []


def test_only_orders_are_held_to_be_definite(tmp_path: Path) -> None:
    """What a lamb may have, and why a thing is asked, may well say "often"."""
    assert (
        found(
            tmp_path, (FIRST, "It is ill.", "It is often ill."), (FINDINGS, "It can die.", "It can die soon.")
        )
        == []
    )


def test_a_problem_in_a_step_points_at_its_line(tmp_path: Path) -> None:
    """A vague step is told at the line of the step, not of its node."""
    (problem,) = found(tmp_path, (FIRST, "Feed it., tag", "Feed it often., tag"))
    line = SMALL[FIRST].split("\n")[problem.place.line - 1]

    assert "Feed it." in line


def test_a_word_is_told_once(tmp_path: Path) -> None:
    """However often a strange word is used, it is one line of the report, at its first place."""
    problems = found(
        tmp_path, (FIRST, "It is ill.", "Ketosis, ketosis."), (FIRST, "It is well.", "No ketosis.")
    )

    assert [problem.what.partition(" ")[0] for problem in problems] == ["'ketosis'"]


def test_a_word_in_the_glossary_is_explained(tmp_path: Path) -> None:
    """A strange word with an entry is no problem, in any form that its entry names, nor is the entry unused."""
    ketosis = "ketosis: {means: Sour blood., also: [ketotic]}\nlimp:"

    assert found(tmp_path, (FIRST, "It is ill.", "It is ketotic."), ("glossary.yaml", "limp:", ketosis)) == []


@pytest.mark.parametrize(
    "word",
    [
        "lambs",
        "stopped",
        "stopping",
        "gently",
        "heaters",
        "dried",
        "driest",
        "easily",
        "unfed",
        "can't",
        "wetness",
        "women",
        "bottles",
        "taken",
    ],
)
def test_everyday_words_and_their_forms_are_plain(word: str) -> None:
    """Forms that add an everyday ending to a plain word are plain."""
    assert trade.is_plain(word)


@pytest.mark.parametrize("word", ["hypothermia", "colostrum", "meconium", "intravenous", "rumen", "aspiration", "lethargic", "neonatal", "palpate"])  # fmt: skip
def test_words_of_the_trade_are_not_plain(word: str) -> None:
    """Words that a keeper's vet uses and a keeper may not are not on the list of plain words."""
    assert not trade.is_plain(word)


def test_no_word_is_made_from_one_that_it_only_looks_like() -> None:
    """An ending is taken off only where enough of the word is left."""
    assert "the" not in list(stems("thing"))
    assert "be" not in list(stems("being"))


def test_the_list_of_plain_words_is_kept_in_order(guide: Guide) -> None:
    """It is sorted, names no word twice, and holds no form that the shipped glossary explains."""
    words = (Path(trade.__file__).parent / "plain_words.txt").read_text(encoding="utf-8").split()
    explained = {tokens_of(form) for term in guide.glossary.values() for form in (term.word, *term.also)}

    assert words == sorted(set(words))
    assert not {(word,) for word in words} & explained


def test_the_shipped_guide_is_well_worded(guide: Guide) -> None:
    """The guide that ships has nothing to mend in its wording."""
    assert [str(problem) for each in CHECKS for problem in each(guide)] == []
