"""Trade words are found whole, in any of their forms, and nothing else is."""

from __future__ import annotations

import pytest

from triage.guide.glossary import Glossary
from triage.guide.model import Guide, Term

GLOSSARY = Glossary(
    [
        Term("ewe", "A female sheep."),
        Term("ewe lamb", "A female lamb."),
        Term("first milk", "The milk at birth.", ("colostrum",)),
        Term("Johne's disease", "A gut disease.", ("Johne's",)),
        Term("abort", "To lose a lamb.", ("aborted",)),
    ]
)


def found(text: str) -> list[str]:
    return [term.word for term in GLOSSARY.split(text)[0]]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("The ewe's milk, and two ewes.", ["ewe", "ewe"]),
        ("A ewe lamb", ["ewe lamb"]),
        ("First-milk now. Colostrum is best.", ["first milk", "first milk"]),
        ("Wash first. Milk comes later.", []),
        ("first {amount} milk", []),
        ("Johne's disease, or Johne's", ["Johne's disease", "Johne's disease"]),
        ("It aborted. Sewer, ewer, newest.", ["abort"]),
        ("", []),
    ],
)
def test_words_are_found_in_their_forms(text: str, words: list[str]) -> None:
    """A form counts as a whole word, the longest first, with a plural, and not across a full stop."""
    assert found(text) == words


def test_the_other_words_are_left() -> None:
    """What is no trade word comes back word by word, without figures, sums or signs."""
    assert GLOSSARY.split("Give the ewe {milk-feed}, 2 times; don't wait.")[1] == [
        "give",
        "the",
        "times",
        "don't",
        "wait",
    ]


def test_terms_come_once_and_by_the_alphabet() -> None:
    """However often a word is used, it is listed once."""
    assert [term.word for term in GLOSSARY.terms_in(["ewe abort ewe", "Johne's ewe"])] == [
        "abort",
        "ewe",
        "Johne's disease",
    ]


def test_every_form_of_the_shipped_glossary_finds_its_own_entry(guide: Guide) -> None:
    """No form of a shipped entry is taken by another entry."""
    glossary = Glossary(guide.glossary.values())
    for term in guide.glossary.values():
        for form in (term.word, *term.also):
            assert glossary.split(form)[0] == [term], form
