"""The commands about kept lambs, as programs."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from icalendar import Calendar

from triage.calendars import WARNING

COLD = "5\n36.2\n3h\nd\n"


def triage(*arguments: str, typed: str = "") -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "triage", *arguments],
        check=False, input=typed, capture_output=True, text=True, timeout=60,
    )  # fmt: skip


@pytest.fixture
def blue() -> None:
    """An invented lamb in the casebook of the test's own home."""
    assert triage("walk", "--plain", typed=f"{COLD}l\nc\n1\nBlue 7\n").returncode == 0


@pytest.mark.usefixtures("blue")
def test_the_lambs_in_care_are_listed() -> None:
    """Each lamb in care stands on a line, with what is due."""
    ran = triage("lambs")

    assert ran.stdout.startswith("Blue 7: look at ")
    assert "Phone the vet now." in ran.stdout
    assert triage("lambs", "--all").stdout.startswith("Blue 7, since ")


def test_no_lamb_yet() -> None:
    """With nothing kept the commands say so."""
    assert triage("lambs").stdout == "No lamb is in care.\n"
    assert triage("looks").stdout == "No look is set.\n"
    ran = triage("lamb", "Blue")
    assert (ran.returncode, ran.stdout) == (1, "")
    assert "No lamb is called 'Blue'" in ran.stderr


@pytest.mark.usefixtures("blue")
def test_a_lambs_story_is_told() -> None:
    """The beginning of a name is enough, in any case."""
    ran = triage("lamb", "bl")

    assert "Blue 7" in ran.stdout
    assert "36.2 °C" in ran.stdout
    assert "Done: Dry it and warm it" in ran.stdout


def test_two_lambs_of_one_name_are_told_apart() -> None:
    """Where a name fits two lambs, both are listed with a number that fits one."""
    for name in ("Red 1", "Red 2"):
        triage(
            "walk",
            "--plain",
            typed=f"1\n6\nl\nc\n1\n{name}\n" if name == "Red 2" else f"6\nl\nc\n1\n{name}\n",
        )

    ran = triage("lamb", "red")
    assert ran.returncode == 1
    number = ran.stderr.splitlines()[1].split()[0]
    assert triage("lamb", number).returncode == 0


@pytest.mark.usefixtures("blue")
def test_the_handover_is_told_and_printed(tmp_path: Path) -> None:
    """What to say to the vet comes as text, and as a page that holds the same words."""
    ran = triage("handover", "blue")
    assert "Why now: danger sign at" in ran.stdout
    assert "Not checked: " in ran.stdout

    assert triage("handover", "blue", "--paper", str(tmp_path / "p.html")).returncode == 0
    assert "Not checked: " in (tmp_path / "p.html").read_text(encoding="utf-8")


@pytest.mark.usefixtures("blue")
def test_the_looks_go_into_a_calendar(tmp_path: Path) -> None:
    """The file is iCalendar as a library reads it, and both it and the command warn not to rely on it."""
    ran = triage("looks", "--calendar", str(tmp_path / "looks.ics"))

    assert ran.stdout.startswith("Blue 7: look at ")
    assert WARNING in ran.stdout
    [event] = Calendar.from_ical((tmp_path / "looks.ics").read_bytes()).walk("VEVENT")
    assert event["SUMMARY"] == "Look again: Blue 7"
    assert event["DESCRIPTION"] == WARNING


def test_no_look_makes_no_calendar(tmp_path: Path) -> None:
    """A calendar without an entry is none (RFC 5545, 3.6), so none is written, and that is said."""
    ran = triage("looks", "--calendar", str(tmp_path / "looks.ics"))

    assert (ran.returncode, ran.stdout) == (0, "No look is set.\nSo no calendar is written.\n")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.usefixtures("blue")
@pytest.mark.parametrize("command", [("looks", "--calendar"), ("export", "blue", "--out")])
def test_a_file_that_can_not_be_written_is_told(tmp_path: Path, command: tuple[str, ...]) -> None:
    """A folder that is not there gives a sentence and status 2."""
    ran = triage(*command, str(tmp_path / "none" / "file"))

    assert ran.returncode == 2
    assert ran.stderr == "Something could not be read or written: No such file or directory.\n"


@pytest.mark.usefixtures("blue")
def test_a_lamb_moves_to_another_machine(tmp_path: Path) -> None:
    """What was exported is taken in whole elsewhere, once; again it changes nothing."""
    moved, other = tmp_path / "blue.json", str(tmp_path / "other.sqlite")
    assert triage("export", "blue", "--out", str(moved)).returncode == 0

    first = triage("import", str(moved), "--casebook", other)
    second = triage("import", str(moved), "--casebook", other)

    assert first.stdout == "Blue 7: 1 walk and 0 notes taken in.\n"
    assert "1 were there already" in second.stdout
    assert "Its card here stays as it is." in second.stdout
    assert triage("lambs", "--casebook", other).stdout == triage("lambs").stdout


@pytest.mark.usefixtures("blue")
def test_a_foreign_file_is_refused_and_changes_nothing(tmp_path: Path) -> None:
    """A file that is cut short, or not ours, is refused with the place, and the casebook stays as it is."""
    moved = tmp_path / "blue.json"
    triage("export", "blue", "--out", str(moved))
    other = str(tmp_path / "other.sqlite")
    text = moved.read_text(encoding="utf-8")
    data = json.loads(text)
    data["cases"][0]["begun"] = "soon"
    for spoilt, why in (
        (text[: len(text) // 2], "the file may be cut short"),
        ("{}", "it is not a file that this program exported"),
        (json.dumps(data), "cases[0].begun: this should be a time"),
        (json.dumps({**json.loads(text), "moved": 2}), "it is of version 2"),
    ):
        moved.write_text(spoilt, encoding="utf-8")
        ran = triage("import", str(moved), "--casebook", other)
        assert ran.returncode == 1
        assert why in ran.stderr
        assert "The casebook is as it was." in ran.stderr
        assert triage("lambs", "--casebook", other).stdout == "No lamb is in care.\n"


def test_another_guide_keeps_nothing_unless_told(tmp_path: Path) -> None:
    """A walk by a guide of one's own is not kept among the real lambs, and says so."""
    from triage.guide.find import knowledge_root

    ran = triage("walk", "--plain", "--guide", str(knowledge_root()), typed="6\n")

    assert "Nothing of this walk is kept" in ran.stdout
    assert triage("lambs").stdout == "No lamb is in care.\n"
    assert "Nothing of this walk is kept" in triage("walk", "--plain", "--unkept", typed="6\n").stdout


def test_a_newer_casebook_does_not_keep_the_guide_shut(tmp_path: Path) -> None:
    """With a casebook of a newer edition the guide opens and walks, and says that nothing is kept."""
    import sqlite3

    triage("walk", "--plain", "--casebook", str(tmp_path / "c.sqlite"), typed="6\n")
    with sqlite3.connect(tmp_path / "c.sqlite") as raw:
        raw.execute("PRAGMA user_version = 99")
    raw.close()

    ran = triage("walk", "--plain", "--casebook", str(tmp_path / "c.sqlite"), typed="6\n39.3\n")

    assert "Not kept: the casebook was written by a newer edition" in ran.stdout
    assert "39.3 °C" in ran.stdout
