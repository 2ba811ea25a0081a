"""What still matters: at each node, which tests of what is known lie ahead.

A test is a set of answers to one finding that something ahead tells apart from the others: the answers
that take a branch, each that has none, or those that a claim speaks of. Lambs that no test ahead tells
apart are one lamb. As urgency never falls, a claim that asks for a call asks nothing more once the call is
made: so what lies ahead depends on the urgency so far.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from triage.check.search.claims import Claim
from triage.check.search.ways import NOWHERE, ActWays, AskWays, Ways

Known = tuple[tuple[int, int], ...]
"""What is known: findings and their answers, both by index, in the order of the findings."""


class Live:
    """The tests ahead of each node, as bits, and which answers they still tell apart."""

    def __init__(self, ways: Ways, claims: Sequence[Claim]) -> None:
        self.ways = ways
        self._tests: dict[tuple[int, int], int] = {}
        self._of_finding: defaultdict[int, int] = defaultdict(int)
        self._sets: defaultdict[int, list[tuple[int, int]]] = defaultdict(list)
        ranks = range(ways.nobody + 1)
        made = [self._make(claims, rank) for rank in ranks]
        order = _ends_first(ways)
        self.ahead = [self._carry_back(made[rank], order) for rank in ranks]
        self._kept: list[list[dict[tuple[int, int], tuple[int, int] | None]]] = [
            [{} for _ in ways.nodes] for _ in ranks
        ]
        self._first_alike: dict[tuple[int, int], dict[int, int]] = {}

    def keep(self, known: Known, at: int) -> Known:
        """Return of what is known only what is told apart ahead, by the first answer of its kind."""
        rank = rank_in(known)
        kept = self._kept[rank][at]
        held = []
        for item in known:
            if item not in kept:
                kept[item] = self._keep(item, self.ahead[rank][at])
            if (mine := kept[item]) is not None:
                held.append(mine)
        return tuple(held)

    def _keep(self, item: tuple[int, int], ahead: int) -> tuple[int, int] | None:
        finding, answer = item
        tests = ahead & self._of_finding[finding]
        return (finding, self.alike(finding, tests)[answer]) if tests else None

    def apart(self, finding: int, at: int, rank: int) -> dict[int, int]:
        """Return each answer to a finding asked at a node -> the first one like it from there on."""
        return self.alike(finding, self.ahead[rank][at] & self._of_finding[finding])

    def alike(self, finding: int, tests: int) -> dict[int, int]:
        """Return each answer -> the first answer that none of these tests tells apart from it."""
        key = (finding, tests)
        if key not in self._first_alike:
            sets = [among for among, bit in self._sets[finding] if bit & tests]
            first: dict[tuple[bool, ...], int] = {}
            self._first_alike[key] = {
                answer: first.setdefault(tuple(bool(among >> answer & 1) for among in sets), answer)
                for answer in range(self.ways.answers(finding))
            }
        return self._first_alike[key]

    def _test(self, finding: int, among: int) -> int:
        """Return a test as one bit."""
        key = (finding, among)
        if key not in self._tests:
            self._tests[key] = 1 << len(self._tests)
            self._of_finding[finding] |= self._tests[key]
            self._sets[finding].append((among, self._tests[key]))
        return self._tests[key]

    def _make(self, claims: Sequence[Claim], rank: int) -> list[int]:
        made = [0] * len(self.ways.nodes)
        for at, ways in enumerate(self.ways.nodes):
            if isinstance(ways, AskWays):
                alone = [1 << answer for answer, branch in enumerate(ways.branch_at) if branch == NOWHERE]
                for among in (*ways.masks, *alone):
                    made[at] |= self._test(ways.finding, among)
            elif isinstance(ways, ActWays) and ways.counter:
                made[at] |= self._test(ways.counter, 1 << ways.at_most)
                for times in range(ways.at_most):
                    made[at] |= self._test(ways.counter, 1 << times)
            if ways.met:
                made[at] |= self._test(ways.met, 1)
        for claim in claims:
            if not claim.open_at(rank):
                continue
            at = self.ways.node_at[claim.node]
            for part in claim.parts:
                made[at] |= self._test(self.ways.finding_at[part.finding], part.among)
        return made

    def _carry_back(self, made: list[int], order: list[int]) -> list[int]:
        """Carry the tests back to every node that leads to them, until nothing more is carried."""
        ahead = list(made)
        changed = True
        while changed:
            changed = False
            for at in order:
                more = made[at] | self._from_targets(at, ahead)
                if more != ahead[at]:
                    ahead[at] = more
                    changed = True
        return ahead

    def _from_targets(self, at: int, ahead: list[int]) -> int:
        ways = self.ways.nodes[at]
        tests = 0
        for way, to in enumerate(ways.targets):
            mine = ahead[to]
            if isinstance(ways, ActWays) and way == 0:
                for finding in ways.forget:
                    mine &= ~self._of_finding[finding]
            tests |= mine
        return tests


def rank_in(known: Known) -> int:
    """Return the rank of urgency among what is known; kept no more, it is one that nothing asks about."""
    return known[0][1] if known and known[0][0] == 0 else 0


def _ends_first(ways: Ways) -> list[int]:
    """Return the nodes that can be reached, each after what it leads to, loops aside."""
    order: list[int] = []
    seen = {ways.start}
    stack = [(ways.start, iter(ways.nodes[ways.start].targets))]
    while stack:
        at, targets = stack[-1]
        for to in targets:
            if to not in seen:
                seen.add(to)
                stack.append((to, iter(ways.nodes[to].targets)))
                break
        else:
            stack.pop()
            order.append(at)
    return order
