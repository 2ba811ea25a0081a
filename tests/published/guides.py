"""Small guides made up by hypothesis, built straight from the model's values."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, composite

from triage.guide.model import Act, Ask, Branch, End, Finding, Front, Guide, Node, Number, Topic, Urgency
from triage.problems import Place, Problem

MANY = settings(deadline=None, max_examples=400, suppress_health_check=[HealthCheck.too_slow])
"""Many small guides, however long that takes on this machine."""

WAY_IN = "n0"
FINDINGS: dict[str, Finding] = {
    "danger": Finding("danger", "Danger", "Any danger?", "Why.", {"yes": "Yes", "no": "No"}),
    "side": Finding("side", "Side", "Which side?", "Why.", {"left": "Left", "right": "Right"}),
    "sure": Finding(
        "sure", "Sure", "Which?", "Why.", {"one": "One", "two": "Two"}, never_unsure="It is seen."
    ),
    "warmth": Finding("warmth", "Warmth", "How warm?", "Why.", measure="degC", plausible=(0.0, 10.0)),
}
NUMBERS = {
    name: Number(name, name, value, "degC", {"common-practice": (value, value)}, "higher", "common-practice")
    for name, value in (("cool", 3.0), ("hot", 7.0))
}
TRIED: dict[str, tuple[float, ...]] = {"warmth": (0.0, 1.5, 3.0, 5.0, 7.0, 8.5, 10.0)}
"""One measurement in each band of `cool` and `hot`, and both numbers themselves."""


def guide_of(nodes: Mapping[str, Node], danger: str = "danger") -> Guide:
    """Return a guide of these nodes; each node's place is its line in one made-up file."""
    front = Front(
        "test",
        "2026-01-01",
        "A made-up guide",
        "For tests.",
        (),
        WAY_IN,
        {danger: tuple(FINDINGS[danger].choices)[:1]},
        (Urgency("vet-now", "Now", "Now."), Urgency("care-here", "Here", "Here.")),
        ("topic",),
        {"check": "Look"},
    )
    return Guide(front, {"topic": Topic("topic", "Topic", "About.")}, FINDINGS, nodes, NUMBERS, {}, {}, {})


def place_of(name: str) -> Place:
    """Return where a node of a made-up guide is written."""
    return Place("made-up.yaml", int(name[1:]) + 1)


def names_at(guide: Guide, problems: Sequence[Problem]) -> list[str]:
    """Return the nodes that problems point to."""
    named = {node.place: name for name, node in guide.nodes.items()}
    return [named[problem.place] for problem in problems]


def end(name: str) -> End:
    """Return an end."""
    return End(name, "topic", "care-here", "End", (), (), "Phone.", place=place_of(name))


def ask(name: str, finding: str, ways: Sequence[str]) -> Ask:
    """Return an ask with as many branches as its finding has answers; `ways` are used in turn."""
    what = FINDINGS[finding]
    tests: list[Branch] = [Branch("", is_=(choice,)) for choice in what.choices]
    if what.measure:
        tests = [Branch("", below="cool"), Branch("", up_to="hot"), Branch("", otherwise=True)]
    if not what.never_unsure:
        tests.append(Branch("", unsure=True))
    branches = tuple(
        Branch(ways[at % len(ways)], test.is_, test.below, test.up_to, test.otherwise, test.unsure)
        for at, test in enumerate(tests)
    )
    return Ask(name, "topic", finding, branches, place_of(name))


def act(name: str, then: str, else_: str = "", at_most: int = 0, forget: tuple[str, ...] = ()) -> Act:
    """Return an act; with `at_most` it is a bounded loop's."""
    return Act(
        name, "topic", "Act", (), then, forget=forget, at_most=at_most, else_=else_, place=place_of(name)
    )


@composite
def any_guides(draw: DrawFn, most: int = 8) -> Guide:
    """Draw a guide of a few nodes that lead anywhere at all, back and into dead ends too."""
    names = [f"n{number}" for number in range(draw(st.integers(1, most)))]
    anywhere = st.sampled_from(names)
    nodes: dict[str, Node] = {}
    for name in names:
        kind = draw(st.sampled_from(["ask", "ask", "ask", "end", "act", "bounded"]))
        if kind == "end":
            nodes[name] = end(name)
        elif kind == "act":
            nodes[name] = act(name, draw(anywhere))
        elif kind == "bounded":
            nodes[name] = act(name, draw(anywhere), draw(anywhere), draw(st.integers(1, 3)))
        else:
            finding = draw(st.sampled_from(sorted(FINDINGS)))
            nodes[name] = ask(name, finding, draw(st.lists(anywhere, min_size=1, max_size=3)))
    return guide_of(nodes)


@composite
def walkable_guides(draw: DrawFn, most: int = 7, rounds: int = 1) -> Guide:
    """Draw a guide that every walk comes to an end of: each loop passes an act done at most `rounds` times."""
    count = draw(st.integers(2, most))
    names = [f"n{number}" for number in range(count)]
    nodes: dict[str, Node] = {}
    for number, name in enumerate(names[:-1]):
        onward, anywhere = st.sampled_from(names[number + 1 :]), st.sampled_from(names)
        forget = tuple(sorted(draw(st.sets(st.sampled_from(sorted(FINDINGS)), max_size=2))))
        kind = draw(st.sampled_from(["ask", "ask", "ask", "ask", "end", "act", "bounded", "bounded"]))
        if kind == "end" and number:
            nodes[name] = end(name)
        elif kind == "act":
            nodes[name] = act(name, draw(onward), forget=forget)
        elif kind == "bounded":
            nodes[name] = act(name, draw(anywhere), draw(onward), draw(st.integers(1, rounds)), forget)
        else:
            finding = draw(st.sampled_from(sorted(FINDINGS)))
            nodes[name] = ask(name, finding, draw(st.lists(onward, min_size=1, max_size=3)))
    nodes[names[-1]] = end(names[-1])
    for _ in range(draw(st.integers(0, 2))):
        _lead_back(draw, nodes)
    return guide_of(nodes)


def _lead_back(draw: DrawFn, nodes: dict[str, Node]) -> None:
    """Lead one branch back to a counted act, from where that act no longer leads once it is used up."""
    ways = {name: _uncounted_ways(node) for name, node in nodes.items()}
    pairs = [
        (name, to)
        for to, counted in nodes.items()
        if isinstance(counted, Act) and counted.at_most
        for name, node in nodes.items()
        if isinstance(node, Ask) and name not in _onward_from(to, ways)
    ]
    if pairs:
        name, to = draw(st.sampled_from(pairs))
        node = nodes[name]
        assert isinstance(node, Ask)
        at = draw(st.integers(0, len(node.branches) - 1))
        turned = replace(node.branches[at], go=to)
        nodes[name] = replace(node, branches=(*node.branches[:at], turned, *node.branches[at + 1 :]))


def _uncounted_ways(node: Node) -> set[str]:
    """Return where a node leads when counted acts are used up."""
    if isinstance(node, Ask):
        return {branch.go for branch in node.branches}
    if isinstance(node, Act):
        return {node.else_ if node.at_most else node.then}
    return set()


def _onward_from(name: str, ways: Mapping[str, set[str]]) -> set[str]:
    """Return every node that one leads to by these ways, itself among them."""
    found, waiting = {name}, [name]
    while waiting:
        for to in ways[waiting.pop()] - found:
            found.add(to)
            waiting.append(to)
    return found
