"""Trade words in plain words."""

from __future__ import annotations

from triage.book.marks import part
from triage.book.words import Words
from triage.guide.model import Term
from triage.paper.html import safe


def words_part(words: Words) -> str:
    """Return every trade word with its meaning, by the alphabet."""
    terms = sorted(words.guide.glossary.values(), key=lambda term: term.word.lower())
    entries = "".join(_term(words, term) for term in terms)
    return part("words", words.places.number("words"), "Words", f'<dl class="terms">{entries}</dl>')


def _term(words: Words, term: Term) -> str:
    also = f" (also {safe(', '.join(term.also))})" if term.also else ""
    standing = words.standing(f"term/{term.word}")
    return f"<dt>{safe(term.word)}{also}</dt><dd>{words.fill(term.means)}{standing}</dd>"
