"""Knowledge before use: every amount shown has its findings asked on every walk that gets there."""

from __future__ import annotations

from collections.abc import Iterator

from triage.amounts import AMOUNTS
from triage.guide.graph import ways_out
from triage.guide.model import PLACEHOLDER, Act, Ask, End, Guide
from triage.problems import Problem


def amounts_known(guide: Guide) -> Iterator[Problem]:
    """Each sum in a text finds what it needs already asked."""
    asked = always_asked(guide)
    for name, node in guide.nodes.items():
        if isinstance(node, Ask) or name not in asked:
            continue
        for sum_name in _sums(node):
            for finding in AMOUNTS[sum_name].needs:
                if finding not in asked[name]:
                    what = (
                        f"{{{sum_name}}} needs '{finding}', which some walk to '{name}' never asks; "
                        f"ask it on every way here"
                    )
                    yield Problem(node.place, what, "unknown-finding")


def _sums(node: Act | End) -> list[str]:
    texts = [step.do for step in (node.steps if isinstance(node, Act) else node.do)]
    texts += node.cautions
    if isinstance(node, End):
        texts += [node.call_vet, node.likely]
    names = [name for text in texts for name in PLACEHOLDER.findall(text)]
    return [name for name in dict.fromkeys(names) if name in AMOUNTS]


def always_asked(guide: Guide) -> dict[str, frozenset[str]]:
    """Return for each reachable node the findings that every walk has asked by then.

    The classic definite-assignment pass: meet is intersection, so it only shrinks and must settle.
    """
    asked: dict[str, frozenset[str]] = {guide.front.way_in: frozenset()}
    waiting = [guide.front.way_in]
    while waiting:
        name = waiting.pop()
        node = guide.nodes[name]
        after = asked[name]
        if isinstance(node, Ask):
            after |= {node.finding}
        elif isinstance(node, Act):
            after -= frozenset(node.forget)
        for target, _ in ways_out(node):
            known = asked[target] & after if target in asked else after
            if known != asked.get(target):
                asked[target] = known
                waiting.append(target)
    return asked
