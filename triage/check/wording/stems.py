"""The plainer words behind a word: `gently` is `gentle`, `stopped` is `stop`, `unfed` is `fed`."""

from __future__ import annotations

from collections.abc import Iterator

ENDINGS = (
    ("'t", ""), ("n't", ""), ("'ll", ""), ("'re", ""), ("'ve", ""), ("'d", ""),
    ("ies", "y"), ("es", ""),
    ("ied", "y"), ("ed", ""), ("d", ""),
    ("ing", ""), ("ing", "e"),
    ("ier", "y"), ("er", ""), ("r", ""), ("iest", "y"), ("est", ""), ("st", ""),
    ("ily", "y"), ("ly", ""), ("ly", "le"), ("ness", ""), ("iness", "y"),
)  # fmt: skip
"""Endings that make no new word of a plain one, and what stood in their place."""

SHORTEST = 3
"""Letters of the shortest stem, and one more where an `e` was added: `thing` is not made from `the`."""

DOUBLED = ("ed", "ing", "er", "est")
"""Endings before which a last letter may be doubled."""


def stems(word: str) -> Iterator[str]:
    """Yield the word, and every shorter one that it may have been made from."""
    yield word
    for ending, instead in ENDINGS:
        stem = word.removesuffix(ending) + instead
        if word.endswith(ending) and len(stem) >= SHORTEST + instead.endswith("e"):
            yield stem
            if ending in DOUBLED and stem[-1] == stem[-2]:
                yield stem[:-1]
    if word.endswith("s"):
        yield from stems(word[:-1])
    if word.startswith("un"):
        yield from stems(word[2:])
