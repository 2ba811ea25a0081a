"""Pages of what a walk is made of: the first page, topics, questions, acts, ends and findings."""

from __future__ import annotations

from triage.guide.model import Act, Ask, End, Finding, Front, Node, Topic, Urgency
from triage.maps.words import answers_of, joined, label_of
from triage.page.page import Block
from triage.page.wall import Wall
from triage.reading.blocks import body, cautions, labelled, listed, numbered, under
from triage.reading.lambs import lamb_lines
from triage.units import show


def front_blocks(wall: Wall, front: Front) -> list[Block]:
    """What the guide is for, what it leaves out, and which edition this is."""
    return [
        *body(wall, front.title + "."),
        *body(wall, front.intended_use),
        *under("It does not cover", listed(wall, front.not_covered)),
        *under("This edition", [Block("body", f"Edition {front.edition}, of {front.date}.")]),
    ]


def urgency_blocks(wall: Wall, urgency: Urgency) -> list[Block]:
    """What an urgency means, and what is asked of the vet."""
    return [*body(wall, urgency.means), *labelled(wall, "What you ask the vet", urgency.asks)]


def topic_blocks(wall: Wall, topic: Topic) -> list[Block]:
    """What a topic is about, and how it can end."""
    ends = [node for node in wall.guide.by_topic.get(topic.name, ()) if isinstance(node, End)]
    blocks = body(wall, topic.about)
    for urgency in wall.guide.front.urgencies:
        titles = (end.title for end in ends if end.urgency == urgency.name)
        blocks += under(f"Ends with: {urgency.say}", listed(wall, titles))
    return blocks


def node_blocks(wall: Wall, node: Node) -> list[Block]:
    """One place on the way, as it would be shown for no one lamb."""
    if isinstance(node, Ask):
        return _ask(wall, node)
    return _act(wall, node) if isinstance(node, Act) else _end(wall, node)


def _ask(wall: Wall, node: Ask) -> list[Block]:
    finding = wall.guide.findings[node.finding]
    ways: dict[tuple[str, str], list[str]] = {}
    for answer, to, at_least in answers_of(wall, node):
        ways.setdefault((to, at_least), []).append(answer)
    lines = []
    for (to, at_least), answers in ways.items():
        call = f"{wall.guide.urgency(at_least).say}. " if at_least else ""
        lines.append(Block("body", f"{joined(answers)}: {call}Then {_named(wall, node, to)}", "-"))
    return [*body(wall, finding.look), *under("Where the answers lead", lines)]


def _named(wall: Wall, here: Ask, name: str) -> str:
    """Return a place that is led to, as the end of a sentence; one of another topic with that topic."""
    to = wall.guide.nodes[name]
    other = f" (in {wall.guide.topics[to.topic].title})" if to.topic != here.topic else ""
    return f"{label_of(wall, to)}{other}."


def _act(wall: Wall, node: Act) -> list[Block]:
    after = [f"Then wait {wall.number(node.wait)} and go on."] if node.wait else []
    after += [f"At most {node.at_most} times."] if node.at_most else []
    labels = [wall.guide.findings[name].label for name in node.forget]
    after += [f"Asked again afterwards: {', '.join(labels)}."] if labels else []
    return [
        *numbered(wall, (step.do for step in node.steps)),
        *cautions(wall, node.cautions),
        *under("Afterwards", listed(wall, after)),
        *under("For which lambs", listed(wall, lamb_lines(wall, node.for_))),
    ]


def _end(wall: Wall, node: End) -> list[Block]:
    again = f" Look again in {wall.number(node.look_again)}." if node.look_again else ""
    return [
        Block("caution", f"{wall.guide.urgency(node.urgency).say}.", "!"),
        *body(wall, node.likely),
        *under("What to do", numbered(wall, (step.do for step in node.do))),
        *cautions(wall, node.cautions),
        *labelled(wall, "When to phone", f"{node.call_vet}{again}"),
        *under("For which lambs", listed(wall, lamb_lines(wall, node.for_))),
    ]


def finding_blocks(wall: Wall, finding: Finding) -> list[Block]:
    """How something is asked and looked at, why, and what may be answered."""
    return [
        *body(wall, finding.ask),
        *body(wall, finding.look),
        *labelled(wall, "Why it matters", finding.why),
        *under("What may be answered", listed(wall, _answers(wall, finding))),
        *labelled(wall, "Why it has no 'not sure'", finding.never_unsure),
    ]


def _answers(wall: Wall, finding: Finding) -> list[str]:
    answers = list(finding.choices.values())
    if finding.measure:
        low, high = (show(each, finding.measure, wall.system) for each in finding.plausible)
        answers.append(f"From {low} to {high}; beyond that is taken for a slip.")
    if finding.usual:
        low, high = (show(each, finding.measure, wall.system) for each in finding.usual)
        answers.append(f"Outside {low} to {high} it is asked once more.")
    return answers if finding.never_unsure else [*answers, finding.unsure or "Not sure"]
