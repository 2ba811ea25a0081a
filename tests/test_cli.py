"""The command line as it is run: exit status, stdout, stderr, pipes, signals."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import write_small
from triage import cli


def triage(
    *arguments: str, typed: str = "", env: dict[str, str] | None = None
) -> subprocess.CompletedProcess[str]:
    """Run the command with lines typed into a pipe."""
    return subprocess.run(
        [sys.executable, "-m", "triage", *arguments],
        input=typed,
        capture_output=True,
        text=True,
        timeout=60,
        encoding="utf-8",
        env={**os.environ, "LC_ALL": "C.UTF-8", **(env or {})},
        check=False,
    )


def test_check_of_the_shipped_guide() -> None:
    """The shipped guide passes, with a summary and status 0."""
    ran = triage("check")

    assert (ran.returncode, ran.stderr) == (0, "")
    assert ran.stdout.startswith("Sound: ")


def test_check_names_every_problem(tmp_path: Path) -> None:
    """Problems come one a line with their place, and status 1."""
    folder = write_small(tmp_path, ("topics/first.yaml", "go: feel", "go: fel"))

    ran = triage("check", str(folder))

    assert ran.returncode == 1
    assert ran.stdout.startswith("topics/first.yaml:16:28: there is no node 'fel'; did you mean 'feel'?")


def test_check_of_nothing(tmp_path: Path) -> None:
    """A folder that can't be read gives one sentence and status 2."""
    ran = triage("check", str(tmp_path / "none"))

    assert (ran.returncode, ran.stdout) == (2, "")
    assert "can't be read" in ran.stderr
    assert "Traceback" not in ran.stderr


@pytest.mark.parametrize("command", [["walk", "--plain"], ["findings"], ["amounts"], ["--version"]])
def test_no_command_opens_a_broken_guide(tmp_path: Path, command: list[str]) -> None:
    """A broken guide is not opened for use; the person is sent to the vet instead."""
    folder = write_small(tmp_path, ("topics/first.yaml", "go: feel", "go: fel"))

    ran = triage(*command, "--guide", str(folder))

    assert ran.returncode == 1
    assert "If a lamb is in danger, phone your vet now." in ran.stderr
    assert "Traceback" not in ran.stderr


def test_a_guide_of_ones_own_must_pass_the_check(tmp_path: Path) -> None:
    """A guide that reads well but does not hold together is not opened either."""
    folder = write_small(tmp_path, ("topics/first.yaml", "      - {unsure: true, go: feel}\n", ""))

    ran = triage("walk", "--plain", "--guide", str(folder))

    assert ran.returncode == 1
    assert 'no way out for "not sure"' in ran.stderr


def test_nothing_given_means_what_the_command_line_means_by_nothing() -> None:
    """The guide is opened without a parser then; what holds is what the parser would have said."""
    assert vars(cli._parser().parse_args([])) == dict(cli.NOTHING_ASKED)


def test_a_walk_through_a_pipe() -> None:
    """Lines from a pipe walk the guide; the end of input ends it cleanly."""
    ran = triage("walk", "--plain", typed="6\n39.2\n")

    assert ran.returncode == 0
    assert "What does it do?" in ran.stdout
    assert ran.stderr == "Stopped before an end was reached. If the lamb gets worse, phone your vet.\n"


@pytest.mark.parametrize("command", [[], ["walk"], ["read"], ["sign"], ["practice"]])
def test_plain_may_stand_before_a_command_or_behind_it(command: list[str]) -> None:
    """Whoever has to see plain lines need not know where an option goes; without it nothing is plain."""
    assert cli._parsed(["--plain", *command]).plain
    assert cli._parsed([*command, "--plain"]).plain
    assert not cli._parsed(command).plain


def test_no_command_in_a_pipe_is_plain() -> None:
    """With no terminal the guide opens in plain lines at the danger signs."""
    ran = triage(typed="1\n")

    assert ran.returncode == 0
    assert "** Phone the vet now (Danger sign: Gasping" in ran.stdout


def test_a_locale_without_the_degree_sign() -> None:
    """Where the output has only ASCII, 39.2 °C is 39.2 C and nothing fails."""
    ran = triage("walk", "--plain", typed="6\n39.2\n", env={"PYTHONIOENCODING": "ascii"})

    assert ran.returncode == 0
    assert "39.2 C" in ran.stdout


def test_answers_and_record(tmp_path: Path) -> None:
    """A file of answers is walked to its end, and the walk is written as JSON."""
    answers = tmp_path / "lamb.yaml"
    answers.write_text(
        "danger: none\ntemperature: 39.3\nswallows: sucks\nreason: no-first-milk\nage: 2h\nbefore-feed: none\nweight: 4kg\n"
    )

    ran = triage("walk", "--plain", "--answers", str(answers), "--record", str(tmp_path / "night.json"))

    assert (ran.returncode, ran.stderr) == (0, "")
    assert "Bottle feed 200 ml" in ran.stdout
    assert json.loads((tmp_path / "night.json").read_text())["end"] == "first-milk-bottle"


def test_answers_that_lack_one(tmp_path: Path) -> None:
    """A file that lacks an answer stops with a clear message and status 1."""
    answers = tmp_path / "lamb.yaml"
    answers.write_text("danger: none\n")

    ran = triage("walk", "--plain", "--answers", str(answers))

    assert (ran.returncode, ran.stdout) == (1, "")
    assert "'temperature' is asked and not answered here" in ran.stderr


def test_answers_that_are_not_there(tmp_path: Path) -> None:
    """A file that can't be read is told in a sentence, with status 2."""
    ran = triage("walk", "--plain", "--answers", str(tmp_path / "none.yaml"))

    assert ran.returncode == 2
    assert "The answers can't be read" in ran.stderr


def test_a_record_that_cannot_be_written_is_printed(tmp_path: Path) -> None:
    """When the record can't be kept it is printed, so that nothing is lost."""
    ran = triage("walk", "--plain", "--record", str(tmp_path / "none" / "night.json"), typed="1\n")

    assert ran.returncode == 2
    assert "The record could not be written" in ran.stderr
    assert '"end": "gasping"' in ran.stdout


def test_findings_lists_every_choice() -> None:
    """Every finding is listed with what may be written for it."""
    ran = triage("findings")

    assert ran.returncode == 0
    assert (
        "temperature: What is its temperature?\n  a measurement, 25 °C to 43 °C\n  unsure: No thermometer"
        in ran.stdout
    )
    assert "  no-swallow: Its head drops, or it does not swallow" in ran.stdout


def test_an_amount_with_its_working() -> None:
    """A sum prints its result, its working and its sources."""
    ran = triage("amounts", "first-milk", "weight=4.2kg")

    assert ran.returncode == 0
    assert ran.stdout.startswith(
        "One feed of first milk: 210 ml\n- Weight 4.2 kg\n- 4.2 kg x 50 ml = 210 ml\n"
    )
    assert "Teagasc" in ran.stdout


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["first-mlk"], "There is no sum 'first-mlk'; did you mean 'first-milk'?"),
        (["first-milk"], "'first-milk' needs weight: add weight=..."),
        (["first-milk", "weight"], "'weight' should be written finding=value"),
        (["first-milk", "wieght=4"], "There is no finding 'wieght'; did you mean 'weight'?"),
        (["first-milk", "weight=heavy"], "weight: 'heavy' is not a number here."),
        (
            ["milk-batch", "batch=n", "bag-powder=200", "bag-water=800", "bag-way=added-to"],
            "'milk-batch' needs batch as a measurement",
        ),
    ],
)
def test_amounts_asked_for_wrongly(arguments: list[str], said: str) -> None:
    """Each slip is told in a sentence, with status 2."""
    ran = triage("amounts", *arguments)

    assert ran.returncode == 2
    assert said in ran.stderr
    assert "Traceback" not in ran.stderr


def test_a_weight_from_birth_type_is_marked_as_a_guess() -> None:
    """With no scale the birth type serves, and the result says that it is a guess."""
    ran = triage("amounts", "first-milk", "birth-type=twin", "--units", "metric")

    assert ran.stdout.startswith("One feed of first milk: 160 ml\n")
    assert "Weight is a guess: 3.2 kg, as for a twin. Weigh it when you can." in ran.stdout


def test_a_closed_pipe_is_no_error() -> None:
    """When the reader goes away the command ends without a word."""
    ran = subprocess.run(
        f"{sys.executable} -m triage findings | head -1",
        shell=True,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )

    assert (ran.returncode, ran.stderr) == (0, "")


def test_ctrl_c_ends_cleanly() -> None:
    """Ctrl-C in plain mode ends with status 130 and no traceback."""
    child = subprocess.Popen(
        [sys.executable, "-m", "triage", "walk", "--plain"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert child.stdin
    assert child.stdout
    child.stdin.write("6\n")
    child.stdin.flush()
    while "temperature" not in child.stdout.readline():
        pass
    child.send_signal(signal.SIGINT)
    _, err = child.communicate(timeout=30)

    assert child.returncode == 130
    assert "Traceback" not in err


def test_version_names_program_and_edition() -> None:
    """--version tells the program's version, the guide's edition, and that it passed its check."""
    assert "guide edition 2026.3" in triage("--version").stdout
    assert "It passed its check." in triage("--version").stdout


def test_a_guide_with_mistakes_can_be_replayed_by_its_maker(tmp_path: Path) -> None:
    """A file of answers walks a guide that fails the check, with a warning; a keeper can't open it."""
    folder = write_small(
        tmp_path / "guide", ("topics/first.yaml", "go: warmth, at_least: vet-now", "go: warmth")
    )
    answers = tmp_path / "lamb.yaml"
    answers.write_text("danger: limp\ntemperature: 39 C\n", encoding="utf-8")

    replayed = triage("walk", "--guide", str(folder), "--answers", str(answers))
    opened = triage("walk", "--plain", "--guide", str(folder))

    assert replayed.returncode == 0
    assert "Warm enough" in replayed.stdout
    assert "Not for a lamb in need." in replayed.stderr
    assert opened.returncode == 1
    assert "not safe to use" in opened.stderr
