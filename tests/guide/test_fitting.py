"""Own files laid over those of a guide: entry by entry, and nothing taken out."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from tests.conftest import write_small
from triage.guide.files import digest_of, own_files
from triage.guide.fitting import fitted
from triage.guide.model import Act, End
from triage.guide.read import read_guide
from triage.guide.shapes import Reading
from triage.guide.text import Fields, Items, Text, Written
from triage.problems import Place

UNDER, OVER = Place("a.yaml"), Place("own/a.yaml")


def written(tree: object, place: Place) -> Written:
    """Return a tree of dicts, lists and texts as it would be read."""
    if isinstance(tree, dict):
        return Fields({key: written(each, place) for key, each in tree.items()}, dict.fromkeys(tree, place), place)  # fmt: skip
    if isinstance(tree, list):
        return Items(tuple(written(each, place) for each in tree), place)
    return Text(str(tree), place)


def plain(value: Written) -> object:
    if isinstance(value, Fields):
        return {key: plain(each) for key, each in value.fields.items()}
    return [plain(each) for each in value.items] if isinstance(value, Items) else value.text


def laid(under: object, over: object) -> object:
    layers = [written(each, place) for each, place in ((under, UNDER), (over, OVER))]
    whole = fitted([each for each in layers if isinstance(each, Fields)], Reading())
    assert whole is not None
    return plain(whole)


NAMES = st.sampled_from(["a", "b", "c"])
TREES = st.recursive(st.sampled_from(["x", "y"]), lambda inner: st.dictionaries(NAMES, inner, max_size=3) | st.lists(inner, max_size=2), max_leaves=8)  # fmt: skip
MAPS = st.dictionaries(NAMES, TREES, max_size=3)


def naive(under: object, over: object) -> object:
    """Say in the plainest way what fitting is, for maps without a plus."""
    if not (isinstance(under, dict) and isinstance(over, dict)):
        return over
    return {key: naive(under[key], over[key]) if key in under and key in over else over.get(key, under.get(key)) for key in [*under, *(key for key in over if key not in under)]}  # fmt: skip


@given(MAPS, MAPS)
def test_entry_by_entry(under: dict[str, object], over: dict[str, object]) -> None:
    """It is what the plainest telling of it says; nothing over a guide is the guide; no name goes missing."""
    assert laid(under, over) == naive(under, over)
    assert laid(under, {}) == under
    assert laid(under, over).keys() == under.keys() | over.keys()  # type: ignore[attr-defined]


@given(st.lists(st.sampled_from("xyz")), st.lists(st.sampled_from("xyz")))
def test_a_plus_adds_to_a_list(under: list[str], more: list[str]) -> None:
    """What was there stays, in its order, and what is added comes after it."""
    assert laid({"a": under, "b": "x"}, {"a+": more}) == {"a": under + more, "b": "x"}
    assert laid({}, {"a+": more}) == {"a": more}


def test_a_plus_takes_a_list_alone() -> None:
    """After a plus stands a list; anything else is told at its place, and what was there stays."""
    for more in ("x", {"b": "x"}):
        reading = Reading()
        layers = [written({"a": ["y"]}, UNDER), written({"a+": more}, OVER)]
        whole = fitted([each for each in layers if isinstance(each, Fields)], reading)
        assert whole is not None
        assert plain(whole) == {"a": ["y"]}
        assert [each.place for each in reading.problems] == [OVER]


def test_a_layer_that_cannot_be_read_is_not_left_out() -> None:
    """Where one layer is broken there is no whole: the guide is refused, and not half fitted."""
    under = written({"a": "x"}, UNDER)
    assert isinstance(under, Fields)
    assert fitted([under, None], Reading()) is None
    assert fitted([None, under], Reading()) is None


def test_an_own_folder_in_a_guide(tmp_path: Path) -> None:
    """A caution is added, a value replaced, all else stays; the mistake of an own file has its place there."""
    root, own = write_small(tmp_path / "root"), tmp_path / "own"
    (own / "topics").mkdir(parents=True)
    (own / "topics" / "first.yaml").write_text("nodes:\n  well: {cautions+: [Not cold.]}\n")
    (own / "numbers.yaml").write_text("pause: {value: 10}\n")

    base, whole = read_guide(root).guide, read_guide(root, own=own).guide

    assert base
    assert whole
    well = whole.nodes["well"]
    assert isinstance(well, End)
    assert well.cautions == ("Not too much.", "Not cold.")
    assert whole.numbers["pause"].value == 10
    assert {name for name in base.nodes if base.nodes[name] != whole.nodes[name]} == {"well"}
    assert isinstance(whole.nodes["warm-it"], Act)
    (own / "numbers.yaml").write_text("pause: {value: soon}\n")
    assert [str(each.place) for each in read_guide(root, own=own).problems] == ["own/numbers.yaml:1:16"]


def test_a_digest_of_the_files(tmp_path: Path) -> None:
    """Each byte of guidance counts; what is beside it, and how lines end, does not; own files count apart."""
    root, own = write_small(tmp_path / "root"), tmp_path / "own"
    own.mkdir()
    plain_digest = digest_of(root)
    assert digest_of(root, own) == plain_digest
    for name in (".known/proved", "reviews/x.yaml", "changes.yaml", "README.md"):
        (root / name).parent.mkdir(exist_ok=True)
        (root / name).write_text("x")
        assert digest_of(root) == plain_digest, name
    (root / "reviews" / "x.yaml").unlink()
    text = (root / "numbers.yaml").read_text()
    (root / "numbers.yaml").write_bytes(text.replace("\n", "\r\n").encode())
    assert digest_of(root) == plain_digest
    (root / "numbers.yaml").write_text(f"{text} ")
    changed = digest_of(root)
    (root / "numbers.yaml").rename(root / "numbers2.yaml")
    (own / "numbers.yaml").write_text("")
    assert len({plain_digest, changed, digest_of(root), digest_of(root, own)}) == 4
    assert digest_of(root, tmp_path / "none") is None
    assert digest_of(tmp_path / "none") is None
    assert own_files(None) == []
