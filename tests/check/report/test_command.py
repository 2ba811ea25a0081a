"""`triage check` with a report of some form, to stdout or to a file."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import write_small
from tests.test_cli import triage
from triage.check import report
from triage.commands.check import REPORTS


@pytest.mark.parametrize("form", REPORTS)
def test_a_report_of_each_kind(tmp_path: Path, form: str) -> None:
    """Whatever the form of the report, status and stderr are those of the check."""
    folder = write_small(tmp_path, ("topics/first.yaml", "go: feel", "go: fel"))

    ran = triage("check", str(folder), "--report", form)

    assert ran.returncode == 1
    assert ran.stderr.splitlines() == [
        "1 problem found.",
        "No walk was proved: mend what can't be read first, then check again.",
    ]
    assert "there is no node 'fel'" in ran.stdout


@pytest.mark.parametrize("form", ["json", "sarif"])
def test_a_report_for_programs_is_utf_8(tmp_path: Path, form: str) -> None:
    """Where the locale has only ASCII, a report for programs is UTF-8 all the same."""
    folder = write_small(tmp_path, ("topics/first.yaml", "go: feel", "go: fühl"))

    ran = triage("check", str(folder), "--report", form, env={"PYTHONIOENCODING": "ascii"})

    assert "there is no node 'fühl'" in ran.stdout


def test_a_report_in_a_file(tmp_path: Path) -> None:
    """With --out the report is in the file, and nothing on stdout; a later one takes its place."""
    out = tmp_path / "report.json"
    for _ in range(2):
        ran = triage("check", "--report", "json", "--out", str(out))

        assert (ran.returncode, ran.stdout, ran.stderr) == (0, "", "")
        assert json.loads(out.read_text(encoding="utf-8"))["sound"] is True
    assert os.listdir(tmp_path) == ["report.json"]


@pytest.mark.parametrize(
    ("out", "why"),
    [
        ("none/report", "No such file or directory"),
        (".", "Is a directory"),
        ("/dev/full", "No space left on device"),
    ],
)
def test_a_report_that_cannot_be_written(tmp_path: Path, out: str, why: str) -> None:
    """A path that takes no file, or a full disk, gives one sentence and status 2."""
    ran = triage("check", "--out", str(tmp_path / out))

    assert (ran.returncode, ran.stdout) == (2, "")
    assert ran.stderr == f"The report could not be written to {tmp_path / out}: {why}.\n"


def test_no_report_of_a_folder_that_cannot_be_read(tmp_path: Path) -> None:
    """Of a folder that can't be read there is no report that could be taken for a check."""
    ran = triage("check", str(tmp_path / "none"), "--report", "sarif", "--out", str(tmp_path / "report"))

    assert ran.returncode == 2
    assert "can't be read" in ran.stderr
    assert not (tmp_path / "report").exists()


def test_a_report_for_a_full_disk() -> None:
    """When stdout takes no more, that is told in a sentence, with status 2."""
    with open("/dev/full", "w") as full:
        ran = subprocess.run(
            [sys.executable, "-m", "triage", "check", "--report", "json"],
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            timeout=60,
            check=False,
        )

    assert ran.returncode == 2
    assert ran.stderr == "Something could not be read or written: No space left on device.\n"


def test_the_reports_that_can_be_asked_for() -> None:
    """The command line offers the reports that there are."""
    assert set(REPORTS) == set(report.REPORTS)
