"""`triage compare` from its arguments to its report, its exit status and its complaints."""

from __future__ import annotations

import argparse
import json
from html.parser import HTMLParser
from pathlib import Path

import pytest

from tests.compare.made import two_folders
from tests.conftest import write_small
from tests.published.contrast import contrast
from triage.commands.compare import REPORTS, add_compare
from triage.compare import report
from triage.compare.report.page import DARK, LIGHT, PAPER, TEXTS

CHILL = ("numbers.yaml", "value: 37", "value: 36.5")


def run(*arguments: str | Path) -> int:
    """Run the command as the command line does."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--units", default="metric")
    add_compare(parser)
    parsed = parser.parse_args(list(map(str, arguments)))
    return int(parsed.run(parsed))


def test_the_reports_are_named_where_they_are_asked_for() -> None:
    """The command knows each form that there is, and no other."""
    assert set(REPORTS) == set(report.REPORTS)


def test_nothing_differs(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Two folders that say the same give status 0 and say so."""
    assert run(*two_folders(tmp_path)) == 0
    assert capsys.readouterr().out.splitlines()[-1] == "Nothing differs."


def test_what_is_less_urgent_comes_first(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """With the lamb that shows it, both pages, the number by how much, and that nobody gave a reason."""
    assert run(*two_folders(tmp_path, CHILL)) == 1
    text = capsys.readouterr().out
    less, moved = (
        text.index("1. Situations that now end less urgent"),
        text.index("5. Numbers that were moved"),
    )
    assert less < moved
    for words in (
        "Phone the vet now, before; Care for it here, now",
        "Came to: Still cold (still-cold)",
        "Comes to: Warm enough (well)",
        "Temperature: 36.75 \N{DEGREE SIGN}C.",
        "Moved: down by 0.5 \N{DEGREE SIGN}C, off the safer side",
        "Why: No reason is given.",
    ):
        assert words in text


def test_the_numbers_of_the_readers_units(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A difference of temperatures is no temperature: it has no 32 degrees in it."""
    run("--units", "us", *two_folders(tmp_path, CHILL))
    assert "Moved: down by 0.9 \N{DEGREE SIGN}F" in capsys.readouterr().out


def test_the_editors_reason(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A reason in the new folder stands with the number, and with each lamb that met it."""
    old, new = two_folders(tmp_path, CHILL)
    why = "test:\n  - {of: number/chill, why: A paper said so.}\n"
    (new / "changes.yaml").write_text(why, encoding="utf-8")
    run(old, new)
    text = capsys.readouterr().out
    assert text.count("Why: A paper said so.") > 1
    assert "No reason is given." not in text


def test_json(tmp_path: Path, capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    """Every field that is documented is there, and the lamb can be read."""
    assert run("--report", "json", *two_folders(tmp_path, CHILL)) == 1
    told = json.loads(capsysbinary.readouterr().out)
    assert told["schema"] == {"name": "triage-compare", "version": 1}
    assert (told["same"], told["complete"]) == (False, True)
    first = told["less_urgent"][0]
    assert first["lamb"][1] == {"finding": "temperature", "value": 36.75, "guide": "old"}
    assert (first["met"], first["why"]) == (["number/chill"], None)
    assert (told["numbers"][0]["by"], told["numbers"][0]["off"]) == (-0.5, "less safe")


class Tags(HTMLParser):
    """What elements a page has, and whether each that is opened is closed."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.met: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.met.append(tag)
        if tag != "meta":
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def test_a_page(tmp_path: Path) -> None:
    """It loads nothing, its headings go down by one, words that are out and in are marked, and no text is markup."""
    out = tmp_path / "page.html"
    title = ("topics/first.yaml", "title: Warm enough", 'title: "<b>Quite</b> warm enough"')
    assert run("--report", "page", "--out", out, *two_folders(tmp_path, CHILL, title)) == 1
    text = out.read_text(encoding="utf-8")
    tags = Tags()
    tags.feed(text)
    assert not tags.open
    assert not {"script", "link", "img", "b\n"} & set(tags.met)
    assert {"h1", "h2", "h3", "ins", "del", "nav", "main"} <= set(tags.met)
    assert "&lt;b&gt;Quite&lt;/b&gt;" in text
    assert text.index("less-urgent-title") < text.index("words-title")


@pytest.mark.parametrize("colours", [LIGHT, DARK, PAPER])
def test_every_text_of_the_page_can_be_read(colours: dict[str, str]) -> None:
    """At least 7:1, on whatever it stands."""
    for ink, ground in TEXTS:
        assert contrast(_rgb(colours[ink]), _rgb(colours[ground])) >= 7, (ink, ground)


def _rgb(colour: str) -> tuple[int, int, int]:
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return red, green, blue


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ((("topics/first.yaml", "go: feel", "go: fel"),), "there is no node 'fel'"),
        ((("topics/first.yaml", "else: still-cold\n", "else: warmth\n"),), "never end"),
    ],
)
def test_a_guide_that_cannot_be_compared(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], changes: tuple[tuple[str, str, str], ...], why: str
) -> None:
    """It is named, with each mistake that stands in the way, and nothing is told of it."""
    assert run(*two_folders(tmp_path, *changes)) == 2
    said = capsys.readouterr()
    assert why in said.err
    assert said.err.splitlines()[-1] == "Nothing was compared."
    assert not said.out


def test_a_folder_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Status 2, with a sentence that names it."""
    assert run(write_small(tmp_path / "old"), tmp_path / "none") == 2
    assert "none" in capsys.readouterr().err


def test_a_guide_with_mistakes_is_compared_and_told_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A rule of the check that it breaks does not keep its lambs from being followed."""
    unsaid = ("topics/first.yaml", "{is: limp, go: warmth, at_least: vet-now}", "{is: limp, go: warmth}")
    run(*two_folders(tmp_path, unsaid))
    said = " ".join(capsys.readouterr().out.split())
    assert "'triage check' tells" in said
    assert "Situations that now end less urgent" in said


def test_a_report_that_cannot_be_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Status 2 and why."""
    assert run("--out", tmp_path / "none" / "report", *two_folders(tmp_path)) == 2
    assert "could not be written" in capsys.readouterr().err
