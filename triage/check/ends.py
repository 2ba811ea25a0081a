"""Every end is complete: something to do, a caution, when to call, when to look, sources, certainty."""

from __future__ import annotations

from collections.abc import Iterator

from triage.guide.model import COMMON_PRACTICE, FROM_MEMORY, NOT_PUBLISHED, Act, End, Guide
from triage.problems import Problem


def complete(guide: Guide) -> Iterator[Problem]:
    """Acts and ends say what stands behind them, and ends say when to look again."""
    for name, node in guide.nodes.items():
        if isinstance(node, End):
            for field, value in (
                ("likely", node.likely),
                ("sources", node.sources),
                ("certainty", node.certainty),
            ):
                if not value:
                    yield Problem(node.place, f"end '{name}' lacks '{field}'; add it", "incomplete-end")
            if not node.look_again and node.urgency != guide.top:
                what = f"end '{name}' lacks 'look_again'; only a '{guide.top}' end may leave it out"
                yield Problem(node.place, what, "incomplete-end")
        if isinstance(node, End | Act):
            yield from _sure(guide, node)


def _sure(guide: Guide, node: End | Act) -> Iterator[Problem]:
    """What rests on no publication says so, and what rests on weak pages is not called sure."""
    published = [source for source in node.sources if source not in NOT_PUBLISHED]
    grades = {guide.sources[source].grade for source in published}
    certainty = node.certainty
    if node.sources and not published and certainty not in (COMMON_PRACTICE, FROM_MEMORY, "low"):
        what = f"'{node.name}' has no published source; its certainty can't be '{certainty}'"
        yield Problem(node.place, what, "certainty")
    if grades == {"D"} and certainty in ("high", "moderate"):
        what = f"'{node.name}' rests on grade D alone; its certainty can't be '{certainty}'"
        yield Problem(node.place, what, "certainty")
