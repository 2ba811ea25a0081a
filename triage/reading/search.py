"""Looking for words: titles first, then texts; forgiving of plurals, capitals and slips of a finger."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from functools import cached_property

from triage.guide.model import PLACEHOLDER
from triage.page.wall import Wall
from triage.reading.collection import Collection
from triage.reading.kinds import parted, title_of

_WORD = re.compile(r"[^\W_]+(?:'[^\W_]+)*")

ORDER = (
    "topic", "finding", "how-to", "node", "sum", "number", "item", "duty", "term", "rule", "urgency", "law",
    "guide", "source", "deed", "case",
)  # fmt: skip
"""Which kind stands first where two are found as well as each other."""

SMALL = frozenset(
    {"a", "an", "and", "the", "of", "in", "on", "at", "to", "it", "is", "be", "or", "if", "for", "with", "by"}
    | {"as", "from", "that", "this", "no", "not", "its"}
)
"""Words that nearly every text has; they are looked for only where nothing else was typed."""

IN_TITLE, IN_NAME, IN_TEXT = 10.0, 4.0, 2.0
"""How much it counts where a word stands: in the title, in the name that its author gave it, in a text."""

EXACT, BEGUN, LIKE = 1.0, 0.7, 0.5
"""How much it counts where a word is the one typed, begins with it or has its letters, or is only like it."""

MOST_LIKE = 4
"""Words that are taken for a word with a slip in it; more would be guessing."""

NEAR = 0.75
"""How like two words have to be, from 0 to 1, as difflib counts it."""

SHORTEST = 3
"""Letters from which on the beginning of a word is enough."""


def stem(word: str) -> str:
    """Return a word without the ending of a plural: `lambs` is `lamb`, `bodies` is `body`."""
    word = word.casefold().removesuffix("'s")
    if len(word) > 4 and word.endswith("ies"):
        return f"{word[:-3]}y"
    if len(word) > 4 and word.endswith(("ches", "shes", "xes", "sses")):
        return word[:-2]
    if len(word) > SHORTEST and word.endswith("s") and not word.endswith(("ss", "us", "is")):
        return word[:-1]
    return word


def words_in(text: str) -> Iterator[str]:
    """Yield the words of a text as they are compared; a number that it names by `{name}` is none."""
    return map(stem, _WORD.findall(PLACEHOLDER.sub(" ", text)))


@dataclass
class Index:
    """The words of all statements. Made once; about a tenth of a second for the whole guide."""

    collection: Collection
    _words: dict[str, dict[str, float]] = field(default_factory=dict, init=False)
    """For each word the statements that have it, and how much that counts."""

    def __post_init__(self) -> None:
        wall = Wall(self.collection.guide)
        for key in self.collection.statements:
            self._note(key, self._title_words(wall, key), IN_TITLE)
            self._note(key, words_in(parted(key)[1].replace("-", " ")), IN_NAME)
            for passage in self.collection.passages[key]:
                self._note(key, words_in(passage.text), IN_TEXT)

    def _note(self, key: str, words: Iterable[str], worth: float) -> None:
        for word in words:
            having = self._words.setdefault(word, {})
            having[key] = max(having.get(key, 0.0), worth)

    def _title_words(self, wall: Wall, key: str) -> Iterator[str]:
        kind, name = parted(key)
        yield from words_in(title_of(wall, key))
        if kind == "term":
            yield from (
                word for other in self.collection.guide.glossary[name].also for word in words_in(other)
            )
        elif kind == "node":
            node = self.collection.guide.nodes[name]
            finding = getattr(node, "finding", "")
            yield from words_in(self.collection.guide.findings[finding].label) if finding else ()

    @cached_property
    def _vocabulary(self) -> list[str]:
        return sorted(self._words)

    def find(self, typed: str) -> tuple[str, ...]:
        """Return the keys of what was found, the best first; empty where nothing is like it.

        What has all of the words stands alone; only where nothing has, what has some of them is found.
        """
        words = list(dict.fromkeys(words_in(typed)))
        words = [word for word in words if word not in SMALL] or words
        scores = [self._scores(word) for word in words]
        every = set.intersection(*(set(each) for each in scores)) if scores else set()
        some = every or {key for each in scores for key in each}
        order = {key: at for at, key in enumerate(self.collection.statements)}

        def rank(key: str) -> tuple[float, int, int]:
            return -sum(each.get(key, 0.0) for each in scores), ORDER.index(parted(key)[0]), order[key]

        return tuple(sorted(some, key=rank))

    def _scores(self, word: str) -> Mapping[str, float]:
        """Return how well each statement fits one word; words only like it count where none is it."""
        found: dict[str, float] = {}
        sure = self._take(found, [word], EXACT)
        if len(word) >= SHORTEST:
            begun = [each for each in self._vocabulary if each.startswith(word) and each != word]
            sure = self._take(found, begun, BEGUN) or sure
        if not sure:
            letters = sorted(word)
            swapped = [
                each for each in self._vocabulary if len(each) == len(word) and sorted(each) == letters
            ]
            like = get_close_matches(word, self._vocabulary, n=MOST_LIKE, cutoff=NEAR)
            self._take(found, swapped, BEGUN)
            self._take(found, like, LIKE)
        return found

    def _take(self, found: dict[str, float], words: Iterable[str], weight: float) -> bool:
        before = len(found)
        for word in words:
            for key, worth in self._words.get(word, {}).items():
                found[key] = max(found.get(key, 0.0), worth * weight)
        return len(found) > before


def named(collection: Collection, typed: str) -> str:
    """Return the key of what is called exactly so, by key, name or title; an empty text if nothing is."""
    asked = " ".join(typed.split()).casefold()
    wall = Wall(collection.guide)
    if asked in collection.statements or (
        parted(asked)[0] == "map" and parted(asked)[1] in collection.guide.topics
    ):
        return asked
    by_kind = sorted(collection.statements, key=lambda key: ORDER.index(parted(key)[0]))
    for key in by_kind:
        if parted(key)[1].casefold() == asked and parted(key)[0] != "guide":
            return key
    return next((key for key in by_kind if title_of(wall, key).casefold() == asked), "")
