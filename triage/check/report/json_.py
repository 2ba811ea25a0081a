"""The report for programs, as one JSON object in UTF-8.

| field | what it holds |
|---|---|
| `schema` | `{"name": "triage-check", "version": 1}`; a field that goes or means another thing raises it |
| `edition` | the guide's edition; null when the guide is too broken to be read |
| `folder` | the knowledge folder, as it was named |
| `sound` | true when everything that must hold does; warnings leave it true |
| `problems` | a list, in the order of their places |
| `counts` | what is in a sound guide, and what was looked at to prove it; null when it is not sound |

Each problem has `file` (its path in the folder, with slashes), `line` and `column` (from 1, in characters),
`rule` (what does not hold, in a word or two that stay the same), `weight` (`error` or `warning`), `message`
(a sentence for people) and `walk`: the shortest walk that shows the problem, as YAML that
`triage walk --answers` takes, or null.

New fields may be added, and new counts above all, so a reader should pass over those it does not know.
"""

from __future__ import annotations

import json
from dataclasses import asdict
from typing import Any

from triage.check.report.checked import Checked
from triage.problems import Problem

SCHEMA = {"name": "triage-check", "version": 1}


def as_json(checked: Checked) -> str:
    """Return the report as JSON text."""
    report = {
        "schema": SCHEMA,
        "edition": checked.edition,
        "folder": checked.folder,
        "sound": checked.sound,
        "problems": [_problem(problem) for problem in checked.problems],
        "counts": asdict(checked.tally) if checked.tally else None,
    }
    return json.dumps(report, ensure_ascii=False, indent=2) + "\n"


def _problem(problem: Problem) -> dict[str, Any]:
    return {
        "file": problem.place.file,
        "line": problem.place.line,
        "column": problem.place.column,
        "rule": problem.rule,
        "weight": problem.weight,
        "message": problem.what,
        "walk": problem.walk or None,
    }
