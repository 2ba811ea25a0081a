"""The table of kinds: what the sources can raise and nothing else, each in a sentence."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from triage.check.kinds import EDITION, KINDS, OWN, PARTS, READING, WALKS, WORDING

TRIAGE = Path(__file__).parents[3] / "triage"

CARRIES = {"Problem": 2, "wrong": 2, "Claim": 2, "unsigned": 3, "_at": 3}
"""What is called with a kind of problem, and where it stands among the arguments."""

PASSED_ON = {"rule", "rule.name", "claim.rule"}
"""A kind that was named elsewhere, or the name of one of the guide's own rules."""


def kinds_in(source: Path) -> Iterator[ast.expr]:
    """Yield what stands for the kind of a problem wherever a source raises one."""
    for call in ast.walk(ast.parse(source.read_text(encoding="utf-8"))):
        if not isinstance(call, ast.Call):
            continue
        at = CARRIES.get(getattr(call.func, "id", "") or getattr(call.func, "attr", ""))
        if at is not None:
            named = [each.value for each in call.keywords if each.arg == "rule"]
            yield (*named, *call.args[at : at + 1], ast.Constant("shape"))[0]


def raised() -> list[ast.expr]:
    folders = ("guide", "check", "practice", "review", "own")
    sources = [path for folder in folders for path in (TRIAGE / folder).rglob("*.py")]
    return [kind for source in sources for kind in kinds_in(source)]


def test_every_kind_in_the_sources_is_in_the_table() -> None:
    """What reading and checking can raise is what the table describes: none is missing, none is stale."""
    named = {kind.value for kind in raised() if isinstance(kind, ast.Constant)}

    assert named - {""} == set(KINDS)


def test_no_kind_hides_from_this_test() -> None:
    """A kind is written out where it is raised, so that it can be found here."""
    hidden = {ast.unparse(kind) for kind in raised() if not isinstance(kind, ast.Constant)}

    assert hidden <= PASSED_ON


def test_no_kind_is_described_twice() -> None:
    """The parts of the table do not overlap."""
    assert len(KINDS) == sum(map(len, (READING, PARTS, WALKS, WORDING, EDITION, OWN)))


@pytest.mark.parametrize(("kind", "says"), KINDS.items())
def test_each_kind_is_told_in_one_sentence(kind: str, says: str) -> None:
    """What holds is one plain sentence that fits on a line."""
    assert says[0].isupper() or says[0] == "'"
    assert says.endswith(".")
    assert ". " not in says
    assert len(says) <= 80
