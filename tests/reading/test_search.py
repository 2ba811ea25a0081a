"""Looking for words: each topic is found by a word of its title, slips and plurals forgiven, titles first."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.guide.model import Ask
from triage.page.wall import Wall
from triage.reading.collection import Collection
from triage.reading.kinds import title_of
from triage.reading.search import SMALL, Index, named, stem, words_in


@pytest.fixture(scope="module")
def index(collection: Collection) -> Index:
    """The words of the shipped guide."""
    return Index(collection)


def slipped(word: str) -> str:
    """A word with two letters in the middle the other way round."""
    middle = len(word) // 2
    return word[: middle - 1] + word[middle] + word[middle - 1] + word[middle + 1 :]


def longest_word(title: str) -> str:
    """The longest word of a title."""
    return max((word.strip(",.") for word in title.split()), key=len)


def test_each_topic_is_found_by_a_word_of_its_title(collection: Collection, index: Index) -> None:
    """Also in capitals; and the first find has the word in its title."""
    wall = Wall(collection.guide)
    for key in collection.of_kind["topic"]:
        word = longest_word(title_of(wall, key))
        for typed in (word, word.upper()):
            found = index.find(typed)
            assert key in found[:8], (key, word)
            assert stem(word) in list(words_in(title_of(wall, found[0]))), word


def test_each_topic_is_found_with_a_slip(collection: Collection, index: Index) -> None:
    """Two letters swapped in the longest word of its title, and it still is among the first finds."""
    wall = Wall(collection.guide)
    for key in collection.of_kind["topic"]:
        word = longest_word(title_of(wall, key))
        assert key in index.find(slipped(word))[:16], (key, slipped(word))


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        ("udders", "term/udder"),
        ("thermometre", "item/thermometer"),
        ("joint", "topic/limbs"),
        ("severe chil", "number/severe-chill"),
        ("stomach tubes", "how-to/pass-stomach-tube"),
        ("orphans", "topic/rejected"),
        ("colostrum", "term/first milk"),
        ("Eales", "source/eales-1982"),
    ],
)
def test_what_people_type_is_found_first(index: Index, typed: str, wanted: str) -> None:
    """Plurals, other spellings, the word that others use, and who wrote a paper."""
    assert wanted in index.find(typed)[:4], index.find(typed)[:6]


def test_all_words_must_be_there_where_any_page_has_all(index: Index, collection: Collection) -> None:
    """Two words find only what has both; only where nothing has both, what has one of them."""
    both = set(index.find("cold swallow"))

    assert both == set(index.find("cold")) & set(index.find("swallow"))
    assert index.find("udder zzzzqqqq") == index.find("udder")


def test_titles_stand_before_texts(index: Index, collection: Collection) -> None:
    """What has a word in its title stands before all that have it neither in a title nor in a name."""
    wall = Wall(collection.guide)
    for word in ("navel", "bottle", "iodine", "fever"):
        found = index.find(word)
        titled = [at for at, key in enumerate(found) if word in words_in(title_of(wall, key))]
        plain = [
            at
            for at, key in enumerate(found)
            if word not in words_in(f"{key} {title_of(wall, key)}".replace("-", " "))
            and not _called_so(collection, key, word)
        ]
        assert titled
        assert max(titled) < min(plain, default=len(found)), word


def _called_so(collection: Collection, key: str, word: str) -> bool:
    """Whether it goes by the word all the same: by what is asked, or by another way of writing a trade word."""
    node = collection.guide.nodes.get(key.removeprefix("node/"))
    if isinstance(node, Ask):
        return word in words_in(collection.guide.findings[node.finding].label)
    term = collection.guide.glossary.get(key.removeprefix("term/"))
    return term is not None and any(word in words_in(other) for other in term.also)


@given(st.text(max_size=60))
def test_whatever_is_typed_is_taken(index: Index, typed: str) -> None:
    """No text of any signs fails, and what is found exists."""
    assert set(index.find(typed)) <= index.collection.statements.keys()


@pytest.mark.parametrize("typed", ["", "   ", "?!", "zzzzqqqq"])
def test_nothing_is_found_by_nothing(index: Index, typed: str) -> None:
    """Blanks, signs and a word that is like none find nothing."""
    assert index.find(typed) == ()


def test_a_small_word_alone_is_looked_for(index: Index) -> None:
    """`not` by itself finds what says it; beside another word it does not count."""
    assert "not" in SMALL
    assert index.find("not")
    assert index.find("not udder") == index.find("udder")


@pytest.mark.parametrize(
    ("typed", "key"),
    [
        ("cold", "topic/cold"),
        ("severe-chill", "number/severe-chill"),
        ("number/severe-chill", "number/severe-chill"),
        ("map/cold", "map/cold"),
        ("Udder", "term/udder"),
        ("temperature", "finding/temperature"),
        ("Cold, limp or flat out", "topic/cold"),
        ("map/nowhere", ""),
        ("something else again", ""),
    ],
)
def test_a_name_goes_straight_there(collection: Collection, typed: str, key: str) -> None:
    """By key, by name, or by title; a topic goes before all else of the same name."""
    assert named(collection, typed) == key


def test_every_statement_is_named_by_its_key(collection: Collection) -> None:
    """What a printed page calls a statement opens it."""
    assert all(named(collection, key) == key for key in collection.statements if key == key.casefold())


def test_stems() -> None:
    """Only the endings of plurals go, and no short word loses its own letters."""
    words = {"lambs": "lamb", "bodies": "body", "boxes": "box", "Gas": "gas", "is": "is", "eyes": "eye"}
    words |= {"anus": "anus", "ewe's": "ewe", "scabs": "scab", "dress": "dress", "rashes": "rash"}

    assert {word: stem(word) for word in words} == words
