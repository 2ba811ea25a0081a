"""`triage setup` when things go wrong: whatever happens, what was kept is still there."""

from __future__ import annotations

import os
import resource
import subprocess
import sys
from pathlib import Path

import pexpect
import pytest

from tests.holding.test_setup import place, setup
from triage.holding.file import read_holding
from triage.holding.holding import Holding


def by_hand(text: str) -> None:
    place().parent.mkdir(parents=True)
    place().write_text(text, encoding="utf-8")


def no_room(*arguments: str, typed: str = "") -> subprocess.CompletedProcess[str]:
    """Run setup where no file may grow past a hundred bytes, as on a disk that is full."""
    return subprocess.run(
        [sys.executable, "-m", "triage", "setup", *arguments],
        check=False, input=typed, capture_output=True, text=True, timeout=60,
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100)),
        env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1"},
    )  # fmt: skip


def test_a_full_disk_is_told_and_what_was_there_stays() -> None:
    """Values that can't be written leave the file as it was, with a sentence and status 2."""
    by_hand("vet: 01632 960111\n")
    ran = no_room("caller=Ann")

    assert ran.returncode == 2
    assert ran.stderr.endswith("File too large. What was there is there still.\n")
    assert place().read_text(encoding="utf-8") == "vet: 01632 960111\n"
    assert os.listdir(place().parent) == ["holding.yaml"]


def test_answers_that_could_not_be_written_are_told_at_the_end() -> None:
    """Nobody has to type again what the disk refused: the command that sets it stands at the end."""
    ran = no_room(typed="01632 960111\n\nAnn O'Field\n")

    assert ran.returncode == 2
    assert ran.stderr.endswith(
        """Set it later with:\n  triage setup 'vet=01632 960111' 'caller=Ann O'"'"'Field'\n"""
    )


def test_all_is_set_or_nothing() -> None:
    """One wrong value keeps the right ones from being set, and every wrong one is told."""
    ran = setup("vet=01632 960111", "bag-powder=200", "units=ells", "vet=1", "caller")

    assert ran.returncode == 1
    assert [line.partition(":")[0] for line in ran.stderr.splitlines()][:2] == [
        "vet",
        "'caller' is not field=value. The fields",
    ]
    assert "bag-powder: '200' of what?" in ran.stderr
    assert "units: 'ells' is not" in ran.stderr
    assert ran.stderr.endswith("Nothing was changed.\n")
    assert not place().exists()


def test_show_sets_nothing() -> None:
    """--show beside a value is refused, as it can't mean both."""
    ran = setup("--show", "vet=01632 960111")

    assert (ran.returncode, ran.stdout) == (2, "")
    assert not place().exists()


def test_show_without_a_file() -> None:
    """Where nothing is kept yet, it says where it would be."""
    ran = setup("--show")

    assert ran.returncode == 0
    assert ran.stdout.splitlines()[0] == f"{place()} (not there yet)"


def test_show_tells_what_a_bag_lacks() -> None:
    """Half a bag serves no sum, and is told."""
    setup("bag-powder=200 g", "units=us")

    said = setup("--show").stdout
    assert "bag-powder: 200 g (7.1 oz by weight)" in said
    assert "Of the bag this is not kept: bag-water, bag-way." in said


def test_a_warning_alone_is_no_mistake() -> None:
    """A note behind a value is warned of, and the status stays 0."""
    by_hand("vet: 01632 960111 # ask for Ann\n")
    ran = setup("--show")

    assert ran.returncode == 0
    assert "warning: the text is cut here" in ran.stderr


def test_own_notes_are_told_of_before_they_go() -> None:
    """Setup says where the file with a person's own notes will be found."""
    by_hand("# ask for Ann\nvet: 01632 960111\n")
    ran = setup("caller=Ann")

    assert f"it is kept: {place()}.before." in ran.stderr
    assert read_holding(place()).holding == Holding("Ann", vet="01632 960111")


@pytest.mark.parametrize("arguments", [(), ("vet=01632 960111",), ("--show",)])
def test_a_pipe_in_its_place_is_not_waited_for(arguments: tuple[str, ...]) -> None:
    """What is no file is told, and left alone."""
    place().parent.mkdir(parents=True)
    os.mkfifo(place())
    ran = setup(*arguments, typed="01632 960111\n")

    assert "this is not a file" in ran.stderr
    assert ran.returncode == (1 if arguments == ("--show",) else 2)


def test_ctrl_c_keeps_what_was_answered() -> None:
    """In a terminal, Ctrl-C ends the questions with its own status, and no answer is lost."""
    child = pexpect.spawn(sys.executable, ["-m", "triage", "setup"], encoding="utf-8", timeout=30)
    child.expect("Answer: ")
    child.sendline("01632 960111")
    child.expect("Kept: 01632 960111")
    child.expect("Answer: ")
    child.sendintr()
    child.expect(pexpect.EOF)
    child.close()

    assert child.exitstatus == 130
    assert read_holding(place()).holding == Holding(vet="01632 960111")


def test_signs_that_a_terminal_lacks_are_kept_whole() -> None:
    """A name is kept in its own letters where the output can show only ASCII."""
    ran = subprocess.run(
        [sys.executable, "-m", "triage", "setup", "caller=Bj\u00f6rn Sj\u00f8"],
        capture_output=True, timeout=60, check=True,
        env={**os.environ, "LC_ALL": "C.UTF-8", "PYTHONIOENCODING": "ascii"},
    )  # fmt: skip

    assert b"caller: Bjorn Sj?" in ran.stdout
    assert read_holding(place()).holding.caller == "Bj\u00f6rn Sj\u00f8"


@pytest.mark.parametrize("folder", ["x" * 300, "file/under"])
def test_a_holding_that_can_not_be_found_keeps_no_guide_shut(folder: str, tmp_path: Path) -> None:
    """Where the folder can't even be looked into, the walk begins all the same."""
    (tmp_path / "file").write_text("in the way")
    ran = subprocess.run(
        [sys.executable, "-m", "triage", "walk", "--plain", "--unkept"],
        check=True, input="1\n", capture_output=True, text=True, timeout=60,
        env={**os.environ, "XDG_CONFIG_HOME": str(tmp_path / folder)},
    )  # fmt: skip

    assert "Do you see any of these now?" in ran.stdout


def test_the_units_of_the_holding_are_those_of_every_list(tmp_path: Path) -> None:
    """The findings, and a walk by a file of answers, take up the holding's units; --units outranks them."""
    setup("units=us")
    (tmp_path / "lamb.yaml").write_text(
        "danger: none\ntemperature: 39.3\nswallows: sucks\nreason: no-first-milk\nage: 2h\nbefore-feed: none\nweight: 4kg\n"
    )

    def triage(*arguments: str) -> str:
        return subprocess.run(
            [sys.executable, "-m", "triage", *arguments],
            check=True, capture_output=True, text=True, timeout=60, env={**os.environ, "LC_ALL": "C.UTF-8"},
        ).stdout  # fmt: skip

    walked = ("walk", "--answers", str(tmp_path / "lamb.yaml"))
    assert "a measurement, 77 °F to" in triage("findings")
    assert "a measurement, 25 °C to" in triage("findings", "--units", "metric")
    assert "Bottle feed 6.75 oz" in triage(*walked)
    assert "Bottle feed 200 ml" in triage(*walked, "--units", "metric")
