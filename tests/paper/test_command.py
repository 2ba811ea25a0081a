"""`triage print`: what it writes, and what it says where it can't."""

from __future__ import annotations

import os
import subprocess
import sys
import types
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from tests.paper.made import of_class, parsed, texts, words
from tests.rearing.lambs import shipped
from triage.casebook.opening import Opened, open_casebook
from triage.casebook.rows import Case, Lamb, new_id
from triage.cli import main
from triage.commands.printing import PAGES
from triage.guide.find import knowledge_root
from triage.guide.read import read_guide
from triage.holding.place import casebook_file

NOW = datetime.now(UTC)


def keep(*names: str, born: bool = True) -> None:
    """Keep invented lambs in care in the usual casebook."""
    place = casebook_file()
    assert isinstance(place, Path)
    opened = open_casebook(place)
    assert isinstance(opened, Opened)
    for name in names:
        lamb = Lamb(new_id(), name, NOW, NOW - timedelta(days=3) if born else None)
        case = Case(new_id(), lamb.id, NOW, NOW, "2026.1")
        assert isinstance(opened.book.begin(lamb, case), Case)
    opened.book.close()


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("LC_ALL", "en_GB.UTF-8")
    return tmp_path


def page(file: Path) -> Any:
    return parsed(file.read_text(encoding="utf-8"))


@pytest.mark.parametrize(
    ("asked", "file", "title"),
    [
        (["danger"], "danger-signs.html", "Danger signs"),
        (["topic", "scours"], "topic-scours.html", "Scours"),
        (["tables"], "milk-tables.html", "First milk by weight"),
        (["record"], "lamb-record.html", "Lamb record"),
        (["cupboard"], "cupboard.html", "Cupboard list"),
        (["plan", "blue"], "plan-blue-7.html", "Plan for Blue 7"),
    ],
)
def test_each_page_is_written_under_a_settled_name(
    asked: list[str], file: str, title: str, here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Without --out it goes to the folder that one stands in, and the command says where."""
    keep("Blue 7")

    assert main(["print", *asked]) == 0
    assert texts(page(here / file), "h1")[0] == title
    assert file in capsys.readouterr().out


def test_a_file_that_is_there_is_overwritten_whole(here: Path) -> None:
    """Nothing of a longer file is left behind."""
    file = here / "x.html"
    file.write_text("yesterday " * 100_000)

    assert main(["print", "danger", "--out", str(file)]) == 0
    assert "yesterday" not in file.read_text(encoding="utf-8")
    assert page(file) is not None


def test_the_paper_is_the_one_asked_for_or_that_of_the_units(here: Path) -> None:
    """A4 with metric units, Letter with US units, and either where it is asked for."""
    for more, size in (
        ([], "A4"),
        (["--units", "us"], "letter"),
        (["--units", "us", "--paper", "a4"], "A4"),
        (["--paper", "letter"], "letter"),
    ):
        assert main(["print", "tables", "--out", "t.html", *more]) == 0
        assert f"size: {size} portrait" in (here / "t.html").read_text(encoding="utf-8")
    assert " kg" in words(page(here / "t.html"))


def test_all_is_a_folder_with_a_page_that_lists_them(here: Path) -> None:
    """Every link leads to a file that is there, and every file but the list is linked."""
    keep("Blue 7", "Blue 7", "../../<b>", "\u05d0")

    assert main(["print", "all", "--out", "new/pages"]) == 0
    folder = here / "new" / "pages"
    links = [each.get("href") for each in page(folder / "index.html").iter() if each.get("href")]
    assert sorted([*links, "index.html"]) == sorted(file.name for file in folder.iterdir())
    assert {"plan-blue-7.html", "plan-blue-7-2.html", "plan-b.html", "plan-lamb.html"} <= set(links)
    assert len([link for link in links if link.startswith("topic-")]) == len(shipped().front.topics)
    assert "cupboard.html" in links
    assert len(list(here.iterdir())) == 1


def test_all_prints_the_rest_where_a_lamb_has_no_plan(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A lamb of unknown age is told of; its page is not made up."""
    keep("Unborn", born=False)

    assert main(["print", "all"]) == 0
    assert "Unborn: Its age is not known" in capsys.readouterr().err
    assert not list((here / "pages-to-print").glob("plan-*"))


def test_all_prints_the_rest_where_the_casebook_can_not_be_opened(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The walls need no casebook; that the plans are missing is told, and the exit status says it."""
    (here / "book").mkdir()

    assert main(["print", "all", "--casebook", "book"]) == 2
    assert "The casebook can't be opened" in capsys.readouterr().err
    assert (here / "pages-to-print" / "danger-signs.html").is_file()


def test_all_stops_where_a_page_can_not_be_written(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A folder stands where a page should: it is told, and stays as it is."""
    (here / "pages-to-print" / "milk-tables.html").mkdir(parents=True)

    assert main(["print", "all"]) == 2
    assert "milk-tables.html can't be written: Is a directory" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("asked", "status", "said"),
    [
        (["dangr"], 2, "There is no page 'dangr'; did you mean 'danger'?"),
        (["topic", "scuors"], 1, "There is no topic 'scuors'; did you mean 'scours'?"),
        (["topic", "zz"], 1, "The topics are first-look, cold,"),
        (["topic"], 1, "The topics are first-look, cold,"),
        (["plan"], 2, "Whose plan?"),
        (["plan", "bleu 7"], 1, "No lamb is called 'bleu 7'; did you mean 'blue 7'?"),
        (["danger", "--out", "no/such/x.html"], 2, "no/such/x.html can't be written: No such file"),
        (["danger", "--out", "/dev/full"], 2, "/dev/full can't be written: No space left on device"),
        (["all", "--out", "a-file/pages"], 2, "The folder a-file/pages can't be made: Not a directory"),
    ],
)
def test_what_can_not_be_done_is_told_in_a_sentence(
    asked: list[str], status: int, said: str, here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """With the nearest name where there is one, and an exit status that says so."""
    keep("Blue 7")
    (here / "a-file").write_text("")

    assert main(["print", *asked]) == status
    captured = capsys.readouterr()
    assert said in captured.err
    assert not captured.out


def test_without_a_word_it_tells_what_there_is(capsys: pytest.CaptureFixture[str]) -> None:
    """Each page has a line."""
    assert main(["print"]) == 0
    said = capsys.readouterr().out
    assert all(f"  {name}: {about}" in said for name, about in PAGES.items())


def test_a_guide_without_milk_numbers_prints_what_it_can(
    here: Path, tmp_path_factory: pytest.TempPathFactory, capsys: pytest.CaptureFixture[str]
) -> None:
    """A folder of one's own: its danger signs and topics, and a sentence on the tables."""
    from tests.conftest import write_small

    folder = str(write_small(tmp_path_factory.mktemp("guide")))

    assert main(["print", "danger", "--guide", folder]) == 0
    assert texts(page(here / "danger-signs.html"), "h3") == ["Limp"]
    assert main(["print", "topic", "first", "--guide", folder]) == 0
    assert "Still cold" in words(page(here / "topic-first.html"))
    assert main(["print", "tables", "--guide", folder]) == 1
    assert "lacks numbers" in capsys.readouterr().err
    assert main(["print", "cupboard", "--guide", folder]) == 1
    assert "no list for the cupboard" in capsys.readouterr().err


def test_a_pdf_without_its_library_is_told_of(
    here: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """One sentence says what to install, another how to do without; no file is left behind."""
    monkeypatch.setitem(sys.modules, "weasyprint", None)

    assert main(["print", "danger", "--out", "x.pdf"]) == 2
    said = capsys.readouterr().err
    assert "pip install 'bummer-triage[pdf]'" in said
    assert "print it to a PDF file" in said
    assert not (here / "x.pdf").exists()


def test_a_pdf_whose_library_lacks_its_type_setter_is_told_of(
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    tmp_path_factory: pytest.TempPathFactory,
) -> None:
    """A library that can't find Pango says so when it is loaded."""
    folder = tmp_path_factory.mktemp("lib")
    (folder / "weasyprint.py").write_text("raise OSError('cannot load library')")
    monkeypatch.syspath_prepend(folder)
    monkeypatch.delitem(sys.modules, "weasyprint", raising=False)

    assert main(["print", "danger", "--out", "x.pdf"]) == 2
    assert "Pango" in capsys.readouterr().err


def test_a_pdf_is_made_of_the_very_same_page_and_fetches_nothing(
    here: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The library is given the HTML that would be written, and a fetcher that refuses everything."""
    seen: dict[str, Any] = {}

    class Page:
        def __init__(self, string: str, url_fetcher: Any) -> None:
            seen.update(string=string, fetch=url_fetcher)

        def write_pdf(self, stylesheets: list[Any]) -> bytes:
            return b"%PDF-made"

    library = types.ModuleType("weasyprint")
    library.__dict__.update(HTML=Page, CSS=lambda string: string)
    monkeypatch.setitem(sys.modules, "weasyprint", library)

    assert main(["print", "danger", "--out", "x.pdf"]) == 0
    assert (here / "x.pdf").read_bytes() == b"%PDF-made"
    assert main(["print", "danger", "--out", "x.html"]) == 0
    assert seen["string"] == (here / "x.html").read_text(encoding="utf-8")
    with pytest.raises(ValueError, match="nothing is loaded"):
        seen["fetch"]("file:///etc/hostname")


def test_the_vets_numbers_are_those_that_are_kept(here: Path) -> None:
    """What setup keeps stands on the danger signs."""
    assert main(["setup", "vet=01632 960111", "place=Nowhere Farm"]) == 0
    assert main(["print", "danger"]) == 0

    said = words(page(here / "danger-signs.html"))
    assert "01632 960111" in said
    assert "Nowhere Farm" in said
    assert len(of_class(page(here / "danger-signs.html"), "blank")) == 3


def test_everything_that_the_guidance_uses_is_on_the_cupboards_page(here: Path) -> None:
    """Each thing of the guide's own list is there by its name, with a box."""
    read = read_guide(knowledge_root(), {"cupboard"}).guide
    assert read is not None
    assert main(["print", "cupboard"]) == 0

    said = words(page(here / "cupboard.html"))
    assert len(read.cupboard) > 10
    assert all(item.title in said for item in read.cupboard.values())
    assert len(of_class(page(here / "cupboard.html"), "box")) >= len(read.cupboard)


def test_the_first_question_loads_nothing_of_it() -> None:
    """Pages to print, and their command, cost nothing on the way to the first question."""
    code = (
        "import sys, io\n"
        "sys.stdin = io.StringIO('q\\n')\n"
        "from triage.cli import main\n"
        "main(['walk', '--plain', '--unkept'])\n"
        "print('\\n'.join(sys.modules))"
    )
    ran = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True, env=os.environ
    )

    loaded = ran.stdout.split()
    assert "triage.cli" in loaded
    assert "triage.walk" in loaded
    assert not {"triage.paper.setting", "triage.paper.sheets", "triage.commands.pages"} & set(loaded)
