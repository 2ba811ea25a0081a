"""A guide whose situations are too many to look at all is refused, with where they pile up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from triage.check.search.searched import Searched
from triage.problems import Problem


def reached(searched: Searched) -> Iterator[Problem]:
    """The search came to its end before its limit."""
    states = searched.states
    if states.complete:
        return
    at, count = Counter(states.at).most_common(1)[0]
    node = searched.nodes[at]
    kept = {
        finding
        for here, known in zip(states.at, states.known, strict=True)
        if here == at
        for finding in states.live.packing.known_of(known)
    }
    names = [states.ways.findings[each] for each in sorted(kept) if 0 < each < len(states.ways.findings)]
    what = (
        f"more than {len(states.at) - 1:,} situations, too many to prove; {count:,} of them meet at "
        f"'{node.name}', where what is known of {', '.join(names) or 'the acts done'} still matters; "
        f"decide some of it earlier"
    )
    yield Problem(node.place, what, "too-many-situations")
