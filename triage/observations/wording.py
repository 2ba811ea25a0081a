"""An observation as one line of words."""

from __future__ import annotations

from triage.casebook.rows import Observation, Part
from triage.guide.model import Guide
from triage.observations.kinds import KINDS, PartOf
from triage.page.inert import inert
from triage.units import System, show

LINE = 300
"""Signs of typed words that a line shows; the whole stays in the casebook."""


def words_of(observation: Observation, guide: Guide, system: System, most: int = LINE) -> str:
    """Return an observation as `A feed: Milk replacer, 120 ml, it sucked it all`; a kind unknown here too."""
    kind = KINDS.get(observation.kind)
    label = kind.label if kind else inert(observation.kind, 30)
    known = {part.name: part for part in kind.parts} if kind else {}
    said = [
        _part(known.get(name, PartOf(name, "")), value, system, most)
        for name, value in observation.parts.items()
    ]
    return f"{label}: {', '.join(said)}"


def _part(part: PartOf, value: Part, system: System, most: int) -> str:
    if isinstance(value, str):
        text = part.choices.get(value) or inert(value, most)
    else:
        text = show(value, part.measure, system) if part.measure else f"{value:g}"
    return part.shown.format("{}").replace("{}", text)
