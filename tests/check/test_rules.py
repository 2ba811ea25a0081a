"""Canaries for the guide's own rules: one that was weakened, or that stopped working, is noticed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import product

import pytest

from tests.check.rule_cases import ROWS, TABLES
from tests.check.rule_rows import NOT_ASKED, Answer, Lamb, Page, Row
from triage.amounts import AMOUNTS
from triage.check.safety import broken
from triage.check.search.searched import search
from triage.facts import UNSURE
from triage.guide.model import Act, Ask, Branch, End, Guide, Node, Number, Step
from triage.guide.model_rules import Rule
from triage.problems import Place
from triage.units import Quantity

FIRST, PAGE, ELSEWHERE = "first", "page", "elsewhere"
AT_PAGE = Place("made-up.yaml", 2)
RAISED_BY = "weather"
"""A finding that no rule speaks of; it is asked first, and any answer raises the walk's urgency."""


def guide_with(guide: Guide, rule: Rule, lamb: Lamb, page: Page) -> Guide:
    """Return a guide with one rule, in which this lamb and no other comes to this page."""
    numbers = dict(guide.numbers)
    asked = {finding: answer for finding, answer in lamb.items() if answer is not NOT_ASKED}
    names = [*asked, PAGE]
    nodes: dict[str, Node] = {FIRST: Ask(FIRST, "made-up", RAISED_BY, _whatever(names[0], page.raised))}
    for (finding, answer), onward in zip(asked.items(), names[1:], strict=True):
        if isinstance(answer, Quantity):
            numbers[finding] = _number(finding, answer)
        nodes[finding] = Ask(finding, "made-up", finding, _only(answer, finding, onward))
    nodes[PAGE] = _page(guide, page)
    nodes[ELSEWHERE] = End(ELSEWHERE, "made-up", "care-here", "Elsewhere", (), (), "Ring.")
    front = replace(guide.front, way_in=FIRST, unless_told={})
    return replace(guide, front=front, nodes=nodes, numbers=numbers, rules={rule.name: rule})


def _number(name: str, value: Quantity) -> Number:
    return Number(name, name, value.value, value.unit, {}, "higher", "common-practice")


def _whatever(go: str, at_least: str) -> tuple[Branch, ...]:
    return (Branch(go, otherwise=True, at_least=at_least), Branch(go, unsure=True, at_least=at_least))


def _only(answer: Answer, number: str, go: str) -> tuple[Branch, ...]:
    """Return branches by which this one answer leads on, and all others lead elsewhere."""
    ways: tuple[Branch, ...] = ()
    if isinstance(answer, Quantity):
        ways = (Branch(ELSEWHERE, below=number), Branch(go, up_to=number))
    elif isinstance(answer, str):
        ways = (Branch(go, is_=(answer,)),)
    not_sure = Branch(go if answer is UNSURE else ELSEWHERE, unsure=True)
    return (*ways, Branch(ELSEWHERE, otherwise=True), not_sure)


def _page(guide: Guide, page: Page) -> Node:
    tags = (*page.tags, *_all_but(guide.front.act_tags, page.no_tags))
    steps = (Step("Do it.", tags, place=AT_PAGE),)
    shown = (*page.shows, *_all_but([*guide.numbers, *AMOUNTS], page.no_shows))
    cautions = (*(f"Up to {{{name}}}." for name in shown), *page.says)
    if page.act:
        return Act(PAGE, "made-up", "Page", steps, ELSEWHERE, cautions, place=AT_PAGE)
    return End(PAGE, "made-up", page.end, "Page", steps, cautions, "Ring.", place=AT_PAGE)


def _all_but(names: Iterable[str], these: tuple[str, ...]) -> list[str]:
    return [name for name in names if these and name not in these]


def stopped(guide: Guide, rule: Rule, lamb: Lamb, page: Page) -> bool:
    """Return whether a rule finds fault with this page, to which this lamb comes."""
    searched = search(guide_with(guide, rule, lamb, page))
    assert any(searched.nodes[at].name == PAGE for at in searched.states.at), f"{lamb} never comes there"
    return any(problem.rule == rule.name and problem.place == AT_PAGE for problem in broken(searched))


def misses(guide: Guide, rule: Rule, row: Row) -> Iterator[str]:
    """Yield what a rule lets through although its row says that it must not, and the other way round."""
    for lamb, page in product(row.bad, row.pages.wrong):
        if not stopped(guide, rule, lamb, page):
            yield f"lets {lamb} come to {page}"
    for lamb, page in [*product(row.bad, row.pages.right), *product(row.good, row.pages.wrong)]:
        if stopped(guide, rule, lamb, page):
            yield f"stops {lamb} at {page}"


@pytest.mark.parametrize("name", ROWS)
def test_a_rule_stops_its_lambs_and_no_others(guide: Guide, name: str) -> None:
    """Each rule is broken by every lamb that it is there for, and by none just on the other side."""
    assert list(misses(guide, guide.rules[name], ROWS[name])) == []


@pytest.mark.parametrize("name", ROWS)
def test_a_rule_asks_for_nothing_beside_its_row(guide: Guide, name: str) -> None:
    """No rule is narrowed by a finding that its lambs do not name, as it would miss lambs unseen."""
    named = {finding for lamb in ROWS[name].bad for finding in lamb}
    assert guide.rules[name].when.keys() <= named


def test_every_rule_has_a_row(guide: Guide) -> None:
    """Every rule of the shipped guide has lambs that it stops and lambs that it leaves alone, and no other row stands."""
    assert len(ROWS) == sum(map(len, TABLES))
    assert ROWS.keys() == guide.rules.keys()
    for name, row in ROWS.items():
        assert row.bad, name
        assert row.pages.wrong, name
        assert row.pages.right, name
        assert row.good or not guide.rules[name].when, name
