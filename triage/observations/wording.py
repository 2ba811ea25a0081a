"""An observation as one line of words."""

from __future__ import annotations

import re

from triage.casebook.rows import Observation, Part
from triage.facts import Facts
from triage.guide.model import PLACEHOLDER, Guide
from triage.observations.kinds import KINDS, PartOf
from triage.page.inert import inert
from triage.page.words import Reader
from triage.units import System, show

LINE = 300
"""Signs of typed words that a line shows; the whole stays in the casebook."""

_NAMED = re.compile(r"\{([a-z]+)\}")


def words_of(observation: Observation, guide: Guide, system: System, most: int = LINE) -> str:
    """Return an observation as `Feed: 120 ml milk replacer, sucked it all`; a kind unknown here too."""
    kind = KINDS.get(observation.kind)
    known = {part.name: part for part in kind.parts} if kind else {}
    said = {
        name: _part(known.get(name, PartOf(name, "")), value, guide, system, most)
        for name, value in observation.parts.items()
    }
    if kind and said.keys() == known.keys():
        return _NAMED.sub(lambda match: said[match[1]], kind.line)
    return f"{kind.label if kind else inert(observation.kind, 30)}: {', '.join(said.values())}"


def filled(text: str, guide: Guide, system: System, facts: Facts | None = None) -> str:
    """Return a text with the guide's numbers in it; a sum is told by its name unless it can be worked out.

    Without facts no sum is worked out: it would be that of a lamb nothing is known of.
    """
    reader = Reader(guide, facts or Facts(guide.values(), {}), system)

    def named(match: re.Match[str]) -> str:
        if facts is None and match[1] not in guide.numbers:
            return match[1].replace("-", " ")
        try:
            return reader.fill(match[0])
        except LookupError:
            return match[1].replace("-", " ")

    return PLACEHOLDER.sub(named, text)


def _part(part: PartOf, value: Part, guide: Guide, system: System, most: int) -> str:
    asked = part.under(guide)
    if isinstance(value, float):
        measure = asked.measure or part.measure
        return show(value, measure, system) if measure else f"{value:g}"
    if value in asked.choices:
        text = filled(asked.choices[value], guide, system)
        return text[:1].lower() + text[1:]
    return inert(value, most)
