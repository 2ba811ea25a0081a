"""What of a guide's frame an own folder may not touch, whoever signs: what the proof and every page go by."""

from __future__ import annotations

from collections.abc import Iterator

from triage.guide.model import Front, Guide
from triage.guide.rewording import Words
from triage.problems import Problem


def frame_lost(base: Front, now: Front) -> Iterator[str]:
    """Yield each part of the first page that is less than it was."""
    if (base.way_in, base.unless_told) != (now.way_in, now.unless_told):
        yield "way_in"
    for name in ("urgencies", "intended_use", "edition", "date"):
        if getattr(base, name) != getattr(now, name):
            yield name
    if base.review_by and not now.review_by <= base.review_by:  # days are written year first
        yield "review_by"
    yield from _taken_away(base, now)


def _taken_away(base: Front, now: Front) -> Iterator[str]:
    if not (set(base.not_covered) <= set(now.not_covered) and set(base.vet_asks) <= set(now.vet_asks)):
        yield "not_covered or vet_asks"
    for finding, signs in base.danger_signs.items():
        if not set(signs) <= set(now.danger_signs.get(finding, ())):
            yield "danger_signs"
    if not (base.act_tags.items() <= now.act_tags.items() and set(base.topics) <= set(now.topics)):
        yield "topics or act_tags"
    if not {(e.says, e.tag) for e in base.tag_words} <= {(e.says, e.tag) for e in now.tag_words}:
        yield "tag_words"
    for tag, findings in base.tag_changes.items():
        if not set(findings) <= set(now.tag_changes.get(tag, ())):
            yield "tag_changes"


def swapped(guide: Guide, words: Words) -> Iterator[Problem]:
    """Yield other words that make one answer or urgency read like another one."""
    pairs, places = words.pairs, {pair.shipped: pair.place for pair in words.words}
    groups = [tuple(finding.choices.values()) for finding in guide.findings.values() if finding.choices]
    for texts in (*groups, tuple(each.say for each in guide.front.urgencies)):
        for text in texts:
            here = pairs.get(text, text)
            if here != text and any(
                here in (other, pairs.get(other, other)) for other in texts if other != text
            ):
                what = f"these words are those of another answer or urgency, '{here[:60]}'"
                yield Problem(places[text], what, "own-frame")
