"""The report for programs, as one JSON object in UTF-8.

| field | what it holds |
|---|---|
| `schema` | `{"name": "triage-compare", "version": 1}`; a field that goes or means another thing raises it |
| `old`, `new` | `edition`, `date`, `folder`, `mistakes` (a count) and `standing` (a sentence) of each guide |
| `same` | true when nothing differs |
| `complete` | false when not every situation was followed, so that there may be more differences |
| `states` | how many joint states were looked at |
| `less_urgent`, `more_urgent`, `elsewhere` | situations that end otherwise, see below |
| `lost_cautions` | `caution`, `nearest` (or null), `old_page`, `new_page`, and a lamb |
| `rules_lost` | `rule`, `never`, `because`, `how` (sentences; none where it is gone) and `why` |
| `on_the_way` | `old_act`, `new_act` (null where that guide has the lamb do nothing), `states`, and a lamb |
| `numbers` | `number`, `title`, `old`, `new`, `by`, `unit`, `off`, `used`, `why` |
| `added`, `removed` | keys of statements, each with `why` |
| `otherwise` | keys of statements that changed otherwise, with `why` and `parts` (`field`, `old`, `new`) |
| `renamed` | `old` and `new` keys, and `why` |
| `words` | `key`, `kind`, `old`, `new`, `marks` (pairs of `same`, `out` or `in` and words) and `why` |

A situation has `old_end`, `new_end` (null where the guide has no such answer), `old_urgency`, `new_urgency`
(null where none was come to), `new_page` (whether it is another page), `states` (how many states it was found
at the end of, which says nothing of how common it is), and a lamb.

`off` of a number is `safer`, `less safe` or null: the side that it was moved to.

A lamb is `lamb`: a list of `finding`, `value` (a number in the finding's unit, a choice, or null: "not sure")
and `guide` (`old` or `new`, whose names and units these are), in the order in which they are asked;
`met`: the keys of the changed statements on its way; and `why`: the reasons given for these, or null.

New fields may be added, so a reader should pass over those it does not know.
"""

from __future__ import annotations

import json
from dataclasses import asdict
from typing import Any

from triage.compare.compared import ActDifference, Difference, LostCaution
from triage.compare.lambs import Said
from triage.compare.reasons import NO_REASON
from triage.compare.report.compared import Compared, Edition
from triage.compare.words import marked
from triage.facts import Unsure

SCHEMA = {"name": "triage-compare", "version": 1}


def as_json(compared: Compared) -> str:
    """Return the report as JSON text."""
    came = compared.comparison
    report = {
        "schema": SCHEMA,
        "old": _edition(compared.old),
        "new": _edition(compared.new),
        "same": came.same,
        "complete": came.complete,
        "states": came.states,
        "less_urgent": [_difference(compared, each) for each in came.less_urgent],
        "lost_cautions": [_caution(compared, each) for each in came.lost_cautions],
        "rules_lost": [
            {
                "rule": each.rule,
                "never": each.never,
                "because": each.because,
                "how": list(each.how),
                "why": _why(compared, f"rule/{each.rule}"),
            }
            for each in came.rules_lost
        ],
        "more_urgent": [_difference(compared, each) for each in came.more_urgent],
        "elsewhere": [_difference(compared, each) for each in came.elsewhere],
        "on_the_way": [_act(compared, each) for each in came.on_the_way],
        **_statements(compared),
    }
    return json.dumps(report, ensure_ascii=False, indent=2) + "\n"


def _statements(compared: Compared) -> dict[str, Any]:
    came = compared.comparison
    return {
        "numbers": [
            {
                "number": each.number,
                "title": each.title,
                "old": each.old,
                "new": each.new,
                "by": each.by,
                "unit": each.unit,
                "off": each.off or None,
                "used": list(each.used),
                "why": _why(compared, f"number/{each.number}"),
            }
            for each in came.numbers
        ],
        "added": [{"key": key, "why": _why(compared, key)} for key in came.added],
        "removed": [{"key": key, "why": _why(compared, key)} for key in came.removed],
        "renamed": [{"old": was, "new": now, "why": _why(compared, now, was)} for was, now in came.renamed],
        "otherwise": [
            {"key": key, "parts": [asdict(part) for part in compared.parts(key)], "why": _why(compared, key)}
            for key in came.otherwise
        ],
        "words": [
            {
                "key": each.key,
                "kind": each.kind,
                "old": each.old,
                "new": each.new,
                "marks": [list(mark) for mark in marked(each.old, each.new)],
                "why": _why(compared, each.key),
            }
            for each in came.words
        ],
    }


def _edition(edition: Edition) -> dict[str, Any]:
    front = edition.guide.front
    return {
        "edition": front.edition,
        "date": front.date,
        "folder": edition.folder,
        "mistakes": edition.mistakes,
        "standing": edition.standing or None,
    }


def _difference(compared: Compared, each: Difference) -> dict[str, Any]:
    return {
        "old_end": each.old_end or None,
        "new_end": each.new_end or None,
        "old_urgency": each.old_urgency or None,
        "new_urgency": each.new_urgency or None,
        "new_page": each.new_page,
        "states": each.states,
        **_lamb(compared, each),
    }


def _caution(compared: Compared, each: LostCaution) -> dict[str, Any]:
    return {
        "caution": each.caution,
        "nearest": each.nearest or None,
        "old_page": each.old_page,
        "new_page": each.new_page,
        **_lamb(compared, each),
    }


def _act(compared: Compared, each: ActDifference) -> dict[str, Any]:
    return {
        "old_act": each.old_act or None,
        "new_act": each.new_act or None,
        "states": each.states,
        **_lamb(compared, each),
    }


def _lamb(compared: Compared, each: Difference | LostCaution | ActDifference) -> dict[str, Any]:
    return {
        "lamb": [_said(said) for said in each.lamb],
        "met": sorted(each.met),
        "why": _why(compared, *sorted(each.met)),
    }


def _said(said: Said) -> dict[str, Any]:
    value = None if isinstance(said.value, Unsure) else said.value
    return {"finding": said.finding, "value": value, "guide": "new" if said.new else "old"}


def _why(compared: Compared, *keys: str) -> str | None:
    why = compared.why(*keys)
    return None if why == NO_REASON else why
