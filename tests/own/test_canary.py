"""The check at start: what is not known to have passed is checked, and what fails is closed or set aside."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

import triage.check
from tests.own.made import base_folder, own_folder
from triage.guide.files import digest_of
from triage.guide.model import Ask, End, Guide, Node
from triage.guide.read import read_guide
from triage.page.page import page_of
from triage.review.proved import FAILED, seals_in, write_proved
from triage.review.statements import seals_of, statements_of
from triage.session import Session
from triage.shipped import read_shipped
from triage.walk import Walk


class Shipped:
    """A shipped guide in a folder of its own that passed its check, with the checks counted that are made."""

    def __init__(self, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        self.root = base_folder(folder / "knowledge")
        self.cache = Path(os.environ["XDG_CACHE_HOME"]) / "bummer-triage"
        self.checks = 0
        self.sealed()
        real: Callable[..., object] = triage.check.prove

        def counted(*args: object, **more: object) -> object:
            self.checks += 1
            return real(*args, **more)

        monkeypatch.setattr("triage.check.prove", counted)
        monkeypatch.setattr("triage.shipped.knowledge_root", lambda: self.root)

    def sealed(self) -> None:
        """Write that the guide as it is has passed."""
        guide = read_guide(self.root).guide
        assert guide is not None
        write_proved(self.root, digest_of(self.root) or "", seals_of(statements_of(guide)))

    def change(self, file: str, old: str, new: str) -> None:
        before = (self.root / file).read_text(encoding="utf-8")
        assert old in before
        (self.root / file).write_text(before.replace(old, new, 1), encoding="utf-8")

    def start(self) -> Guide:
        """Return the guide as the next start has it."""
        read = read_shipped()
        assert read.guide is not None, (read.unreadable, read.problems)
        assert read.guide.known is not None
        return read.guide

    def notice(self) -> str:
        known = self.start().known
        assert known is not None
        return known.notice


@pytest.fixture
def shipped(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shipped:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.delenv("TRIAGE_OWN", raising=False)
    return Shipped(tmp_path, monkeypatch)


def shown(guide: Guide) -> dict[str, Node]:
    """Return the pages of a guide without what only the check goes by, which a walk need not read."""
    return {
        name: node if isinstance(node, Ask) else replace(node, for_={}, must_say=())
        for name, node in guide.nodes.items()
    }


def is_closed(guide: Guide, topic: str) -> bool:
    """Whether every page of a topic says to phone, and none of it gives anything."""
    nodes = guide.by_topic[topic]
    shut = [
        isinstance(node, End)
        and node.urgency == guide.top
        and node.do[0].do.startswith("Phone the vet")
        and all("feed" not in tag for step in node.do for tag in step.tag)
        for node in nodes
    ]
    assert all(shut) or not any(shut), [node.name for node in nodes]
    return all(shut)


def test_what_ships_is_not_checked_again(shipped: Shipped) -> None:
    """An untouched guide is opened without any check, and twice the same."""
    first, second = shipped.start(), shipped.start()

    assert shipped.checks == 0
    assert first == second
    assert first.known is not None
    assert first.known.notice == ""
    assert seals_in(first.known.seals_in or Path()) == seals_of(statements_of(read_guide(shipped.root).guide or first))  # fmt: skip


def test_a_byte_of_a_comment_is_checked_once(shipped: Shipped) -> None:
    """A guide that differs in one byte is checked, passes, and is known at the next start."""
    shipped.change("numbers.yaml", "chill:", "# a note\nchill:")

    first = shipped.start()
    assert shipped.checks == 1
    second = shipped.start()

    assert shipped.checks == 1
    assert shown(first) == shown(second)
    assert second.known
    assert second.known.notice == ""


@pytest.mark.parametrize("kept", [True, False])
def test_an_unsafe_change_closes_its_topic(shipped: Shipped, kept: bool) -> None:
    """An end made milder than a walk to it allows closes its topic, in this and the next start; others stand."""
    before = shipped.start()
    shipped.change("topics/second.yaml", "must_say: [not pull]", "must_say: [never pull]")
    if not kept:
        shipped.cache.parent.mkdir(exist_ok=True)
        shipped.cache.rename(shipped.cache.with_name("gone"))
        shipped.cache.write_text("in the way\n")

    for times in (1, 2):
        guide = shipped.start()
        assert shipped.checks == (1 if kept else times)
        assert is_closed(guide, "second")
        assert not is_closed(guide, "first")
        for node in before.by_topic["first"]:
            assert guide.nodes[node.name] == node
        assert guide.known
        assert "Closed" in guide.known.notice
        assert "Second" in guide.known.notice


def test_a_rule_broken_closes_where_it_is_broken(shipped: Shipped) -> None:
    """A page that feeds a lamb which a rule keeps from food is never shown."""
    shipped.change("topics/first.yaml", "{do: Warm it., tag: warm}", "{do: Feed it now., tag: feed-by-mouth}")

    guide = shipped.start()

    assert is_closed(guide, "first")
    assert "closed" in guide.known.notice if guide.known else False


def test_in_the_way_in_all_is_closed(shipped: Shipped) -> None:
    """Where the topic of the way in fails, each page of each topic says to phone."""
    shipped.change("topics/first.yaml", "call_vet: Now.", "call_vet: Now.\n    must_say: [gone]")

    guide = shipped.start()

    assert is_closed(guide, "first")
    assert is_closed(guide, "second")
    assert "phone your vet now" in (guide.known.notice if guide.known else "")


def test_a_fault_that_no_topic_shows_closes_all(shipped: Shipped) -> None:
    """A grave fault of what no topic shows can't be closed by itself, and never counts as passed."""
    shipped.change("laws.yaml", "certainty: high", "certainty: low")
    shipped.change("sources.yaml", "grade: A", "grade: D")

    guide = shipped.start()

    assert is_closed(guide, "first")
    assert shipped.notice()
    assert shipped.checks == 1


def test_a_closed_page_can_be_walked_to(shipped: Shipped) -> None:
    """A closed topic ends the walk at once with a page that can be shown, and the notice stands on it."""
    shipped.change("topics/second.yaml", "must_say: [not pull]", "must_say: [never pull]")
    walk = Walk(shipped.start()).answer("none").answer(39.5)

    page = page_of(walk, "metric")
    alarm = Session(walk, "metric").page().alarm

    assert walk.finished
    assert any("Phone the vet" in block.text for block in page.blocks)
    assert "Closed" in alarm


SPOILT = {
    "broken YAML": {"numbers.yaml": "chill: {value: [\n"},
    "a name that is not there": {"topics/second.yaml": "nodes: {leg: {ask: none-such}}\n"},
    "not UTF-8": {"numbers.yaml": "\udcff\n"},
    "a danger sign lost": {"guide.yaml": "danger_signs: {danger: [none]}\n"},
    "a milder way": {
        "topics/second.yaml": "nodes: {leg: {branches: [{is: [bad, stiff, fine], go: well}, {unsure: true, go: leg-bad}]}}\n"
    },
    "a law that allows more": {"laws.yaml": "here: {says: [Rings at any age.]}\n"},
    "a caution of the cupboard": {"cupboard.yaml": "towel: {cautions: [Any will do.]}\n"},
    "a stray file": {"feeding/more.yaml": "a: b\n"},
}


@pytest.mark.parametrize("what", SPOILT)
def test_a_spoilt_own_folder_is_set_aside(
    shipped: Shipped, what: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """An own folder with a mistake is set aside, and both faces say so on every page; the shipped guide stands."""
    plain = shipped.start()
    own = tmp_path / "own"
    for name, text in SPOILT[what].items():
        (own / name).parent.mkdir(parents=True, exist_ok=True)
        (own / name).write_bytes(text.encode("utf-8", errors="surrogateescape"))
    monkeypatch.setenv("TRIAGE_OWN", str(own))

    for _ in (1, 2):
        guide = shipped.start()
        assert shown(guide) == shown(plain)
        assert guide.front == plain.front
        assert guide.known
        assert "NOT in use" in guide.known.notice
        assert f"own/{next(iter(SPOILT[what]))}" in guide.known.notice

    session = Session(Walk(guide), "metric")
    for typed in ("1", "39.5"):
        assert "NOT in use" in session.page().alarm
        session.take(typed)
    assert "NOT in use" in session.page().alarm


def test_an_own_folder_that_is_not_there(
    shipped: Shipped, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """A folder that was named and can't be read is told, and the shipped guide is shown."""
    monkeypatch.setenv("TRIAGE_OWN", str(tmp_path / "none"))
    assert "NOT in use" in shipped.notice()

    (tmp_path / "file").write_text("a: b\n")
    monkeypatch.setenv("TRIAGE_OWN", str(tmp_path / "file"))
    assert "NOT in use" in shipped.notice()
    assert shipped.checks == 0


def test_a_sound_own_folder(shipped: Shipped, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """It is checked once and then in use; without it the guide is the shipped one again, unchecked."""
    plain = shipped.start()
    own = own_folder(tmp_path / "own", {"topics/second.yaml": "nodes: {leg-bad: {cautions+: [Mind it.]}}\n"})
    monkeypatch.setenv("TRIAGE_OWN", str(own))

    for _ in (1, 2):
        node = shipped.start().nodes["leg-bad"]
        assert isinstance(node, End)
        assert node.cautions == ("Do not pull the leg.", "Mind it.")
        assert shipped.checks == 1
    assert shipped.notice() == ""

    monkeypatch.setenv("TRIAGE_OWN", "")
    assert shipped.start() == plain
    assert shipped.checks == 1


def test_words_of_another_language_can_be_left_out(
    shipped: Shipped, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """With words of another language the guide can still be had in the words that were checked."""
    own = own_folder(tmp_path / "own", {"words.yaml": "language: xx\nwords: [{shipped: Limp, here: Slapp}]\n"})  # fmt: skip
    monkeypatch.setenv("TRIAGE_OWN", str(own))

    for _ in (1, 2):
        assert shipped.start().findings["danger"].choices["limp"] == "Slapp"
        checked = read_shipped(other_words=False).guide
        assert checked is not None
        assert checked.findings["danger"].choices["limp"] == "Limp"
    assert shipped.notice() == ""


def test_a_damaged_note_that_it_passed(shipped: Shipped) -> None:
    """Whatever is damaged of the note that a guide passed, it is checked again, or its seals are not taken."""
    proved = shipped.root / ".known" / "proved"
    whole = proved.read_bytes()
    plain = shipped.start()

    for spoilt in (b"", b"\xff\xfe", whole[1:], b"0" + whole[1:], b"\n".join(whole.split(b"\n")[1:])):
        proved.write_bytes(spoilt)
        before = shipped.checks
        assert shown(shipped.start()) == shown(plain)
        assert shipped.checks == before + (1 if spoilt == b"" else 0), "it was kept in the cache"
    for cut in (70, len(whole) // 2, len(whole) - 70, len(whole) - 2):
        proved.write_bytes(whole[:cut])
        assert seals_in(proved) == {}
    for at in range(66, len(whole) - 1, 37):
        proved.write_bytes(whole[:at] + bytes([whole[at] ^ 1]) + whole[at + 1 :])
        assert seals_in(proved) == {}


def test_a_damaged_note_that_it_failed(shipped: Shipped) -> None:
    """A damaged note in the cache closes nothing less: it is checked again, and never counts as passed."""
    shipped.change("topics/second.yaml", "must_say: [not pull]", "must_say: [never pull]")
    assert is_closed(shipped.start(), "second")
    note = next(shipped.cache.glob(f"{FAILED}*"))
    whole = note.read_bytes()

    for spoilt in (
        b"",
        whole[: len(whole) // 2],
        b"\xff",
        b"A mistake.\n",
        whole.replace(b"second", b"secund"),
    ):
        note.write_bytes(spoilt)
        before = shipped.checks
        assert is_closed(shipped.start(), "second")
        assert shipped.checks == before + 1
    assert note.read_bytes() == whole
    assert is_closed(shipped.start(), "second")


def test_damaged_kept_guides_are_not_taken(shipped: Shipped) -> None:
    """Each file in the cache can be cut short, spoilt or emptied: the next start has the same guide."""
    plain = shipped.start()
    shipped.change("numbers.yaml", "chill:", "# a note\nchill:")
    shipped.start()
    shipped.start()
    files = [file for file in shipped.cache.iterdir() if file.is_file()]
    assert len(files) >= 3

    for file in files:
        whole = file.read_bytes()
        for spoilt in (b"", whole[:40], whole[:-7], whole[:50] + b"x" + whole[51:]):
            file.write_bytes(spoilt)
            assert shown(shipped.start()) == shown(plain)
            assert shipped.notice() == ""
        file.write_bytes(whole)


def test_a_note_that_others_may_write_is_not_taken(shipped: Shipped) -> None:
    """A note in the cache that somebody else could have written says nothing."""
    shipped.change("numbers.yaml", "chill:", "# a note\nchill:")
    shipped.start()
    note = next(shipped.cache.glob("passed-*"))
    note.chmod(0o666)

    shipped.start()

    assert shipped.checks == 2


def test_a_cache_that_cannot_be_written(shipped: Shipped, tmp_path: Path) -> None:
    """Without a cache each start makes the check again, and all works."""
    (tmp_path / "cache").write_text("in the way\n")
    shipped.change("numbers.yaml", "chill:", "# a note\nchill:")

    for times in (1, 2):
        assert shipped.notice() == ""
        assert shipped.checks == times
