"""Changes to the shipped guide, each told rightly and first things first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from tests.compare.pairs import differences, pair_of
from triage.compare import compare
from triage.guide.find import knowledge_root
from triage.guide.model import Act, Ask, End, Guide, Node, Number
from triage.guide.read import read_guide
from triage.walk import Walk


def with_nodes(guide: Guide, *nodes: Node) -> Guide:
    """Return a guide with some nodes in place of those of their names."""
    return replace(guide, nodes={**guide.nodes, **{node.name: node for node in nodes}})


def with_number(guide: Guide, name: str, value: float) -> Guide:
    """Return a guide with another value of a number."""
    numbers: Mapping[str, Number] = {**guide.numbers, name: replace(guide.numbers[name], value=value)}
    return replace(guide, numbers=numbers)


def test_the_shipped_guide_read_twice_does_not_differ(guide: Guide) -> None:
    """Two readings of one folder are one guide."""
    again = read_guide(knowledge_root()).guide
    assert again is not None
    assert compare(guide, again).same


def test_severe_chill_lowered(guide: Guide) -> None:
    """Lambs that were called for at once and are now fed are first, each with a walk that the real walk takes."""
    new = with_number(guide, "severe-chill", 36.5)
    came = compare(guide, new)
    assert came.complete
    assert not came.more_urgent
    first = came.less_urgent[0]
    assert first.old_urgency == guide.top
    ranks = [guide.rank(each.new_urgency) for each in came.less_urgent]
    assert ranks == sorted(ranks, reverse=True)
    for each in differences(came):
        old, now = Walk(guide, each.old_walk), Walk(new, each.new_walk)
        assert ((old.node.name, old.state.urgency), (now.node.name, now.state.urgency)) == pair_of(each)
        assert each.met == {"number/severe-chill"}
    weaker = {each.rule for each in came.rules_lost if each.never}
    assert "no-feed-when-severely-chilled" in weaker
    assert [(each.number, each.off) for each in came.numbers] == [("severe-chill", "less safe")]


def test_one_end_called_less_urgent(guide: Guide) -> None:
    """Only lambs that come to this very end are told, and none is more urgent."""
    lower = guide.front.urgencies[-1].name
    ends = [each for each in guide.nodes.values() if isinstance(each, End) and each.urgency != lower][::10]
    told = 0
    for end in ends:
        came = compare(guide, with_nodes(guide, replace(end, urgency=lower)))
        assert {(each.old_end, each.new_end) for each in differences(came)} <= {(end.name, end.name)}
        assert not came.more_urgent
        assert all(each.met == {f"node/{end.name}"} for each in came.less_urgent)
        told += bool(came.less_urgent)
    assert told > 3


def test_a_caution_dropped(guide: Guide) -> None:
    """The caution of each end is told when it goes, for that end and no other."""
    ends = [each for each in guide.nodes.values() if isinstance(each, End) and each.cautions][::40]
    assert len(ends) > 3
    for end in ends:
        came = compare(guide, with_nodes(guide, replace(end, cautions=end.cautions[1:])))
        assert [(each.caution, each.old_page, each.new_page) for each in came.lost_cautions] == [
            (end.cautions[0], end.name, end.name)
        ]
        assert not differences(came)


def test_a_danger_sign_that_no_longer_raises(guide: Guide) -> None:
    """Without the call on its branch some lambs with the sign end less urgent, and that comes first."""
    asks = [
        node
        for node in guide.nodes.values()
        if isinstance(node, Ask)
        and node.finding in guide.front.danger_signs
        and any(branch.at_least == guide.top for branch in node.branches)
    ]
    assert asks
    ask = asks[0]
    came = compare(
        guide, with_nodes(guide, replace(ask, branches=tuple(replace(e, at_least="") for e in ask.branches)))
    )
    assert {f"node/{ask.name}"} == came.changed
    assert came.less_urgent or not differences(came)
    assert not came.more_urgent


def test_branches_in_another_order(guide: Guide) -> None:
    """Where choices have branches of their own their order says nothing; where bands have, the first one wins."""
    asks = [each for each in guide.nodes.values() if isinstance(each, Ask)]
    choices = next(
        each for each in asks if len(each.branches) > 3 and all(e.is_ or e.unsure for e in each.branches)
    )
    turned = replace(choices, branches=choices.branches[::-1])
    came = compare(guide, with_nodes(guide, turned))
    assert not differences(came)
    assert came.otherwise == (f"node/{choices.name}",)
    warmth = guide.nodes["warmth"]
    assert isinstance(warmth, Ask)
    bands = [each for each in warmth.branches if each.below or each.up_to]
    rest = [each for each in warmth.branches if each not in bands]
    came = compare(guide, with_nodes(guide, replace(warmth, branches=(*bands[::-1], *rest))))
    assert came.less_urgent


@pytest.mark.parametrize("name", ["warm-by-thermometer"])
def test_what_is_done_on_the_way_left_out(guide: Guide, name: str) -> None:
    """An act that every way is led past is told as no longer done."""
    act = guide.nodes[name]
    assert isinstance(act, Act)
    nodes = []
    for node in guide.nodes.values():
        if isinstance(node, Ask) and any(branch.go == name for branch in node.branches):
            branches = (replace(e, go=act.else_ if e.go == name else e.go) for e in node.branches)
            nodes.append(replace(node, branches=tuple(branches)))
    came = compare(guide, with_nodes(guide, *nodes))
    assert (name, "") in {(each.old_act, each.new_act) for each in came.on_the_way}
