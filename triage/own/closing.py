"""Closing the parts of a guide that did not pass their check: there stands "phone your vet" alone."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from triage.check.kinds import UPKEEP
from triage.guide.files import OWN
from triage.guide.model import COMMON_PRACTICE, End, Guide, Node, Step
from triage.problems import Place, Problem, errors
from triage.review.codes import keys_of
from triage.review.statements import Statement

KINDS = {
    "numbers.yaml": "number",
    "findings": "finding",
    "how-to": "how-to",
    "sources.yaml": "source",
    "glossary.yaml": "term",
    "rearing.yaml": "duty",
    "laws.yaml": "law",
    "cupboard.yaml": "item",
    "practice": "case",
    "deeds.yaml": "deed",
}
"""What kind of statement a file holds; a mistake in any other file may be about every topic."""


EVERYWHERE = ("own-less-urgent", "own-too-much")
"""Kinds that are told of one lamb, while others may be led the same way from another topic."""


def grave(problems: Iterable[Problem]) -> list[Problem]:
    """Return the mistakes for which a part must not be used at night; a long sentence is none."""
    return [problem for problem in errors(problems) if problem.rule not in UPKEEP]


def failing(
    guide: Guide, problems: Iterable[Problem], statements: Mapping[str, Statement], moved: Iterable[str] = ()
) -> frozenset[str]:
    """Return the topics that mistakes are about; all of them where the first look is, or where none can tell.

    `moved` are the statements that an own folder changed.
    """
    everything = frozenset(guide.topics)
    found: set[str] = set()
    by_topic = {topic: frozenset(keys_of(statements, guide, topic)) for topic in guide.topics}
    changed = tuple(moved)
    for problem in problems:
        if problem.rule in EVERYWHERE:
            return everything
        about = _topics(guide, problem.place, statements, by_topic, changed)
        if about is None:
            return everything
        found |= about
    way_in = guide.nodes[guide.front.way_in].topic
    return everything if way_in in found else frozenset(found)


def _topics(
    guide: Guide,
    place: Place,
    statements: Mapping[str, Statement],
    by_topic: Mapping[str, frozenset[str]],
    moved: tuple[str, ...],
) -> set[str] | None:
    path = place.file.removeprefix(f"{OWN}/")
    if path.startswith("topics/"):
        return {topic.name for topic in guide.topics.values() if topic.place.file == path} or None
    kind = KINDS.get(path.partition("/")[0])
    if kind is None:
        return None
    if place.file != path:  # of an own file only the statements are known that it changed
        keys = {key for key in moved if key.startswith(f"{kind}/")}
    else:
        keys = {key} if (key := _at(place, statements)) else set()
    if not keys:
        return None
    # What no topic shows, such as a duty of raising, can't be closed by itself.
    return {topic for topic, said in by_topic.items() if said & keys} or None


def _at(place: Place, statements: Mapping[str, Statement]) -> str:
    """Return the key of the statement in which a place lies."""
    before = [each for each in statements.values() if each.place.file == place.file and each.place <= place]
    return max(before, key=lambda each: each.place).key if before else ""


def closed(guide: Guide, topics: Iterable[str]) -> Guide:
    """Return a guide in which each page of these topics says to phone, and gives nothing."""
    shut = frozenset(topics)
    nodes = {name: _shut(guide, node) if node.topic in shut else node for name, node in guide.nodes.items()}
    return replace(guide, nodes=nodes)


def _shut(guide: Guide, node: Node) -> End:
    top = guide.urgency(guide.top)
    tags = guide.front.act_tags
    steps = (("Phone the vet and say what you see.", "phone"), ("Keep it dry and out of the wind.", "dry"))
    return End(
        name=node.name,
        topic=node.topic,
        urgency=guide.top,
        title="This part of the guide is closed",
        likely="It did not pass its check, so nothing of it is shown.",
        do=tuple(Step(do, (tag,)) for do, tag in steps if tag in tags),
        cautions=("Give nothing by mouth before a vet has told you to.",),
        call_vet=f"{top.opens or top.say}, day or night.",
        certainty=COMMON_PRACTICE,
        place=node.place,
    )


def notice(guide: Guide, topics: frozenset[str]) -> str:
    """Return the sentence that stands on every page while something is closed."""
    if not topics:
        return ""
    if topics == frozenset(guide.topics):
        return "This guide did not pass its check and is closed. If a lamb is in danger, phone your vet now."
    titles = "; ".join(guide.topics[each].title for each in guide.topics if each in topics)
    return f"Closed, as it did not pass its check: {titles}. Phone your vet for that."
