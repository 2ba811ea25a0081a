"""Claims held to a page: which of all claims are true of a lamb, told by one look-up for each finding."""

from __future__ import annotations

from collections.abc import Iterable

from triage.check.search.claims import Claim, Part
from triage.check.search.packing import Known, Packing
from triage.check.search.ways import Ways


class Held:
    """The claims of each node. Claims of the same parts are true of the same lambs: one bit for all."""

    def __init__(self, ways: Ways, packing: Packing, claims: Iterable[Claim]) -> None:
        self._bit: dict[tuple[Part, ...], int] = {}
        self._at: dict[int, dict[int, list[Claim]]] = {}
        # A rule's claims share their parts, so most of them are known without being compared.
        seen: dict[int, int] = {}
        for claim in claims:
            bit = seen.get(id(claim.parts), 0)
            if not bit:
                bit = seen[id(claim.parts)] = self._bit.setdefault(claim.parts, 1 << len(self._bit))
            self._at.setdefault(ways.node_at[claim.node], {}).setdefault(bit, []).append(claim)
        self._looks = self._look_ups(ways, packing)
        self._by_node: dict[int, tuple[int, tuple[tuple[int, dict[int, int]], ...]]] = {}

    def broken(self, at: int, known: Known) -> list[Claim]:
        """Return the claims of a node that are true of a lamb, and so broken by its page."""
        if at not in self._at:
            return []
        if at not in self._by_node:
            self._by_node[at] = self._of_node(at)
        left, looks = self._by_node[at]
        for mask, table in looks:
            left &= table[known & mask]
            if not left:
                return []
        return [claim for bit, claims in self._at[at].items() if bit & left for claim in claims]

    def _of_node(self, at: int) -> tuple[int, tuple[tuple[int, dict[int, int]], ...]]:
        mine = sum(self._at[at])
        return mine, tuple((mask, table) for asked, mask, table in self._looks if asked & mine)

    def _look_ups(self, ways: Ways, packing: Packing) -> list[tuple[int, int, dict[int, int]]]:
        """Return for each finding the claims that ask about it, its bits, and which hold for each value.

        The finding that most claims ask about comes first, as it leaves the fewest.
        """
        asked: dict[int, list[tuple[int, Part]]] = {}
        for parts, bit in self._bit.items():
            for part in parts:
                asked.setdefault(ways.finding_at[part.finding], []).append((bit, part))
        everyone = (1 << len(self._bit)) - 1
        looks = []
        for finding, held in asked.items():
            table = {0: everyone & ~sum({bit for bit, part in held if not part.unasked})}
            for answer in range(ways.answers(finding)):
                wrong = {bit for bit, part in held if not part.among >> answer & 1}
                table[packing.bits(finding, answer)] = everyone & ~sum(wrong)
            looks.append((sum({bit for bit, _ in held}), packing.mask(finding), table))
        return sorted(looks, key=lambda look: -look[0].bit_count())
