"""The cupboard: each thing is needed by some text, and what the texts need is there."""

from __future__ import annotations

from collections.abc import Iterator

from triage.check.ends import sure
from triage.cupboard.needs import Needs, needs_of, words_of
from triage.guide.model import Guide
from triage.problems import Problem


def needed(guide: Guide) -> Iterator[Problem]:
    """Each thing is named, tagged or shown by some page, how-to or duty."""
    for name, needing in needs_of(guide).items():
        if not any(needing):
            what = f"no page, how-to or duty needs '{name}'; give it the words that they say, or delete it"
            yield Problem(guide.cupboard[name].place, what, "unneeded-item")


def covered(guide: Guide) -> Iterator[Problem]:
    """Each line of what a how-to needs names a thing of the cupboard. Other texts may say any word."""
    needs = Needs(guide)
    for how_to in guide.how_tos.values() if guide.cupboard else ():
        for text in how_to.need:
            if not needs.named((text,)):
                what = (
                    f"'{how_to.name}' needs '{text}', and no item of cupboard.yaml has a word for it; "
                    f"add the word to an item, or a new item"
                )
                yield Problem(how_to.place, what, "need-without-item")


def tags(guide: Guide) -> Iterator[Problem]:
    """Each act tag belongs to a thing, or is said to need none."""
    bare = guide.front.bare_tags
    for tag in guide.front.act_tags if guide.cupboard or bare else ():
        owner = next((item.name for item in guide.cupboard.values() if tag in item.tags), "")
        if not owner and tag not in bare:
            what = (
                f"no item of cupboard.yaml is for steps tagged '{tag}'; "
                f"write the tag at one, or add it to 'bare_tags' if such steps need nothing"
            )
            yield Problem(guide.front.place, what, "tag-without-item")
        elif owner and tag in bare:
            what = f"'{tag}' is in 'bare_tags', and yet '{owner}' is for it; take it from one of them"
            yield Problem(guide.front.place, what, "tag-without-item")


def shared_words(guide: Guide) -> Iterator[Problem]:
    """Each word belongs to one thing, so that it is counted where it is meant."""
    owners: dict[str, str] = {}
    for item in guide.cupboard.values():
        for word in words_of(item):
            owner = owners.setdefault(word, item.name)
            if owner != item.name:
                what = f"'{word}' stands for '{owner}' already; leave it to one of the two"
                yield Problem(item.place, what, "word-of-two-items")


def certain(guide: Guide) -> Iterator[Problem]:
    """A thing is called no surer than its sources are."""
    for item in guide.cupboard.values():
        yield from sure(guide, item.name, item.place, item.sources, item.certainty)
