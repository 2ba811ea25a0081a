"""A change that no text, number or lamb shows is told by its field, with what it was and is."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.compare.made import Change, two_folders
from triage.cli import main

CHANGES: dict[str, tuple[Change, tuple[str, str, str]]] = {
    "a grade": (("sources.yaml", "grade: A", "grade: B"), ("grade", "A", "B")),
    "another map": (("numbers.yaml", "a-paper: [36, 37]", "a-paper: [36, 38]"), ("published", "a-paper: 36, 37", "a-paper: 36, 38")),
}  # fmt: skip


@pytest.mark.parametrize("what", CHANGES)
def test_a_change_of_no_text_is_told_by_its_field(
    what: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """In both reports: the field, what it was, and what it is."""
    change, (field, old, new) = CHANGES[what]
    folders = [str(each) for each in two_folders(tmp_path, change)]

    main(["compare", *folders, "--report", "json"])
    report = json.loads(capsys.readouterr().out)
    main(["compare", *folders])
    text = " ".join(capsys.readouterr().out.split())

    parts = [part for each in report["otherwise"] for part in each["parts"]]
    assert {"field": field, "old": old, "new": new} in parts
    assert f"In '{field}': was {old}; is {new}" in text
