"""`triage setup`, as a program."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from triage.holding.file import read_holding
from triage.holding.holding import Holding


def setup(*arguments: str, typed: str = "") -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "triage", "setup", *arguments],
        check=False, input=typed, capture_output=True, text=True, timeout=60,
    )  # fmt: skip


def place() -> Path:
    return Path(os.environ["XDG_CONFIG_HOME"]) / "bummer-triage" / "holding.yaml"


def test_values_are_set_at_once() -> None:
    """field=value sets, = alone empties, and what is kept is shown with where it is."""
    ran = setup("vet=01632 960111", "units=us")

    assert (ran.returncode, ran.stdout.splitlines()[0]) == (0, str(place()))
    assert read_holding(place()).holding == Holding(vet="01632 960111", units="us")
    assert setup("vet=").returncode == 0
    assert read_holding(place()).holding == Holding(units="us")


def test_each_answer_is_written_at_once() -> None:
    """The questions may be stopped anywhere; what was answered so far is kept, and Enter leaves it alone."""
    setup("place=Hill Farm")
    ran = setup(typed="01632 960111\n\nAnn Field\n")

    assert ran.returncode == 0
    assert "Traceback" not in ran.stderr
    assert read_holding(place()).holding == Holding(vet="01632 960111", caller="Ann Field", place="Hill Farm")


def test_a_wrong_answer_is_asked_again() -> None:
    """A value that can't be used gets a line, and the question comes once more."""
    ran = setup(typed="\n\n\n\n\nmetres\nus\n")

    assert "'metres' is not one of metric, us" in ran.stdout
    assert read_holding(place()).holding.units == "us"


def test_a_field_that_is_not_there() -> None:
    """A slip in a field's name changes nothing and names the nearest."""
    ran = setup("vett=1")

    assert ran.returncode == 1
    assert "did you mean 'vet'" in ran.stderr
    assert not place().exists()


def test_a_file_with_mistakes_is_kept_beside() -> None:
    """Writing over a file with lines that can't be used keeps the file as it was, and says where."""
    place().parent.mkdir(parents=True)
    place().write_text("vet: 01632 960111\nunits: metrik\n", encoding="utf-8")

    ran = setup("caller=Ann")

    assert "holding.yaml:2:8: units: 'metrik' is not one of" in ran.stderr
    assert place().with_name("holding.yaml.before").read_text(encoding="utf-8").endswith("units: metrik\n")
    assert read_holding(place()).holding == Holding(vet="01632 960111", caller="Ann")


def test_show_tells_every_problem() -> None:
    """--show changes nothing and ends with 1 where something is wrong."""
    place().parent.mkdir(parents=True)
    place().write_text("units: metrik\n", encoding="utf-8")
    ran = setup("--show")

    assert ran.returncode == 1
    assert "units: 'metrik'" in ran.stderr
    assert place().read_text(encoding="utf-8") == "units: metrik\n"


def test_what_is_kept_is_used() -> None:
    """The units, the vet and the bag of this holding are taken up by the other commands."""
    setup("vet=01632 960111", "units=us", "bag-powder=200 g", "bag-water=800 ml", "bag-way=added-to")

    def triage(*arguments: str, typed: str = "") -> str:
        return subprocess.run(
            [sys.executable, "-m", "triage", *arguments],
            check=True, input=typed, capture_output=True, text=True, timeout=60,
        ).stdout  # fmt: skip

    assert "Vet: 01632 960111" in triage("walk", "--plain", "--unkept", typed="1\n")
    assert "102.6 °F" in triage("walk", "--plain", "--unkept", typed="6\n39.2C\n")
    # The worked example of a milk replacer's bag: 200 g and 800 ml make a litre (see tests/published).
    said = triage("amounts", "milk-batch", "batch=1000ml")
    assert "this holding's bag" in said
    assert "7.1 oz by weight" in said
    own = ("bag-powder=100g", "bag-water=800ml", "bag-way=added-to")
    assert "this holding's bag" not in triage("amounts", "milk-batch", "batch=1000ml", *own)
