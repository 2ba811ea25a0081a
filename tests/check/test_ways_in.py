"""What is proved of a guide with several ways in."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.conftest import small_guide
from tests.published.naive import Replay
from tests.published.test_two_engines import agree
from tests.ways import WAYS_IN
from triage.check.run import check
from triage.check.search.searched import search
from triage.problems import Problem

FIRST, OTHERS = "topics/first.yaml", "topics/others.yaml"


def problems(folder: Path, *changes: tuple[str, str, str]) -> list[Problem]:
    """Return what the check finds in the small guide with several ways in, and these changes."""
    return [each for each in check(small_guide(folder, *WAYS_IN, *changes)) if each.weight == "error"]


def test_a_guide_with_several_ways_in_is_sound(tmp_path: Path) -> None:
    """Each way has danger signs of its own, and both engines find the same in it."""
    assert problems(tmp_path) == []
    agree(Replay(small_guide(tmp_path, *WAYS_IN)))


def test_what_a_walk_is_about_is_no_screen(tmp_path: Path) -> None:
    """The longest way to an end counts pages only, taken as known or said."""
    longest = search(small_guide(tmp_path, *WAYS_IN)).longest()
    assert longest["ewe-now"] == ("ewe", "ewe-now")
    assert longest["flock-now"] == ("flock", "flock-now")
    assert longest["well"][0] == "flock"


@pytest.mark.parametrize(
    ("kind", "told", "changes"),
    [
        # A way that goes round its own danger signs.
        ("danger-first", "'ewe-here' can be reached without asking 'ewe-danger'", [
            (FIRST, "  about:\n", "  legs:\n    ask: mouth\n    branches:\n      - {is: warm, go: ewe}\n      - {is: cold, go: ewe-here}\n      - {unsure: true, go: ewe}\n  about:\n"),
            (FIRST, "{is: ewe, go: ewe}", "{is: ewe, go: legs}"),
        ]),
        # A ewe's walk that slips into the lamb's pages behind the lamb's danger signs.
        ("danger-first", "'well' can be reached without asking 'danger'", [
            (OTHERS, "{is: none, go: ewe-here}", "{is: none, go: warmth}"),
            (OTHERS, "{is: several, go: flock-now, at_least: vet-now}", "{is: several, go: ewe, at_least: vet-now}"),
        ]),
        # A lamb's walk that comes to a ewe's page without the ewe's danger signs.
        ("danger-first", "'ewe-here' can be reached without asking 'ewe-danger'", [
            (FIRST, "{is: warm, go: well}", "{is: warm, go: ewe-here}"),
        ]),
        # A way with a page, and its keys, before its danger signs.
        ("danger-keys", "the danger signs of the way in 'ewe' are not asked within 3 keys", [
            (FIRST, "  about:\n", "  legs:\n    ask: mouth\n    branches:\n      - {otherwise: true, go: ewe}\n      - {unsure: true, go: ewe}\n  about:\n"),
            (FIRST, "{is: ewe, go: ewe}", "{is: ewe, go: legs}"),
        ]),
        # A way without any danger signs at all.
        ("danger-keys", "the danger signs of the way in 'ewe' are not asked within 3 keys", [
            (FIRST, "{is: ewe, go: ewe}", "{is: ewe, go: ewe-here}"),
        ]),
        ("gap", "'about' has no branch for ewe", [(FIRST, "      - {is: ewe, go: ewe}\n", "")]),
        ("danger-top", "danger sign down must give 'vet-now' at once", [
            (OTHERS, "{is: down, go: ewe-now, at_least: vet-now}", "{is: down, go: ewe-here}"),
        ]),
    ],
)  # fmt: skip
def test_what_is_wrong_on_a_way_is_told(
    tmp_path: Path, kind: str, told: str, changes: list[tuple[str, str, str]]
) -> None:
    """Danger comes first on every way in, with the danger signs that belong to it."""
    found = problems(tmp_path, *changes)
    assert any(each.rule == kind and told in each.what for each in found), "\n".join(map(str, found))


RULE = """\
no-feed-for-a-ewe:
  never: {tag: warm}
  when: {about: {is: ewe}}
  because: It is no lamb.
  sources: [a-paper]
"""


def test_a_rule_may_speak_of_what_a_walk_is_about(tmp_path: Path) -> None:
    """It fires by being said, and the shortest walk that breaks it says so first; a lamb is left alone."""
    [broken] = problems(tmp_path, ("rules.yaml", "", RULE))
    assert broken.walk.splitlines() == [
        "about: ewe  # What is it about? A ewe in trouble.",
        "ewe-danger: none  # Is the ewe down? On her feet.",
    ]
    lamb = RULE.replace("is: ewe", "is: lamb")
    walks = [each.walk for each in problems(tmp_path, ("rules.yaml", "", lamb))]
    assert walks
    assert not any("about" in walk for walk in walks)


def test_a_rule_about_no_way_proves_nothing(tmp_path: Path) -> None:
    """What no walk can be about never fires, and what one can be does."""
    fires = RULE.replace("tag: warm", "tag: feed-by-mouth")
    assert problems(tmp_path, ("rules.yaml", "", fires)) == []
    both = fires.replace("{about: {is: ewe}}", "{about: {is: ewe}, mouth: {is: warm}}")
    assert [each.rule for each in problems(tmp_path, ("rules.yaml", "", both))] == ["rule-never-fires"]
