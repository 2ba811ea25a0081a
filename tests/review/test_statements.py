"""A signature is bound to meaning and wording: any change voids it, and nothing else does."""

from __future__ import annotations

import dataclasses
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from itertools import zip_longest
from pathlib import Path
from typing import Any

import pytest

from tests.conftest import read_small, small_guide
from triage import amounts
from triage.facts import Facts
from triage.guide.find import knowledge_root
from triage.guide.model import Act, Ask, End, Front, Guide, Read
from triage.guide.model_practice import Typed
from triage.guide.read import read_guide
from triage.problems import Place
from triage.review.sittings import Sitting
from triage.review.standing import Review
from triage.review.statements import (
    CUT_ANEW,
    Statement,
    _digest,
    _plain,
    seals_of,
    statements_of,
    used_by,
    values_of,
)


@pytest.fixture(scope="module")
def statements(guide: Guide) -> dict[str, Statement]:
    return statements_of(guide)


@pytest.fixture(scope="module")
def seals(statements: dict[str, Statement]) -> dict[str, str]:
    return seals_of(statements)


def signed(seals: Mapping[str, str]) -> Sitting:
    return Sitting("A. Name", "vet", "2026-11-29", "test", dict(seals))


# --- one byte of each node in its file ---


def spots(lines: list[str], guide: Guide, file: str) -> dict[str, list[int]]:
    """Return the lines of each node of a topic's file."""
    begins = sorted((node.place.line, node.name) for node in guide.nodes.values() if node.place.file == file)
    ends = [line for line, _ in begins[1:]] + [len(lines) + 1]
    return {name: list(range(line, end - 1)) for (line, name), end in zip(begins, ends, strict=True)}


def with_one_byte(lines: list[str], inside: list[int], at: int) -> list[str]:
    """Return a file's lines with one letter changed in a node: the `at`-th of those that a comment has not."""
    letters = [
        (line, column)
        for line in inside
        for column, sign in enumerate(lines[line])
        if sign.isalnum() and not lines[line].lstrip().startswith("#")
    ]
    line, column = letters[at % len(letters)]
    sign = lines[line][column]
    other = "b" if sign == "a" else "a" if sign.isalpha() else "1" if sign == "0" else "0"
    changed = lines.copy()
    changed[line] = f"{lines[line][:column]}{other}{lines[line][column + 1 :]}"
    return changed


@dataclasses.dataclass
class Bytes:
    """A copy of the shipped guide in which one byte of a node of each topic is changed at a time."""

    guide: Guide
    folder: Path
    sitting: Sitting
    texts: dict[str, list[str]]

    def held(self, batch: Mapping[str, list[int]]) -> set[str]:
        """Change a letter of each of these nodes, given by their lines; return those of which it is noticed."""
        changed: dict[str, list[str]] = {}
        for name, inside in batch.items():
            node = self.guide.nodes[name]
            said = [line for line in inside if "title:" in self.texts[node.place.file][line]]
            changed[node.place.file] = with_one_byte(
                self.texts[node.place.file], said or inside, len(name) * 7
            )
        for file, lines in changed.items():
            (self.folder / file).write_text("\n".join(lines), encoding="utf-8")
        read = read_guide(self.folder)
        for file in changed:
            (self.folder / file).write_text("\n".join(self.texts[file]), encoding="utf-8")
        return self._noticed(read, batch)

    def _noticed(self, read: Read, batch: Mapping[str, list[int]]) -> set[str]:
        if read.guide is None:  # which of them is refused is told by the places
            wrong = {(each.place.file, each.place.line - 1) for each in read.problems}
            return {
                name
                for name, inside in batch.items()
                if any((self.guide.nodes[name].place.file, line) in wrong for line in inside)
            }
        review = Review(seals_of(statements_of(read.guide)), (self.sitting,))
        gone = [name for name in batch if f"node/{name}" not in review.seals]
        return {
            *gone,
            *(name for name in batch if name not in gone and review.of(f"node/{name}").how != "signed"),
        }


def test_one_byte_of_any_node_voids_it(guide: Guide, seals: Mapping[str, str], tmp_path: Path) -> None:
    """One letter changed in any node's lines: the guide is refused for it, or the node is signed no longer."""
    root = knowledge_root()
    assert isinstance(root, Path)
    shutil.copytree(root, tmp_path / "knowledge")
    files = {node.place.file for node in guide.nodes.values()}
    texts = {file: (root / file).read_text(encoding="utf-8").split("\n") for file in files}
    bytes_ = Bytes(guide, tmp_path / "knowledge", signed(seals), texts)
    lines = {name: inside for file in files for name, inside in spots(texts[file], guide, file).items()}
    assert lines.keys() == guide.nodes.keys()
    # Questions hold names alone, of which most are refused at once; pages hold texts.
    waiting = {
        kind: {name for name in lines if isinstance(guide.nodes[name], kind)} for kind in (Ask, Act | End)
    }
    for left in waiting.values():
        before = len(left) + 1
        while len(left) < before:  # some mistakes are told only where others are mended
            before = len(left)
            by_topic = [
                [name for name in sorted(left) if guide.nodes[name].topic == topic] for topic in guide.topics
            ]
            for batch in zip_longest(*by_topic):
                left.difference_update(bytes_.held({name: lines[name] for name in batch if name}))
        left -= {name for name in left if bytes_.held({name: lines[name]})}

    assert waiting == {Ask: set(), Act | End: set()}


# --- one letter in each text, one step in each value, of every statement ---


def leaves(value: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[tuple[Any, ...], Any]]:
    """Yield every leaf of a part of a guide with the way to it, places left out."""
    if isinstance(value, Place):
        return
    if is_dataclass(value):
        left_out = CUT_ANEW if isinstance(value, Front) else ()
        for each in fields(value):
            if each.name not in left_out:
                yield from leaves(getattr(value, each.name), (*way, each.name))
    elif isinstance(value, Mapping):
        for key, each in value.items():
            yield from leaves(each, (*way, ("of", key)))
    elif isinstance(value, tuple) and hasattr(value, "_fields"):
        yield (*way, "text"), value[0]
    elif isinstance(value, tuple):
        for at, each in enumerate(value):
            yield from leaves(each, (*way, at))
    else:
        yield way, value


def put(value: Any, way: tuple[Any, ...], new: Any) -> Any:
    """Return a part of a guide with another leaf."""
    if not way:
        return new
    step, *rest = way
    if isinstance(step, int):
        return (*value[:step], put(value[step], tuple(rest), new), *value[step + 1 :])
    if isinstance(step, tuple):
        return {key: put(of, tuple(rest), new) if key == step[1] else of for key, of in value.items()}
    if not is_dataclass(value):
        return value._replace(**{step: new})
    return replace(value, **{step: put(getattr(value, step), tuple(rest), new)})  # type: ignore[type-var]


def other(leaf: Any) -> Any:
    """Return a leaf with one letter, or one step, changed."""
    if isinstance(leaf, bool):
        return not leaf
    if isinstance(leaf, str):
        middle = len(leaf) // 2
        return f"{leaf[:middle]}{'b' if leaf[middle : middle + 1] == 'a' else 'a'}{leaf[middle + 1 :]}"
    return leaf + 1 if isinstance(leaf, int) else leaf * 1.0000001 + 1e-9 if isinstance(leaf, float) else "x"


def test_one_letter_of_any_statement_changes_its_digest(
    guide: Guide, statements: dict[str, Statement]
) -> None:
    """Of every statement each text and each value counts: none can change with the digest as it was."""
    values = values_of(guide)
    changed = 0
    for key, value in values.items():
        assert _digest(_plain(value)) == statements[key].own
        for way, leaf in leaves(value):
            assert _digest(_plain(put(value, way, other(leaf)))) != statements[key].own, (key, way)
            changed += 1
    sums = [each for each in statements.values() if each.kind == "sum"]
    assert len(values) + len(sums) == len(statements) == len(set(statements))
    assert changed > 15_000


def test_what_is_dropped_added_or_moved_counts(guide: Guide, statements: dict[str, Statement]) -> None:
    """A list with one entry less, with two in another order, or with one twice has another digest."""
    tried = 0
    for key, value in values_of(guide).items():
        lists = [each.name for each in fields(value) if isinstance(getattr(value, each.name), tuple) and not isinstance(getattr(value, each.name), Place)]  # fmt: skip
        for name in lists:
            old = getattr(value, name)
            for new in (old[1:], old[:-1], old[::-1], (*old, *old[:1])):
                if new != old:
                    assert _digest(_plain(replace(value, **{name: new}))) != statements[key].own, (key, name)
                    tried += 1
    assert tried > 2_000


def moved(value: Any) -> Any:
    """Return a part of a guide as if written elsewhere."""
    if isinstance(value, Place):
        return Place("elsewhere.yaml", 7, 7)
    if is_dataclass(value):
        return replace(value, **{each.name: moved(getattr(value, each.name)) for each in fields(value)})  # type: ignore[type-var]
    if isinstance(value, Mapping):
        return {key: moved(each) for key, each in value.items()}
    if isinstance(value, tuple) and hasattr(value, "_fields"):
        return Typed(value[0], Place("elsewhere.yaml"))
    return tuple(map(moved, value)) if isinstance(value, tuple) else value


def test_places_count_for_nothing(guide: Guide, statements: dict[str, Statement]) -> None:
    """Where a statement is written is no part of it."""
    for key, value in values_of(guide).items():
        assert _digest(_plain(moved(value))) == statements[key].own, key


def test_comments_and_layout_count_for_nothing(tmp_path: Path) -> None:
    """Comments, blank lines, quotes, folding, and the order of fields change no seal."""
    plain = seals_of(statements_of(small_guide(tmp_path / "plain")))
    other_way = small_guide(
        tmp_path / "other",
        ("numbers.yaml", "chill:\n", "# a comment\n\nchill:\n"),
        ("numbers.yaml", "  title: Cold at or below\n  value: 37\n", "  value: 37.0   # degrees\n  title: 'Cold at\n    or below'\n"),
        ("findings/all.yaml", "why: It can die.", 'why: >-\n    It can\n    die.'),
        ("topics/first.yaml", "call_vet: Now.", 'call_vet: "Now."'),
        ("topics/first.yaml", "    cautions: [No milk.]\n    call_vet: \"Now.\"\n", "    call_vet: Now.\n    cautions:\n      - No milk.\n"),
        ("glossary.yaml", "limp: {means: 'Soft, with no strength.'}", 'limp:\n  means: "Soft, with no strength."'),
    )  # fmt: skip

    assert seals_of(statements_of(other_way)) == plain


# --- what leans on what ---


def test_a_changed_statement_voids_what_leans_on_it_and_no_more(
    guide: Guide, statements: dict[str, Statement], seals: dict[str, str]
) -> None:
    """Each statement changed in its turn: the seals that change are those that lean on it, directly or not."""
    users = used_by(statements)

    def over(key: str) -> set[str]:
        found, waiting = {key}, [key]
        while waiting:
            for each in users[waiting.pop()]:
                if each not in found:
                    found.add(each)
                    waiting.append(each)
        return found

    some = [key for key in statements if key.startswith(("number/", "how-to/", "urgency/", "sum/"))]
    some += list(statements)[::23]
    for key in some:
        spoilt = dict(statements) | {key: replace(statements[key], own="another")}
        after = seals_of(spoilt)
        assert {each for each in seals if seals[each] != after[each]} == over(key), key


def mentions(value: Any, name: str) -> bool:
    """Whether a part of a guide names something: as a whole text, as a key, or in braces."""
    for way, leaf in leaves(value):
        keys = [step[1] for step in way if isinstance(step, tuple)]
        if "go" not in way and (
            leaf == name or name in keys or (isinstance(leaf, str) and f"{{{name}}}" in leaf)
        ):
            return True
    return False


def test_whoever_shows_or_goes_by_a_number_leans_on_it(
    guide: Guide, statements: dict[str, Statement]
) -> None:
    """A statement in which a number's name stands, wherever that is, leans on the number; none is forgotten."""
    others = {name for held in (guide.findings, guide.nodes, guide.how_tos, guide.topics, guide.rules, guide.cupboard, guide.cases, guide.deeds, guide.duties, guide.sources, guide.laws, amounts.AMOUNTS) for name in held}  # fmt: skip
    for choices in (finding.choices for finding in guide.findings.values()):
        others |= set(choices)
    others |= set(guide.front.act_tags)
    values = values_of(guide)
    named = [name for name in guide.numbers if name not in others]
    assert len(named) > 150
    texts = {key: repr(value) for key, value in values.items()}
    met = 0
    for name in named:
        for key, value in values.items():
            if key != f"number/{name}" and name in texts[key] and mentions(value, name):
                assert f"number/{name}" in statements[key].leans_on, (key, name)
                met += 1
    assert met > 300


def test_a_changed_number_voids_every_sum_and_page_over_it(guide: Guide, seals: dict[str, str]) -> None:
    """A number with another value voids each page that shows a sum of it, and the pages beside stay signed."""
    name, amount = next(
        (each, of) for each, of in amounts.AMOUNTS.items() if of.numbers and f"sum/{each}" in seals
    )
    number = amount.numbers[0]
    numbers = {
        **guide.numbers,
        number: replace(guide.numbers[number], value=guide.numbers[number].value * 1.01),
    }
    changed = replace(guide, numbers=numbers)
    found = statements_of(changed)
    review = Review(seals_of(found), (signed(seals),))

    gone = {key for key in review.seals if review.of(key).how != "signed"}

    assert {f"number/{number}", f"sum/{name}"} <= gone
    showing = {key for key, value in values_of(guide).items() if f"{{{name}}}" in repr(value)}
    assert showing <= gone
    assert 0 < len(gone) < len(seals) / 2


def test_a_changed_formula_voids_what_shows_its_sum(
    guide: Guide, seals: dict[str, str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A sum whose code gives something else, though nothing of the guide changed, is signed no longer."""
    for name, amount in amounts.AMOUNTS.items():
        if f"sum/{name}" not in seals:
            continue

        def doubled(facts: Facts, system: Any, real: Any = amount.work_out) -> Any:
            given = real(facts, system)
            return _Other(given)

        monkeypatch.setitem(amounts.AMOUNTS, name, replace(amount, work_out=doubled))
        review = Review(seals_of(statements_of(guide)), (signed(seals),))
        monkeypatch.setitem(amounts.AMOUNTS, name, amount)
        showing = {key for key, value in values_of(guide).items() if f"{{{name}}}" in repr(value)}
        gone = {key for key in review.seals if review.of(key).how != "signed"}
        assert {f"sum/{name}", *showing} <= gone
        assert f"number/{next(iter(guide.numbers))}" not in gone


class _Other:
    """An amount told with one figure more."""

    def __init__(self, given: Any) -> None:
        self.given = given

    def words(self, system: Any) -> str:
        return f"{self.given.words(system)}0"


def test_where_a_way_leads_belongs_to_the_question(tmp_path: Path) -> None:
    """A page made milder voids the question that leads there, too."""
    before = small_guide(tmp_path / "before")
    after = small_guide(tmp_path / "after", ("topics/first.yaml", "end: care-here", "end: vet-now"))
    old, new = (seals_of(statements_of(each)) for each in (before, after))

    assert {key for key in old if old[key] != new[key]} == {"node/well", "node/warmth", "node/feel"}


def test_a_digest_is_the_same_everywhere(seals: dict[str, str]) -> None:
    """Another process, whose sets and hashes go another way, gives every statement the same seal."""
    told = "import hashlib; from triage.guide.find import knowledge_root; from triage.guide.read import read_guide; from triage.review.statements import seals_of, statements_of; print(sorted(seals_of(statements_of(read_guide(knowledge_root()).guide)).items()))"
    for seed in ("1", "2"):
        env = {**os.environ, "PYTHONHASHSEED": seed, "LC_ALL": "C"}
        ran = subprocess.run(
            [sys.executable, "-c", told], capture_output=True, text=True, check=True, env=env
        )
        assert ran.stdout.strip() == str(sorted(seals.items()))


def test_a_field_that_a_later_version_adds_changes_nothing(guide: Guide) -> None:
    """A field that is not filled in leaves the digest as it was."""
    number = next(iter(guide.numbers.values()))
    later = dataclasses.make_dataclass("Number", [("fresh", str, "")], bases=(type(number),), frozen=True)
    values = {each.name: getattr(number, each.name) for each in fields(number)}

    assert _digest(_plain(later(**values))) == _digest(_plain(number))
    assert _digest(_plain(later(**values, fresh="x"))) != _digest(_plain(number))


def test_a_guide_with_mistakes_has_no_statements(tmp_path: Path) -> None:
    """What can't be read whole is not there to be signed."""
    assert read_small(tmp_path, ("topics/first.yaml", "go: feel", "go: fel")).guide is None
