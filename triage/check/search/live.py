"""What still matters: at each node, which tests of what is known lie ahead.

A test is a set of answers to one finding that something ahead tells apart from the others: the answers
that take a branch, each that has none, or those that a claim speaks of. Lambs that no test ahead tells
apart are one lamb. As urgency never falls, a claim that asks for a call asks nothing more once the call is
made: so what lies ahead depends on the urgency so far.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from typing import NamedTuple

from triage.check.search.claims import URGENCY, Claim
from triage.check.search.packing import Packing
from triage.check.search.ways import NOWHERE, ActWays, AskWays, Ways

TOGETHER = 6
"""Findings looked up together: with more of them fewer look-ups find what was looked up before."""


Look = tuple[int, dict[int, int]]
"""The bits of a finding, and the first answer alike for each of its answers."""


class Firsts(dict[int, int]):
    """For the bits of some findings the first answers alike, each worked out when it is first met."""

    def __init__(self, looks: tuple[tuple[int, dict[int, int]], ...]) -> None:
        super().__init__()
        self._looks = looks

    def __missing__(self, bits: int) -> int:
        firsts = 0
        for mask, table in self._looks:
            if mine := bits & mask:
                firsts |= table[mine]
        self[bits] = firsts
        return firsts


class Keep(NamedTuple):
    """What is kept at a node: these bits as they are, and of these others the first answers alike."""

    same: int
    moved: tuple[tuple[int, Firsts], ...]


class Live:
    """The tests ahead of each node, as bits, and which answers they still tell apart."""

    def __init__(self, ways: Ways, claims: Sequence[Claim]) -> None:
        self.ways = ways
        self.packing = Packing(map(ways.answers, range(ways.counted)))
        self._tests: dict[tuple[int, int], int] = {}
        self._of_finding: defaultdict[int, int] = defaultdict(int)
        self._sets: defaultdict[int, list[tuple[int, int]]] = defaultdict(list)
        ranks = range(ways.nobody + 1)
        made = self._make(claims)
        order = _ends_first(ways)
        self.ahead = [self._carry_back(made[rank], order) for rank in ranks]
        self._keeps: list[dict[int, Keep]] = [{} for _ in ranks]
        self._passes: dict[int, list[int]] = {}
        self._first_alike: dict[tuple[int, int], dict[int, int]] = {}
        self._looks: dict[tuple[int, int], Look] = {}
        self._shared: dict[tuple[int, ...], tuple[int, Firsts]] = {}
        self._among: dict[tuple[int, int], dict[int, int]] = {}

    def keep(self, at: int, rank: int) -> Keep:
        """Return what of all that is known is told apart ahead, by the first answer of its kind."""
        kept = self._keeps[rank]
        if at not in kept:
            kept[at] = self._keep(self.ahead[rank][at])
        return kept[at]

    def _keep(self, ahead: int) -> Keep:
        same, moved = 0, list[Look]()
        for finding, mine in self._of_finding.items():
            if tests := ahead & mine:
                look = self._look_up(finding, tests)
                if look[1]:
                    moved.append(look)
                else:
                    same |= look[0]
        groups = [tuple(moved[at : at + TOGETHER]) for at in range(0, len(moved), TOGETHER)]
        return Keep(same, tuple(self._together(group) for group in groups))

    def _together(self, looks: tuple[Look, ...]) -> tuple[int, Firsts]:
        """Return the bits of some findings, and their first answers, one for all that keep the same."""
        key = tuple(id(table) for _, table in looks)
        if key not in self._shared:
            self._shared[key] = sum(mask for mask, _ in looks), Firsts(looks)
        return self._shared[key]

    def _look_up(self, finding: int, tests: int) -> Look:
        """Return the bits of a finding, and what is kept for each answer, empty where each stays as it is."""
        key = (finding, tests)
        if key not in self._looks:
            packing, alike = self.packing, self.alike(finding, tests)
            apart = all(answer == first for answer, first in alike.items())
            table = {
                packing.bits(finding, each): packing.bits(finding, first) for each, first in alike.items()
            }
            self._looks[key] = packing.mask(finding), {} if apart else table
        return self._looks[key]

    def apart(self, finding: int, at: int, rank: int) -> dict[int, int]:
        """Return each answer to a finding asked at a node -> the first one like it from there on."""
        return self.alike(finding, self.ahead[rank][at] & self._of_finding[finding])

    def alike(self, finding: int, tests: int) -> dict[int, int]:
        """Return each answer -> the first answer that none of these tests tells apart from it."""
        key = (finding, tests)
        if key not in self._first_alike:
            first: dict[int, int] = {}
            self._first_alike[key] = {
                answer: first.setdefault(passes & tests, answer)
                for answer, passes in enumerate(self._passed(finding))
            }
        return self._first_alike[key]

    def _passed(self, finding: int) -> list[int]:
        """Return for each answer to a finding the tests of which it is among the answers."""
        if finding not in self._passes:
            sets = self._sets[finding]
            self._passes[finding] = [
                sum(bit for among, bit in sets if among >> answer & 1)
                for answer in range(self.ways.answers(finding))
            ]
        return self._passes[finding]

    def among(self, finding: int, at: int, rank: int) -> dict[int, int]:
        """Return each first answer of its kind -> all answers, as bits, that are like it from a node on."""
        key = (finding, self.ahead[rank][at] & self._of_finding[finding])
        if key not in self._among:
            found: dict[int, int] = {}
            for answer, first in self.alike(*key).items():
                found[first] = found.get(first, 0) | 1 << answer
            self._among[key] = found
        return self._among[key]

    def _test(self, finding: int, among: int) -> int:
        """Return a test as one bit."""
        key = (finding, among)
        if key not in self._tests:
            self._tests[key] = 1 << len(self._tests)
            self._of_finding[finding] |= self._tests[key]
            self._sets[finding].append((among, self._tests[key]))
        return self._tests[key]

    def _make(self, claims: Sequence[Claim]) -> list[list[int]]:
        """Return for each rank of urgency the tests that each node itself makes."""
        made = [self._by_ways(ways) for ways in self.ways.nodes]
        by_rank: dict[int, list[tuple[int, int]]] = {}
        # A rule's claims share their parts, so what they test and when is worked out once.
        parts: dict[int, tuple[int, int]] = {}
        for claim in claims:
            if id(claim.parts) not in parts:
                parts[id(claim.parts)] = self._tested(claim), self._open_ranks(claim)
            tests, ranks = parts[id(claim.parts)]
            at = self.ways.node_at[claim.node]
            if ranks:
                by_rank.setdefault(at, []).append((tests, ranks))
            else:
                made[at] |= tests
        all_ranks = [list(made) for _ in range(self.ways.nobody + 1)]
        for at, asked in by_rank.items():
            for rank, here in enumerate(all_ranks):
                for tests, ranks in asked:
                    here[at] |= tests if ranks >> rank & 1 else 0
        return all_ranks

    def _tested(self, claim: Claim) -> int:
        """Return the tests that a claim makes."""
        return sum({self._test(self.ways.finding_at[part.finding], part.among) for part in claim.parts})

    def _open_ranks(self, claim: Claim) -> int:
        """Return as bits the ranks of urgency at which a claim can be broken; 0 where that is not asked."""
        if all(part.finding != URGENCY for part in claim.parts):
            return 0
        # The bit above all ranks tells a claim that no rank can break from one that asks for none.
        return sum(1 << rank for rank in range(self.ways.nobody + 1) if claim.open_at(rank)) | 1 << 62

    def _by_ways(self, ways: object) -> int:
        made = 0
        if isinstance(ways, AskWays):
            alone = [1 << answer for answer, branch in enumerate(ways.branch_at) if branch == NOWHERE]
            for among in (*ways.masks, *alone):
                made |= self._test(ways.finding, among)
        elif isinstance(ways, ActWays) and ways.counter:
            for times in range(ways.at_most + 1):
                made |= self._test(ways.counter, 1 << times)
        if met := getattr(ways, "met", 0):
            made |= self._test(met, 1)
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
