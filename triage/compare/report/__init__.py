"""What came of a comparison, told to people or to programs: one module for each form of report."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from triage.compare.report.compared import Compared, Edition
from triage.compare.report.json_ import as_json
from triage.compare.report.page import as_page
from triage.compare.report.text import as_text

REPORTS: Mapping[str, Callable[[Compared], str]] = {"text": as_text, "json": as_json, "page": as_page}

__all__ = ["REPORTS", "Compared", "Edition", "as_json", "as_page", "as_text"]
