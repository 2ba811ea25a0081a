"""Other words for texts of a guide: text for text, with the same figures."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.conftest import write_small
from triage.guide.model import Guide
from triage.guide.rewording import HELD, Pair, Words, ill_fitting, read_words, reworded, texts_in
from triage.review.statements import statements_of, values_of


def test_without_words_it_is_the_guide(guide: Guide) -> None:
    """No words, and words that are the same, leave a guide as it is."""
    same = Words(tuple(Pair(text, text) for text in texts_in(guide)))

    assert reworded(guide, None) is guide
    assert reworded(guide, Words(())) == guide
    assert reworded(guide, same) == guide


def test_every_text_can_be_told_otherwise_and_nothing_else(guide: Guide) -> None:
    """With a mark on each text, each is marked once; no name, number, branch, tag or rule is another one."""
    marked = reworded(guide, Words(tuple(Pair(text, f"~{text}") for text in texts_in(guide))))

    assert set(texts_in(marked)) == {f"~{text}" for text in texts_in(guide)}
    back = reworded(marked, Words(tuple(Pair(f"~{text}", text) for text in texts_in(guide))))
    assert back == guide
    for name in HELD:
        assert list(getattr(marked, name)) == list(getattr(guide, name))
    assert marked.values() == guide.values()
    assert marked.sources == guide.sources
    for name, node in guide.nodes.items():
        other = marked.nodes[name]
        for each in (
            "finding",
            "branches",
            "urgency",
            "then",
            "else_",
            "wait",
            "look_again",
            "for_",
            "must_say",
        ):
            assert getattr(other, each, None) == getattr(node, each, None)
    for name, rule in guide.rules.items():
        assert replace(marked.rules[name], because=rule.because) == rule


def test_other_words_void_what_was_signed(guide: Guide) -> None:
    """A statement in other words is another statement; those without the text are as they were."""
    text = next(node.title for node in guide.nodes.values() if hasattr(node, "title"))
    before, after = statements_of(guide), statements_of(reworded(guide, Words((Pair(text, "Otherwise"),))))
    values = values_of(guide)

    changed = {key for key in before if before[key].own != after[key].own}

    assert changed
    assert all(text in repr(values[key]) for key in changed)


@pytest.mark.parametrize(
    ("words", "kinds"),
    [
        ("words: [{shipped: Limp, here: Floppy}]", []),
        ("words: [{shipped: Limpy, here: Floppy}]", ["no-such-text"]),
        ("words: [{shipped: Limp, here: A}, {shipped: Limp, here: B}]", ["duplicate-key"]),
        ("words: [{shipped: Limp, here: 'Limp {chill}'}]", ["other-figures"]),
        ("words: [{shipped: 'At {chill} or {chill}.', here: 'At {chill}.'}]", ["other-figures"]),
        ("words: [{shipped: 'At {chill} or {chill}.', here: '{chill} oder {chill}.'}]", []),
    ],
)
def test_words_that_do_not_fit(tmp_path: Path, words: str, kinds: list[str]) -> None:
    """No such text, one told twice, and one with other figures are told at their places."""
    root = write_small(tmp_path / "root", ("topics/first.yaml", "cautions: [No milk.]", "cautions: ['At {chill} or {chill}.']"))  # fmt: skip
    from triage.guide.read import read_guide

    own = tmp_path / "own"
    own.mkdir()
    (own / "words.yaml").write_text(f"{words}\n", encoding="utf-8")
    guide = read_guide(root).guide
    found, problems = read_words(own)

    assert guide
    assert found
    assert problems == ()
    told = list(ill_fitting(guide, found))
    assert [each.rule for each in told] == kinds
    assert all(each.place.file == "own/words.yaml" and each.place.column > 1 for each in told)


@pytest.mark.parametrize("text", ["words: x", "words: []", "word: []", "words: [{shipped: a}]", "words: ["])
def test_words_that_cannot_be_read(tmp_path: Path, text: str) -> None:
    """A file of words with a mistake is told with its place, and changes nothing."""
    (tmp_path / "words.yaml").write_text(text)

    _, problems = read_words(tmp_path)

    assert problems
    assert all(each.place.file == "own/words.yaml" for each in problems)
    assert read_words(None) == (None, ())
