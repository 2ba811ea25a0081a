"""The counts that matter of a guide, for the summary."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from triage.check.longest import longest_walks
from triage.guide.model import Act, Ask, End, Guide


@dataclass(frozen=True)
class Tally:
    """How large a guide is, and its longest walk."""

    asks: int
    acts: int
    ends: dict[str, int]
    findings: int
    numbers: int
    how_tos: int
    sources: int
    longest: tuple[str, ...]

    def lines(self) -> list[str]:
        """Return the summary, line by line."""
        ends = ", ".join(f"{count} {name}" for name, count in self.ends.items())
        return [
            f"Sound: {self.asks} questions, {self.acts} acts, {sum(self.ends.values())} ends ({ends}).",
            f"{self.findings} findings, {self.numbers} numbers, {self.how_tos} how-tos, "
            f"{self.sources} sources.",
            f"Longest walk: {len(self.longest)} screens ({' > '.join(self.longest)}).",
        ]

    @classmethod
    def of(cls, guide: Guide) -> Tally:
        """Count a guide that can be walked."""
        nodes = guide.nodes.values()
        ends = Counter(node.urgency for node in nodes if isinstance(node, End))
        return cls(
            sum(isinstance(node, Ask) for node in nodes),
            sum(isinstance(node, Act) for node in nodes),
            {each.name: ends[each.name] for each in guide.front.urgencies},
            len(guide.findings),
            len(guide.numbers),
            len(guide.how_tos),
            len(guide.sources),
            max(longest_walks(guide).values(), key=len, default=()),
        )
