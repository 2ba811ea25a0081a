"""The glossary in use: which trade words stand in a text, and which words are left beside them."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from triage.guide.model import PLACEHOLDER, Term

_TOKEN = re.compile(r"[a-z]+(?:'[a-z]+)*|[0-9.,;:?!()]")


@lru_cache(maxsize=4096)
def tokens_of(text: str) -> tuple[str, ...]:
    """Return the words of a text in small letters, without `'s`, and the signs that part them.

    A hyphen is no sign, so that `first-milk` and `first milk` are the same two words.
    """
    found = _TOKEN.findall((PLACEHOLDER.sub(" 0 ", text) if "{" in text else text).lower())
    return tuple(token.removesuffix("'s") for token in found) if "'" in text else tuple(found)


class Glossary:
    """Trade words, ready to be found in texts; a plural that adds an `s` needs no entry of its own."""

    def __init__(self, terms: Iterable[Term]) -> None:
        self._forms: dict[str, list[tuple[tuple[str, ...], Term]]] = {}
        for term in terms:
            for form in (term.word, *term.also):
                words = tokens_of(form)
                for ending in (words, (*words[:-1], f"{words[-1]}s")) if words else ():
                    self._forms.setdefault(ending[0], []).append((ending, term))
        for forms in self._forms.values():
            forms.sort(key=lambda each: -len(each[0]))

    def split(self, text: str) -> tuple[list[Term], list[str]]:
        """Return the trade words of a text in its order, the longest where two begin, and all other words."""
        tokens = tokens_of(text)
        terms: list[Term] = []
        others: list[str] = []
        at = 0
        while at < len(tokens):
            token = tokens[at]
            for words, term in self._forms.get(token, ()):
                if tokens[at : at + len(words)] == words:
                    terms.append(term)
                    at += len(words)
                    break
            else:
                if token[0].isalpha():
                    others.append(token)
                at += 1
        return terms, others

    def terms_in(self, texts: Iterable[str]) -> list[Term]:
        """Return the trade words that texts use, each once, by the alphabet."""
        found = {term.word: term for text in texts for term in self.split(text)[0]}
        return [found[word] for word in sorted(found, key=str.lower)]
