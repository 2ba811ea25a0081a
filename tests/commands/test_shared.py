"""Opening a guide for use: the shipped one as it stands, a folder of the person's own only when proved."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.conftest import write_small
from tests.guide.test_read import BROKEN_RULE
from triage.commands.shared import Exit, open_guide, read_for_use
from triage.guide.model import Guide


def test_the_shipped_guide_is_opened_without_its_rules() -> None:
    """A walk needs no rule, so the way to the first question does not read them."""
    guide = open_guide(None)

    assert isinstance(guide, Guide)
    assert not guide.rules


def test_a_folder_of_their_own_is_read_with_its_rules(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What a person brings is held to its own rules before a lamb is, and a broken rule keeps it shut."""
    folder = write_small(tmp_path, BROKEN_RULE)

    assert open_guide(folder) is Exit.PROBLEMS
    assert open_guide(folder, read_for_use(folder)) is Exit.PROBLEMS
    assert "rules.yaml:1:24: there is no act tag 'wram'" in capsys.readouterr().err
