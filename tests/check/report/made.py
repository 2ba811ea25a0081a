"""Reports made through the command line, and folders that have something to report."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

from tests.conftest import SMALL, write_small
from triage.cli import main

FIRST = "topics/first.yaml"
WARNED = (FIRST, "about: The only topic.", "about: The only topic. # not said")
"""A change that gives a warning, and nothing else."""
UNSURE = (FIRST, "      - {unsure: true, go: warm-it, at_least: vet-now}\n", "")
"""A change that a walk shows: a question without a way on for "not sure"."""


def report(folder: Path, form: str, *changes: tuple[str, str, str]) -> tuple[int, str]:
    """Check the small guide with changes, and return the exit status and the report."""
    write_small(folder / "guide", *changes)
    return report_of(folder / "guide", form, folder / "report")


def report_of(guide: Path, form: str, out: Path) -> tuple[int, str]:
    """Check a folder, and return the exit status and the report."""
    status = main(["check", str(guide), "--report", form, "--out", str(out)])
    return status, out.read_text(encoding="utf-8")


def json_report(folder: Path, *changes: tuple[str, str, str]) -> tuple[int, dict[str, Any]]:
    """Check the small guide with changes, and return the exit status and the JSON report."""
    status, text = report(folder, "json", *changes)
    made: dict[str, Any] = json.loads(text)
    return status, made


def write_eleven(folder: Path) -> Path:
    """Write the small guide as ten good files, each finding in its own, and a broken one among them."""
    write_small(folder)
    (folder / "findings" / "all.yaml").unlink()
    for finding in re.split(r"^(?=\w)", SMALL["findings/all.yaml"], flags=re.MULTILINE)[1:]:
        name = finding.partition(":")[0]
        (folder / "findings" / f"{name}.yaml").write_text(finding, encoding="utf-8")
    assert len(list(folder.rglob("*.yaml"))) == 10
    (folder / "findings" / "broken.yaml").write_text("legs: {label: Legs\n", encoding="utf-8")
    return folder
