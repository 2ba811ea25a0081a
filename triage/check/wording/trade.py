"""Trade words: each is explained in the glossary, and the glossary explains no word that is not used."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from importlib.resources import files

from triage.check.wording.stems import stems
from triage.guide.glossary import Glossary
from triage.guide.model import Guide, Term
from triage.guide.texts import UNWRITTEN, all_texts
from triage.problems import Place, Problem


@lru_cache(maxsize=1)
def plain_words() -> frozenset[str]:
    """Return the words that need no glossary: a list of everyday English, of house and yard."""
    return frozenset((files("triage.check.wording") / "plain_words.txt").read_text("utf-8").split())


@lru_cache(maxsize=8192)
def is_plain(word: str) -> bool:
    """Whether a word, or one that it is made from, is on the list of plain words."""
    plain = plain_words()
    return len(word) == 1 or any(stem in plain for stem in stems(word))


@lru_cache(maxsize=2)
def _glossary(terms: tuple[Term, ...]) -> Glossary:
    return Glossary(terms)


@lru_cache(maxsize=2)
def _parting(terms: tuple[Term, ...]) -> Callable[[str], tuple[list[Term], list[str]]]:
    """Return what parts a text into trade words and others, each text once for all checks."""
    return lru_cache(maxsize=8192)(_glossary(terms).split)


def unexplained(guide: Guide) -> Iterator[Problem]:
    """Every word is a plain one, or the glossary explains it. A word is told once, where it is first met."""
    terms = tuple(guide.glossary.values())
    glossary, parted = _glossary(terms), _parting(terms)
    first: dict[str, Place] = {}
    for place, _, text in all_texts(guide):
        for word in parted(text)[1]:
            first.setdefault(word, place)
    names = {name.lower() for name in (UNWRITTEN, *(guide.farm.names if guide.farm else ()))}
    for word, place in first.items():
        if word not in names and not is_plain(word):
            owner = next((term.word for stem in stems(word) for term in glossary.split(stem)[0]), "")
            instead = (
                f"write it under 'also' of '{owner}'" if owner else "say it plainer, or explain it there"
            )
            what = f"'{word}' is no plain word and not in the glossary; {instead}"
            yield Problem(place, what, "no-glossary-entry")


def unused(guide: Guide) -> Iterator[Problem]:
    """Every glossary entry explains a word that some text uses; its own meaning does not count."""
    parted = _parting(tuple(guide.glossary.values()))
    texts = (passage.text for passage in all_texts(guide) if passage.kind != "means")
    used = {term.word for text in texts for term in parted(text)[0]}
    for word, term in guide.glossary.items():
        if word not in used:
            what = f"no text uses the glossary entry '{word}'; use it, or delete it"
            yield Problem(term.place, what, "unused")
