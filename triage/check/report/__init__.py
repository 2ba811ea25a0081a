"""What came of a check, told to people or to programs: one module for each form of report."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from triage.check.report.checked import Checked
from triage.check.report.json_ import as_json
from triage.check.report.sarif import as_sarif
from triage.check.report.text import as_text

REPORTS: Mapping[str, Callable[[Checked], str]] = {"text": as_text, "json": as_json, "sarif": as_sarif}

__all__ = ["REPORTS", "Checked", "as_json", "as_sarif", "as_text"]
