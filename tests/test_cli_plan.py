"""`triage plan` as a program."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import vobject


def triage(*arguments: str, typed: str = "") -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "triage", *arguments],
        check=False, input=typed, capture_output=True, text=True, timeout=60,
        env={**os.environ, "LC_ALL": "en_GB.UTF-8"},
    )  # fmt: skip


def test_a_lamb_told_of_on_the_line() -> None:
    """Age and weight are enough; the plan has the milk, the duties with dates, and what is lacking."""
    ran = triage("plan", "age=3 days", "weight=4.4kg", "keep-as=wether", "law=scotland", "name=Blue 7")

    assert ran.returncode == 0
    assert "Plan for Blue 7" in ran.stdout
    assert "6 feeds of 130 ml" in ran.stdout
    assert "Castrate, if it is to be done" in ran.stdout
    assert "Check your law. Scotland, as read on 2026-" in ran.stdout
    assert "triage setup" in ran.stdout


def test_us_units() -> None:
    """In US units the same plan is in ounces and pounds."""
    ran = triage("plan", "age=3 days", "weight=9 lb 11 oz", "--units", "us")

    assert "9 lb 11 oz" in ran.stdout
    assert " ml" not in ran.stdout


def test_a_kept_lamb() -> None:
    """A kept lamb's plan goes by its own card and weighings."""
    assert (
        triage("walk", "--plain", typed="5\n36.2\n3h\nd\nl\nc\n1\nBlue 7\nb\nb\nb\nl\n2\n4.2 kg\n").returncode
        == 0
    )
    ran = triage("plan", "blue")

    assert ran.returncode == 0, ran.stderr
    assert "Plan for Blue 7" in ran.stdout
    assert "First day" in ran.stdout
    assert triage("plan", "red").returncode == 1


def test_missed_feeds() -> None:
    """After a missed feed it says how to go on, and never doubles."""
    ran = triage("plan", "age=3 days", "weight=4kg", "--missed", "1")

    assert "Never give two feeds in one." in ran.stdout
    assert triage("plan", "age=120 days", "weight=20kg", "--missed", "1").returncode == 1
    assert triage("plan", "age=3 days", "weight=4kg", "--missed", "-1").returncode == 1


def test_the_calendar(tmp_path: Path) -> None:
    """`--calendar` writes a file that another library reads."""
    file = tmp_path / "plan.ics"
    ran = triage("plan", "age=born 2026-11-28 02:00", "weight=4kg", "--calendar", str(file))

    if ran.returncode:  # the birth lies in the future, or more than a year back, of the machine's clock
        ran = triage("plan", "age=2 days", "weight=4kg", "--calendar", str(file))
    assert ran.returncode == 0, ran.stderr
    assert "never the only alarm" in ran.stdout
    assert "empty that calendar first" in ran.stdout
    assert len(vobject.readOne(file.read_text()).vevent_list) > 20
    file.unlink()
    missed = triage("plan", "age=2 days", "weight=4kg", "--missed", "1", "--calendar", str(file))
    assert "Never give two feeds in one" in missed.stdout
    assert file.exists()


def test_mistakes_get_a_sentence() -> None:
    """A wrong pair, no age, a wrong law, a weight that can't be, and a folder that is not there."""
    for arguments, words in (
        (("weight=4kg",), "Name a lamb that is kept"),
        ((), "Name a lamb that is kept"),
        (("age=3 days", "wieght=4kg"), "did you mean 'weight'"),
        (("age=3 days", "weight=400kg"), "weight: "),
        (("age=3 days", "law=atlantis"), "There is no law 'atlantis'"),
        (("age=3 days", "eaten=lots"), "eaten: "),
        (("age=3 days", "temperature=34C"), "No plan goes by temperature."),
        (("blue", "weight=4kg"), "A kept lamb has its own answers"),
    ):
        ran = triage("plan", *arguments)
        assert ran.returncode in (1, 2), arguments
        assert words in ran.stderr, (arguments, ran.stderr)
        assert "Traceback" not in ran.stderr
    ran = triage("plan", "age=3 days", "weight=4kg", "--calendar", "/nowhere/at/all.ics")
    assert ran.returncode == 2
    assert "could not be" in ran.stderr


def test_a_weight_that_no_lamb_of_its_age_has_is_refused() -> None:
    """9 kg at two hours would be given milk for three lambs; 9 kg at four weeks is a lamb."""
    ran = triage("plan", "age=2h", "weight=9kg")

    assert ran.returncode == 2
    assert "9 kg can't be right at 2 hours old" in ran.stderr
    assert triage("plan", "age=28 days", "weight=9kg").returncode == 0
