"""Guides of shapes that are rare at random, in each of which merged lambs, or a walk told, once misled."""

from __future__ import annotations

from dataclasses import replace

from tests.published.rich_guides import guide_of, place_of
from tests.published.rich_parts import POOL
from triage.guide.model import Act, Ask, Branch, Condition, End, Guide, Node, Step
from triage.guide.model_rules import Rule, Trait


def _guide(*nodes: Node, rule: Rule | None = None, stand_ins: tuple[str, ...] = ()) -> Guide:
    findings = {each.name: each for each in POOL}
    findings["birth-type"] = replace(findings["birth-type"], stand_ins=stand_ins)
    signs = {"danger": ("yes",)}
    rules = [rule] if rule else []
    return guide_of({node.name: node for node in nodes}, rules, signs, findings=findings)


def _ask(name: str, finding: str, *branches: Branch, unsure: str = "") -> Ask:
    told = [replace(each, place=place_of(name, at + 2)) for at, each in enumerate(branches)]
    if unsure:
        told.append(Branch(unsure, unsure=True, place=place_of(name, len(told) + 2)))
    return Ask(name, "topic", finding, tuple(told), place_of(name))


def _is(go: str, *choices: str, at_least: str = "") -> Branch:
    return Branch(go, is_=choices, at_least=at_least)


def _end(name: str, urgency: str = "care-here", *steps: Step) -> End:
    return End(name, "topic", urgency, "Milk", steps, (), "Phone.", place=place_of(name))


RARE: dict[str, Guide] = {
    "a danger sign shares its branch with a choice that the next node, in silence, leads to a call": _guide(
        _ask("n0", "danger", _is("n1", "no", "yes", "bad"), unsure="n1"),
        _ask("n1", "danger", _is("n2", "no", "bad"), _is("n3", "yes"), unsure="n3"),
        _end("n2", "vet-now"),
        _end("n3"),
    ),
    "a danger sign shares its branch with a choice, and nothing tells them apart": _guide(
        _ask("n0", "danger", _is("n1", "no", "yes"), _is("n1", "bad"), unsure="n1"),
        _end("n1"),
    ),
    "a rule is only about lambs that are merged with others by the time that its second finding is asked": _guide(
        _ask("n0", "temperature", Branch("n2", below="cool"), Branch("n1", otherwise=True), unsure="n2"),
        _ask("n1", "age", Branch("n2", below="day-old"), Branch("n2", otherwise=True), unsure="n2"),
        _ask("n2", "temperature", Branch("n3", below="hot"), Branch("n3", otherwise=True), unsure="n3"),
        _end("n3"),
        _end("n4", "care-here", Step("Milk.", ("feed",))),
        rule=Rule(
            "rule-0",
            "So.",
            (),
            never=Trait(tag=("feed",)),
            when={"age": (Condition(from_="just-born"),), "temperature": (Condition(below="cool"),)},
        ),
    ),
    "a rule is about a lamb of whom something was asked, was forgotten, and is not asked again": _guide(
        _ask("n0", "danger", Branch("n1", otherwise=True), unsure="n1"),
        _ask("n1", "mouth", Branch("n2", otherwise=True), unsure="n2"),
        Act("n2", "topic", "Wait", (), "n3", forget=("danger",), place=place_of("n2")),
        _end("n3", "care-here"),
        rule=Rule(
            "rule-0",
            "So.",
            (),
            always=Trait(says=("milk",)),
            when={"danger": (Condition(unasked=True),), "mouth": (Condition(is_=("cold",)),)},
        ),
    ),
    "words of a rule stand at the end of one text and the beginning of the next": _guide(
        _end("n0", "care-here", Step("Look at it.", ())),
        rule=Rule("rule-0", "So.", (), always=Trait(says=("milk look",))),
    ),
    "an answer without a way on is merged with not sure, which has none either": _guide(
        _ask("n0", "danger", _is("n1", "no"), _is("n1", "yes"), _is("n1", "bad"), unsure="n1"),
        _ask("n1", "danger", _is("n2", "yes"), _is("n2", "bad")),
        _end("n2"),
    ),
    "an answer without a way on comes alone, and not sure goes another way": _guide(
        _ask("n0", "danger", _is("n1", "no"), _is("n2", "yes"), _is("n2", "bad"), unsure="n2"),
        _ask("n1", "danger", _is("n2", "yes"), _is("n2", "bad")),
        _end("n2"),
    ),
    "not sure is the easy way out only for a lamb that was told nothing before": _guide(
        _ask("n0", "mouth", _is("n1", "warm", at_least="vet-now"), _is("n1", "cold"), unsure="n1"),
        _ask("n1", "danger", _is("n2", "no"), _is("n2", "yes", at_least="vet-now"), _is("n2", "bad"), unsure="n2"),
        _end("n2"),
    ),
    "a call comes late only for a lamb that was told nothing before": _guide(
        _ask("n0", "mouth", _is("n1", "warm", at_least="vet-now"), _is("n1", "cold"), unsure="n1"),
        _ask("n1", "danger", _is("n2", "no"), _is("n3", "yes", "bad"), unsure="n3"),
        Act("n2", "topic", "Wait", (), "n3", place=place_of("n2")),
        _end("n3", "vet-now"),
    ),
    "a stand-in is come to by known answers first": _guide(
        _ask("n0", "birth-type", _is("n1", "single"), _is("n1", "twin", "triplet", at_least="vet-now"), unsure="n1"),
        _ask("n1", "age", Branch("n2", below="just-born"), Branch("n2", otherwise=True), unsure="n2"),
        _end("n2"),
        stand_ins=("age",),
    ),
}  # fmt: skip
"""By what is rare in them."""
