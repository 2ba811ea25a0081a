"""Sittings: kept as they were, in any words, and worth nothing once changed by hand."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import tempfile
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.conftest import small_guide, write_small
from triage.guide.known import NEVER
from triage.guide.model import Guide
from triage.review.queue import Due, evening, queue_of
from triage.review.signing import LONGEST_WORD, Signer, Signing, plain, write_sitting
from triage.review.sittings import ROLES, Said, Sitting, digest_of, file_of, read_sittings, text_of
from triage.review.standing import Review
from triage.review.statements import seals_of, statements_of

WORDS = st.text(max_size=60) | st.sampled_from(
    ["O'Neil: \"vet\"", "a\nb: c", "- {x} #", "\u202eabc\u202c", "שלום עולם", "👩\u200d⚕️", "no", "null", "~", "2026-11-29", "\x85\x7f\x1b[2J", "\ud800", "é\u0301", "%", "'", "\\", "a\u2028b", "\ufeffx"]
)  # fmt: skip
KEYS = st.sampled_from(["node/well", "number/chill", "term/two words", "term/it's: \"so\"", "term/né", "guide/front"])  # fmt: skip


@settings(deadline=None)
@given(by=WORDS, licence=WORDS, role=st.sampled_from(ROLES), notes=st.dictionaries(KEYS, WORDS, max_size=3), signed=st.sets(KEYS))  # fmt: skip
def test_read_again_it_is_the_same(
    by: str, licence: str, role: str, notes: dict[str, str], signed: set[str]
) -> None:
    """Whatever was typed as name, licence, note or objection: the sitting that is read is the one written."""
    name = plain(by)
    said = {key: Said("0a1b", plain(text, LONGEST_WORD)) for key, text in notes.items() if plain(text)}
    sitting = Sitting(name or "x", role, "2026-11-29", "2026.2", dict.fromkeys(sorted(signed), "0a1b"), said, said, plain(licence))  # fmt: skip
    with tempfile.TemporaryDirectory() as folder:
        file = file_of(sitting, Path(folder))
        assert write_sitting(sitting, file) == ""
        read, problems = read_sittings(Path(folder))

    assert problems == ()
    assert [replace(each, checked="") for each in read] == [sitting]


def sitting(by: str = "A. Name", role: str = "vet", on: str = "2026-11-29", **signed: str) -> Sitting:
    return Sitting(by, role, on, "2026.2", {f"node/{name}": seal for name, seal in signed.items()})


def put(folder: Path, *sittings: Sitting) -> tuple[Sitting, ...]:
    for each in sittings:
        assert write_sitting(each, file_of(each, folder)) == ""
    return read_sittings(folder)[0]


def test_a_sitting_changed_by_hand_counts_for_nothing(tmp_path: Path) -> None:
    """Any letter of what was signed, changed by hand, makes the sitting void, and that is told."""
    put(tmp_path, replace(sitting(well="0a"), licence="77", objections={"node/warmth": Said("0b", "No.")}))
    file = next((tmp_path / "reviews").iterdir())
    whole = file.read_text()
    begins = whole.index("by:")
    silent = []

    for at in range(begins, len(whole)):
        sign = whole[at]
        if not sign.isalnum():
            continue
        file.write_text(whole[:at] + ("1" if sign != "1" else "2") + whole[at + 1 :])
        read, problems = read_sittings(tmp_path)
        if read or not problems:
            silent.append(at)

    assert silent == []
    file.write_text(whole.replace("role: vet", "role: shepherd"))
    assert [each.rule for each in read_sittings(tmp_path)[1]] == ["sitting-changed"]


def test_a_broken_file_costs_no_other(tmp_path: Path) -> None:
    """Files that can't be read are told by their names, and the sittings beside them count."""
    put(tmp_path, sitting(well="0a"), sitting("B. Name", well="0a"))
    house = tmp_path / "reviews"
    (house / "1.yaml").write_bytes(b"\xff\xfe")
    (house / "2.yaml").write_text("by: [")
    (house / "3.yaml").write_text("by: X\nrole: king\non: 2026-01-01\nedition: x\nchecked: y\n")
    (house / "4.yaml").write_text("")
    (house / "5.yaml").mkdir()
    (house / "notes.txt").write_text("not a sitting")

    read, problems = read_sittings(tmp_path)

    assert {each.by for each in read} == {"A. Name", "B. Name"}
    assert {each.place.file for each in problems} == {f"reviews/{n}.yaml" for n in range(1, 6)}


def test_many_sittings_of_one_day_stay_in_order(tmp_path: Path) -> None:
    """The second, and the twelfth, sitting of one day and person come after the first."""
    read = put(tmp_path, *(sitting(well=f"{number:02}") for number in range(1, 13)))

    assert [each.signed["node/well"] for each in read] == [f"{number:02}" for number in range(1, 13)]
    assert len(list((tmp_path / "reviews").iterdir())) == 12


def test_an_objection_stays_until_its_author_signs(tmp_path: Path) -> None:
    """Another vet's signature leaves an objection; the author's ends it, on the same day too; a new one stands."""
    seals = {"node/well": "0a"}
    objects = replace(sitting(), objections={"node/well": Said("0a", "Too mild.")})

    def objection() -> str:
        return Review(seals, read_sittings(tmp_path)[0]).of("node/well").objection

    put(tmp_path, objects)
    assert "Too mild." in objection()
    put(tmp_path, sitting("B. Name", well="0a"))
    assert "Too mild." in objection()
    put(tmp_path, sitting(well="0b"))  # as it was, and not as it is
    assert "Too mild." in objection()
    put(tmp_path, sitting(well="0a"))
    assert objection() == ""
    put(tmp_path, objects)
    assert "Too mild." in objection()


def test_a_settled_objection_does_not_come_back_with_a_later_change() -> None:
    """Once its author signed the mended wording, a further change is a change; the wording objected to is not."""
    first = replace(sitting(), objections={"node/well": Said("0a", "Too mild.")})
    then = (first, sitting(well="0b"))
    assert Review({"node/well": "0b"}, then).of("node/well").objection == ""
    later = Review({"node/well": "0c"}, then)
    assert (later.of("node/well").how, later.of("node/well").objection) == ("changed", "")
    assert "Too mild." in Review({"node/well": "0a"}, then).of("node/well").objection


def test_the_words_of_a_standing() -> None:
    """Each way to stand has its sentence, and only a vet's signature counts as a review by a vet."""
    seals = {"node/a": "1", "node/b": "2", "node/c": "3", "source/x": "9"}
    nobody = Review(seals, ())
    assert (nobody.words, nobody.of("node/a").words) == (NEVER, NEVER)

    helper = Review(seals, (sitting("H. Name", "shepherd", a="1", b="2", c="3"),))
    assert helper.words == NEVER
    assert helper.of("node/a").how == "never"
    assert helper.of("node/a").words == "Read by H. Name, shepherd, on 2026-11-29; never reviewed by a vet."

    vet = Review(seals, (sitting(a="1", b="2", c="3"),))
    assert vet.words == vet.of("node/a").words == "Reviewed by A. Name, vet, on 2026-11-29."
    assert Review(seals | {"node/a": "x"}, vet.sittings).words == "Reviewed by A. Name, vet, on 2026-11-29; 1 statement changed since."  # fmt: skip
    both = Review(seals | {"node/a": "x", "node/b": "x", "node/d": "4"}, vet.sittings)
    assert both.words == "Reviewed in part by A. Name, vet, on 2026-11-29; 2 statements changed since; 1 statement never reviewed by a vet."  # fmt: skip
    objects = sitting("B. Name", c="3")
    objects = replace(objects, objections={"node/b": Said("2", "Too mild.")})
    assert Review(seals, (*vet.sittings, objects)).words == "Reviewed by A. Name, vet, on 2026-11-29; 1 statement objected to."  # fmt: skip
    assert Review(seals, (replace(objects, signed={}),)).words == "Never reviewed by a vet; 1 statement objected to."  # fmt: skip
    assert both.of("node/a").how == "changed"
    assert both.of("node/a").words == "Changed since A. Name, vet, reviewed it on 2026-11-29."
    assert both.of("node/d").words == NEVER


def signing(guide: Guide, folder: Path, role: str = "vet") -> Signing:
    seals = seals_of(statements_of(guide))
    queue = tuple(Due(key, "never reviewed", 0, 1.0) for key in ("node/well", "number/chill", "node/feel"))
    return Signing(Review(seals, ()), queue, Signer("A. Name", role), folder, "2026-11-29", "test")


def on_disk(folder: Path) -> list[set[str]]:
    read, problems = read_sittings(folder)
    assert problems == ()
    return [set(each.signed) for each in read]


def test_each_decision_is_on_the_disk_at_once(small: Guide, tmp_path: Path) -> None:
    """After each decision the sitting on the disk is just what was decided; going back takes it back there too."""
    desk = signing(small, tmp_path)
    desk.decide("signed")
    assert on_disk(tmp_path) == [{"node/well"}]
    desk.decide("noted", 'Good: "really"\nso.')
    assert on_disk(tmp_path) == [{"node/well", "number/chill"}]
    assert desk.back()
    assert on_disk(tmp_path) == [{"node/well"}]
    assert desk.back()
    assert on_disk(tmp_path) == []
    assert list((tmp_path / "reviews").iterdir()) == []
    assert not desk.back()
    desk.decide("later")
    assert on_disk(tmp_path) == []
    desk.decide("objected", "Wrong.")
    assert on_disk(tmp_path) == [set()]
    assert read_sittings(tmp_path)[0][0].objections["number/chill"].says == "Wrong."


def test_a_second_sitting_leaves_the_first_alone(small: Guide, tmp_path: Path) -> None:
    """Two sittings of one person on one day are two files, and going back in the second spares the first."""
    signing(small, tmp_path).decide("signed")
    first = {file: file.read_bytes() for file in (tmp_path / "reviews").iterdir()}
    second = signing(small, tmp_path)
    second.decide("signed")
    second.back()

    assert {file: file.read_bytes() for file in (tmp_path / "reviews").iterdir()} == first


def test_a_full_disk_is_told_and_tried_again(
    small: Guide, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What could not be written is kept and goes with the next decision; the file before it stays whole."""
    desk = signing(small, tmp_path)
    desk.decide("signed")

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", full)
        desk.decide("signed")
        assert "No space left" in desk.why_not
    assert on_disk(tmp_path) == [{"node/well"}]
    desk.decide("signed")
    assert desk.why_not == ""
    assert on_disk(tmp_path) == [{"node/well", "number/chill", "node/feel"}]


def test_a_killed_sitting_loses_the_one_in_hand_alone(tmp_path: Path) -> None:
    """Killed while a statement is read, everything decided before it is signed."""
    root = write_small(tmp_path / "guide")
    arguments = ["sign", "--plain", "--by", "A. Name", "--as", "vet", "--licence", "", "--guide", str(root)]
    with subprocess.Popen(
        [sys.executable, "-u", "-m", "triage", *arguments], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env={**os.environ, "LC_ALL": "C.UTF-8"}
    ) as ran:  # fmt: skip
        assert ran.stdin
        assert ran.stdout
        for number in (1, 2, 3):
            _read_to(ran, f"{number} of ")
            ran.stdin.write("1\n")
            ran.stdin.flush()
        _read_to(ran, "4 of ")
        ran.send_signal(signal.SIGKILL)

    assert [len(each) for each in on_disk(root)] == [3]


def _read_to(ran: subprocess.Popen[str], said: str) -> None:
    assert ran.stdout
    for line in ran.stdout:
        if said in line:
            return
    raise AssertionError(said)


def test_the_queue(small: Guide) -> None:
    """It holds what no vet signed as it is, the gravest first; what changed comes before what is new."""
    seals = seals_of(statements_of(small))
    every = Review(seals, ())
    assert {each.key for each in queue_of(small, every)} == set(every.counted)
    assert queue_of(small, every)[0].risk == 0
    signed = Sitting("A. Name", "vet", "2026-11-29", "test", dict(seals))
    assert queue_of(small, Review(seals, (signed,))) == ()
    as_helper = replace(signed, role="nurse")
    assert len(queue_of(small, Review(seals, (as_helper,)))) == len(every.counted)
    part = replace(signed, signed={"node/well": "old", "node/feel": seals["node/feel"]})
    queue = queue_of(small, Review(seals, (part,)), ["glossary"])
    assert queue[0].key == "node/well"
    assert "node/feel" not in {each.key for each in queue}
    assert queue_of(small, Review(seals, (part,)), ["term/limp"])[0].key == "term/limp"
    fresh = queue_of(small, Review(seals, (part,)), fresh=["term/limp", "node/feel"])
    assert [(each.key, each.why) for each in fresh[:2]] == [
        ("node/well", "changed since it was reviewed"),
        ("term/limp", "changed in this edition"),
    ]
    assert len(evening(queue, 0)) == 1
    assert sum(each.minutes for each in evening(queue, 2)) <= 2


def test_a_text_is_the_whole_file() -> None:
    """What is read is bound by the last line to all of it."""
    one, other = sitting(well="0a"), sitting(well="0b")

    assert digest_of(one) != digest_of(other)
    assert text_of(one).endswith(f"checked: {digest_of(one)}\n")


def test_signed_by_paper(tmp_path: Path) -> None:
    """A topic is signed by the code that its print bears, and by no other; another guide has another code."""
    from triage.review.codes import code_of

    guide, other = small_guide(tmp_path / "a"), small_guide(tmp_path / "b", ("numbers.yaml", "value: 37", "value: 36.9"))  # fmt: skip

    assert code_of(guide, "first") == code_of(small_guide(tmp_path / "c"), "first")
    assert code_of(guide, "first") != code_of(other, "first")
