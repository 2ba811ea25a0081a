"""The command as a person gives it, and a copy of the shipped guidance to give it to."""

from __future__ import annotations

import argparse
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from triage.commands.new import add_new
from triage.guide.find import knowledge_root

New = Callable[..., int]


@pytest.fixture(autouse=True)
def no_own_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever runs the tests may have one."""
    monkeypatch.delenv("TRIAGE_OWN", raising=False)


@pytest.fixture
def shipped(tmp_path: Path) -> Path:
    """A copy of the shipped guidance, with what is known of its edition."""
    return Path(shutil.copytree(str(knowledge_root()), tmp_path / "knowledge"))


@pytest.fixture
def new() -> New:
    """Run `triage new` with these words, and return its exit status."""

    def run(*words: object) -> int:
        parser = argparse.ArgumentParser()
        parser.set_defaults(guide=None)
        add_new(parser)
        parsed = parser.parse_args([str(word) for word in words])
        return int(parsed.run(parsed))

    return run
