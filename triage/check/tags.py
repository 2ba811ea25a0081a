"""Tags: the proof goes by what steps are tagged with, so a step must not do what its tags don't say."""

from __future__ import annotations

from collections.abc import Iterator

from triage.guide.model import Act, Guide
from triage.guide.texts import steps_of
from triage.problems import Problem


def hidden(guide: Guide) -> Iterator[Problem]:
    """A step whose words give away what it does has the tag for it."""
    for node in guide.nodes.values():
        for step in steps_of(node):
            text = step.do.lower()
            for entry in guide.front.tag_words:
                words = next((each for each in entry.says if each.lower() in text), "")
                if words and not set(entry.tag) & set(step.tag):
                    what = f"this step says '{words.lower()}', so its tag should be {' or '.join(entry.tag)}"
                    yield Problem(step.place, what, "hidden-tag")


def stale(guide: Guide) -> Iterator[Problem]:
    """An act that changes something in a lamb makes what was known of it forgotten."""
    for node in guide.nodes.values():
        if isinstance(node, Act):
            tags = {tag for step in node.steps for tag in step.tag}
            changed = [each for tag in sorted(tags) for each in guide.front.tag_changes.get(tag, ())]
            for finding in dict.fromkeys(changed):
                if finding not in node.forget:
                    what = f"'{node.name}' may change '{finding}', so it should forget it; add it to 'forget'"
                    yield Problem(node.place, what, "stale-finding")
