"""The counts that matter of a guide, for the summary."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from triage.check.search.searched import Searched
from triage.guide.model import Act, Ask, End


@dataclass(frozen=True)
class Tally:
    """How large a guide is, what was looked at to prove it, and its longest walk."""

    asks: int
    acts: int
    ends: dict[str, int]
    findings: int
    numbers: int
    how_tos: int
    sources: int
    rules: int
    cases: int
    longest: tuple[str, ...]
    walks: int
    """Every telling answer counts as a way of its own: a choice, a band, a number itself, not sure."""
    states: int
    seconds: float

    def lines(self) -> list[str]:
        """Return the summary, line by line."""
        ends = ", ".join(f"{count} {name}" for name, count in self.ends.items())
        return [
            f"Sound: {self.asks} questions, {self.acts} acts, {sum(self.ends.values())} ends ({ends}).",
            f"{self.findings} findings, {self.numbers} numbers, {self.how_tos} how-tos, "
            f"{self.sources} sources, {self.rules} rules, {self.cases} practice cases.",
            f"{self.walks:,} walks proved over {self.states:,} situations, in {self.seconds:.2f} s.",
            f"Longest walk: {len(self.longest)} screens ({' > '.join(self.longest)}).",
        ]

    @classmethod
    def of(cls, searched: Searched) -> Tally:
        """Count a guide whose every walk was searched; how long that took is for the caller to tell."""
        guide = searched.guide
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
            len(guide.rules),
            len(guide.cases),
            max(searched.longest().values(), key=len, default=()),
            searched.onward.walks,
            len(searched.states.at),
            0.0,
        )
