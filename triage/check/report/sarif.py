"""The report as SARIF 2.1.0, the OASIS standard for what came of an analysis.

Editors and code hosts show it beside the lines it speaks of. Where the knowledge folder lies is said once, in
`originalUriBaseIds`, and every file is named from there, so that the report keeps its use on another machine.
The shortest walk that shows a problem is in the formatted message, and as it is in the property `walk`.
"""

from __future__ import annotations

import json
import os
import re
from itertools import count
from pathlib import Path
from typing import Any
from urllib.parse import quote

from triage.check.kinds import KINDS
from triage.check.report.checked import Checked, visible
from triage.problems import Place, Problem

VERSION = "2.1.0"
SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
BASE = "KNOWLEDGE"
"""The name under which the knowledge folder is known in the report."""
SHOWS_IT = "The shortest walk that shows it; `triage walk --answers FILE` replays it from a file:"

_MARKS = re.compile(r"[\\`*_\[\]<>#~|&!]")
"""What could begin markup in a formatted message."""


def as_sarif(checked: Checked) -> str:
    """Return the report as a SARIF log of one run."""
    log = {"version": VERSION, "$schema": SCHEMA, "runs": [_run(checked)]}
    return json.dumps(log, ensure_ascii=False, indent=2) + "\n"


def _run(checked: Checked) -> dict[str, Any]:
    import triage

    said = {**checked.own_rules, **KINDS}
    told = {problem.rule: problem.rule for problem in checked.problems if problem.rule not in said}
    rules = dict(sorted({**said, **told}.items()))
    at = dict(zip(rules, count()))
    run = {
        "tool": {
            "driver": {
                "name": "triage",
                "version": triage.__version__,
                "rules": [_rule(rule, what) for rule, what in rules.items()],
            }
        },
        "invocations": [{"executionSuccessful": True, "exitCode": 0 if checked.sound else 1}],
        "originalUriBaseIds": {BASE: _base(checked.folder)},
        "columnKind": "unicodeCodePoints",
        "results": [_result(problem, at[problem.rule]) for problem in checked.problems],
    }
    return {**run, "properties": {"edition": checked.edition}} if checked.edition else run


def _rule(rule: str, what: str) -> dict[str, Any]:
    return {"id": rule, "shortDescription": {"text": _plain(what)}}


def _base(folder: str) -> dict[str, Any]:
    uri = Path(os.path.realpath(folder)).as_uri().removesuffix("/") + "/"
    return {"uri": uri, "description": {"text": "The knowledge folder that was checked."}}


def _result(problem: Problem, rule_at: int) -> dict[str, Any]:
    result = {
        "ruleId": problem.rule,
        "ruleIndex": rule_at,
        "level": problem.weight,
        "message": _message(problem),
        "locations": [{"physicalLocation": _place(problem.place)}],
    }
    return {**result, "properties": {"walk": problem.walk}} if problem.walk else result


def _place(place: Place) -> dict[str, Any]:
    return {
        "artifactLocation": {"uri": quote(os.fsencode(place.file)), "uriBaseId": BASE},
        "region": {"startLine": place.line, "startColumn": place.column},
    }


def _message(problem: Problem) -> dict[str, str]:
    text = _plain(problem.what)
    if not problem.walk:
        return {"text": text}
    fence = "`" * max(3, 1 + max(map(len, re.findall("`+", problem.walk)), default=0))
    walk = "\n".join([f"{fence}yaml", *map(visible, problem.walk.splitlines()), fence])
    what = _MARKS.sub(_escaped, visible(problem.what))
    return {"text": text, "markdown": _braced(f"{what}\n\n{SHOWS_IT}\n\n{walk}")}


def _escaped(mark: re.Match[str]) -> str:
    return f"\\{mark[0]}"


def _plain(text: str) -> str:
    """Return a plain message in which nothing stands for a link."""
    return _braced(visible(text)).replace("](", "] (")


def _braced(text: str) -> str:
    """Double the braces: SARIF keeps single ones for its own placeholders."""
    return text.replace("{", "{{").replace("}", "}}")
