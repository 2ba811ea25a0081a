"""Pages of techniques, rules, raising, laws, the cupboard, words, and what practice plays with."""

from __future__ import annotations

from triage.guide.items import Item
from triage.guide.model import PLACEHOLDER, HowTo, Term
from triage.guide.model_practice import Deed, Farm, WrittenCase
from triage.guide.model_rearing import Duty, Law
from triage.guide.model_rules import Rule
from triage.page.page import Block
from triage.page.wall import Wall
from triage.reading.blocks import body, cautions, labelled, listed, numbered, under
from triage.reading.lambs import lamb_lines, rule_line

FIRST = {
    "tonight": "Have it there tonight.",
    "this-week": "Have it there within the week.",
    "season": "Have it there before the season.",
}
EVENTS = {"weaned": "it is weaned", "weighed": "it is weighed"}


def how_to_blocks(wall: Wall, how_to: HowTo) -> list[Block]:
    """A technique, step by step."""
    return [
        *body(wall, how_to.why),
        *under("You need", listed(wall, how_to.need)),
        *under("Step by step", numbered(wall, how_to.steps)),
        *labelled(wall, "It went right when", how_to.right),
        *labelled(wall, "When to stop", how_to.stop),
        *cautions(wall, how_to.cautions),
        *labelled(wall, "What else to know", how_to.note),
    ]


def rule_blocks(wall: Wall, rule: Rule) -> list[Block]:
    """What must never or always be, for which lambs, and why."""
    return [
        Block("body", rule_line(wall, rule)),
        *under("When", listed(wall, lamb_lines(wall, rule.when))),
        *labelled(wall, "Why", rule.because),
        *body(wall, "A lamb of whom this was never asked is let through." if rule.where_asked else ""),
    ]


def duty_blocks(wall: Wall, duty: Duty) -> list[Block]:
    """What is done in raising a lamb, and at which age."""
    return [
        Block("body", _when(wall, duty)),
        *under("What to do", numbered(wall, duty.do)),
        *labelled(wall, "Why", duty.why),
        *cautions(wall, duty.cautions),
        *under("For which lambs", listed(wall, lamb_lines(wall, duty.for_))),
        *body(wall, "The law of your place may limit this: see the laws." if duty.law else ""),
    ]


def _when(wall: Wall, duty: Duty) -> str:
    parts = [f"From {wall.number(duty.from_)} old" if duty.from_ else "From birth"]
    if duty.from_event in EVENTS:
        parts = [f"From when {EVENTS[duty.from_event]}"]
    if duty.until:
        parts.append(f"until it is {wall.number(duty.until)} old")
    if duty.until_event in EVENTS:
        parts.append(f"until {EVENTS[duty.until_event]}")
    if duty.every:
        parts.append(f"every {wall.number(duty.every)}")
    return f"{', '.join(parts)}."


def law_blocks(wall: Wall, law: Law) -> list[Block]:
    """What the law of a place says of rings, castration and docking, and when that was read."""
    ring = "No ring at any age." if law.no_ring else ""
    if law.ring_until:
        ring = f"A ring with no anaesthetic up to {wall.number(law.ring_until)} old, as we keep to it."
    return [
        *listed(wall, law.says),
        *body(wall, ring),
        *body(wall, f"Read on {law.read}. Laws move: check your own, and ask your vet."),
    ]


def item_blocks(wall: Wall, item: Item) -> list[Block]:
    """A thing of the cupboard: why, by when, how much, and how to keep it."""
    return [
        *body(wall, item.why),
        *body(wall, "Any house or yard has it." if item.at_hand else FIRST.get(item.first, "")),
        *body(wall, _how_many(wall, item)),
        *labelled(wall, "What to ask the vet", item.ask_vet),
        *labelled(wall, "How to keep it", item.keeps),
        *cautions(wall, item.cautions),
    ]


def _how_many(wall: Wall, item: Item) -> str:
    many = item.how_many
    if many is None:
        return ""
    parts = [f"at least {many.least}"] if many.least else []
    parts += [f"one for {many.one_for} lambs"] if many.one_for else []
    if many.each_lamb:
        parts.append(f"for each lamb: {' times '.join(wall.number(name) for name in many.each_lamb)}")
    return f"How much: {', '.join(parts)}." if parts else ""


def term_blocks(wall: Wall, term: Term) -> list[Block]:
    """A trade word in plain words."""
    also = f"Also: {', '.join(term.also)}." if term.also else ""
    return [*body(wall, term.means), *body(wall, also)]


def case_blocks(wall: Wall, case: WrittenCase) -> list[Block]:
    """A made-up lamb of practice, with what misleads in it and what to keep."""
    said = {name: " ".join(typed.text for typed in answers[:1]) for name, answers in case.findings.items()}
    findings = wall.guide.findings
    found = []
    for name, answers in case.findings.items():
        words = (findings[name].choices.get(each.text, each.text) for each in answers)
        found.append(f"{findings[name].label}: {', then '.join(words)}.")
    story = PLACEHOLDER.sub(lambda match: said.get(match[1], match[1]), case.story)
    return [
        Block("body", "This lamb is invented."),
        Block("body", story),
        *under("What is true of it", listed(wall, found)),
        *labelled(wall, "What misleads", case.trap),
        *labelled(wall, "What to keep", case.remember),
    ]


def deed_blocks(wall: Wall, deed: Deed) -> list[Block]:
    """What somebody may be tempted to do, and never as advice."""
    against = [wall.guide.rules[name].because for name in deed.against]
    return [
        Block("caution", "Practice only. People are tempted to do this; it is no advice.", "!"),
        *under("What it goes against", listed(wall, against)),
    ]


def farm_blocks(wall: Wall, farm: Farm) -> list[Block]:
    """The invented farm of the practice cases."""
    return [*body(wall, farm.farm), *under("Who is met there", listed(wall, farm.names))]
