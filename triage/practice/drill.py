"""The drill: single lines, each to be phoned about now or not. What is right comes from the guide alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from triage.facts import Facts
from triage.guide.model import Guide
from triage.page.words import Reader
from triage.practice.cards import RULE, about, kind_of, rule_card, sign_card
from triage.practice.telling import fact_words
from triage.units import System
from triage.walk import Walk

LINES = 10
HALF = 5


@dataclass(frozen=True)
class Line:
    """One thing seen, whether it alone means to phone now, and which card that is."""

    finding: str
    choice: str
    now: bool
    card: str = ""

    def words(self, guide: Guide, system: System) -> str:
        """Return it as the guide words it."""
        return fact_words(Walk(guide), self.finding, self.choice, system)

    def why(self, guide: Guide, system: System) -> str:
        """Return why one phones for it; nothing for what is no reason to."""
        if not self.now:
            return ""
        rule = guide.rules.get(about(self.card)) if kind_of(self.card) == RULE else None
        text = rule.because if rule else guide.findings[self.finding].why
        return Reader(guide, Facts(guide.values(), {}), system).fill(text)


def drill(guide: Guide, rng: Random) -> tuple[Line, ...]:
    """Return ten lines in a mixed order, half of them for phoning now."""
    grave = list(grave_lines(guide))
    # Two findings may have the same words for what is normal: once is enough.
    calm = list(
        {guide.findings[each.finding].choices[each.choice]: each for each in calm_lines(guide)}.values()
    )
    lines = rng.sample(grave, min(HALF, len(grave)))
    lines += rng.sample(calm, min(LINES - len(lines), len(calm)))
    rng.shuffle(lines)
    return tuple(lines)


def grave_lines(guide: Guide) -> Iterator[Line]:
    """Yield each choice that alone calls the vet at once: every danger sign, and what a rule says of it."""
    seen: set[tuple[str, str]] = set()
    for finding, choices in guide.front.danger_signs.items():
        for choice in choices:
            seen.add((finding, choice))
            yield Line(finding, choice, True, sign_card(finding, choice))
    for rule in guide.rules.values():
        if rule.always is None or rule.always.urgency != guide.top or rule.on or len(rule.when) != 1:
            continue
        ((finding, conditions),) = rule.when.items()
        for choice in (choice for each in conditions for choice in each.is_):
            if (finding, choice) not in seen:
                seen.add((finding, choice))
                yield Line(finding, choice, True, rule_card(rule.name))


def calm_lines(guide: Guide) -> Iterator[Line]:
    """Yield each choice that the guide calls normal: alone it is no reason to phone now."""
    grave = {(line.finding, line.choice) for line in grave_lines(guide)}
    for name, finding in guide.findings.items():
        for choice in finding.normal.is_ if finding.normal else ():
            if choice in finding.choices and (name, choice) not in grave:
                yield Line(name, choice, False)
