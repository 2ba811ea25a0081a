"""The reading grade against worked figures that others have published.

The formula is that of Kincaid, Fishburne, Rogers and Chissom, "Derivation of new readability formulas
for Navy enlisted personnel", Research Branch Report 8-75, 1975. Sentences, words and syllables are
given as the sources counted them, so that only the formula is held here.
"""

from __future__ import annotations

import pytest

from triage.check.wording.reading import Measured, measure, sentences_in, words_in
from triage.guide.texts import Passage
from triage.problems import Place


@pytest.mark.parametrize(
    ("sentences", "words", "syllables", "grade"),
    [
        (1, 13, 24, 11.3),  # Wikipedia, "Flesch-Kincaid readability tests": the sentence on the platypus
        (1, 13, 26, 13.08),  # README of the npm package flesch-kincaid 2.0.1: the same, counted otherwise
        (1, 13, 22, 9.45),  # README of the npm package flekin: a sentence of William James
        (100, 570, 581, -1.3),  # Wikipedia: Green Eggs and Ham, 5.7 words and 1.02 syllables on average
        (1, 1, 1, -3.4),  # Wikipedia: the lowest there can be
    ],
)
def test_the_grade_is_the_published_one(sentences: int, words: int, syllables: int, grade: float) -> None:
    """From published counts the grade comes out as published, to the digits that were printed."""
    digits = len(str(grade).partition(".")[2])

    assert round(Measured(sentences, words, syllables).grade, digits) == grade


def test_words_and_sentences_are_counted_as_flesch_did() -> None:
    """Contractions and hyphenated words are one word, figures are words, titles are not counted.

    Rudolf Flesch, "How to write plain English", 1979, chapter 2. A number of ours prints as a figure
    and its unit, so it counts as two words, each of one syllable, as he counted figures.
    """
    assert len(words_in("It can't take the milk-fed lamb 17 steps.")) == 8
    assert len(words_in("Wait {pause} and look.")) == 5
    assert sentences_in("Is it up? Then feed it; wait. Look!") == (
        "Is it up?",
        "Then feed it; wait.",
        "Look!",
    )

    title = Passage(Place("a"), "title", "Refrigeration considerations")
    step = Passage(Place("a"), "step", "Wait {pause}.")
    assert measure([title, step]) == Measured(1, 3, 3)
