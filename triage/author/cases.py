"""Practice cases for the pages of a new topic; the answers on the way come from a case that is there."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping

from triage.author.topic import BORROWED, PAGES
from triage.guide.model import Guide
from triage.guide.model_practice import WrittenCase
from triage.guide.texts import UNWRITTEN


def cases_text(guide: Guide, name: str, through: str) -> str:
    """Return a file of cases that come to a new topic's pages through its choice of a list of troubles.

    Empty where the guide has no case on that way to take the first answers from.
    """
    way = _way(guide, through)
    if not way:
        return ""
    asked, story = BORROWED["finding"][0], f"{UNWRITTEN}: who finds it, and what anybody can see."
    told = [each for each in way if guide.farm and each in guide.farm.told]
    lines = ["# yaml-language-server: $schema=../.schema/practice.json"]
    for page, answer in PAGES.items():
        answers = {**way, through: name, asked: answer}
        lines += [
            f"{name}-{page}-1:",
            f'  story: "{story}"',
            "  findings:",
            *(f"    {finding}: {_typed(value)}" for finding, value in answers.items()),
            *([f"  told: [{', '.join(told)}]"] if told else []),
            f'  remember: "{UNWRITTEN}: the one thing to take away."',
        ]
    return "\n".join((*lines, ""))


def _way(guide: Guide, through: str) -> Mapping[str, str]:
    """Return the answers up to a list of troubles, of the case without danger that is soonest there."""
    ways = [way for case in guide.cases.values() if (way := _up_to(case, through))]
    signs = guide.front.danger_signs
    calm = [way for way in ways if not any(way.get(finding) in signs[finding] for finding in signs)]
    return min(calm, key=lambda way: (len(way), _odd(guide, way)), default={})


def _odd(guide: Guide, way: Mapping[str, str]) -> int:
    """Return how many answers are other than normal ones, by choices."""
    normal = {name: finding.normal.is_ for name, finding in guide.findings.items() if finding.normal}
    return sum(bool(normal.get(finding)) and value not in normal[finding] for finding, value in way.items())


def _up_to(case: WrittenCase, through: str) -> dict[str, str]:
    way: dict[str, str] = {}
    for finding, typed in case.findings.items():
        if len(typed) != 1:
            return {}
        way[finding] = typed[0].text
        if finding == through:
            return way
    return {}


def _typed(answer: str) -> str:
    return answer if re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9 .-]*", answer) else json.dumps(answer)
