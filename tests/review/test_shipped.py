"""What ships is what passed its check, and what its edition was cut as."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from triage.guide.files import digest_of
from triage.guide.find import knowledge_root
from triage.guide.read import read_guide
from triage.review.editions import cut_text, read_cut
from triage.review.proved import found, seals_in
from triage.review.statements import seals_of, statements_of
from triage.review.upkeep import upkeep

STALE = "knowledge was changed since it was cut; run 'triage cut' and commit knowledge/.known"


def test_the_shipped_guide_is_known_to_have_passed() -> None:
    """The digest that ships is that of the files that ship, with the seal of each statement as it now is."""
    root = knowledge_root()
    digest = digest_of(root)
    assert digest
    passed = found(digest, root, None)
    assert passed, STALE

    guide = read_guide(root).guide
    assert guide
    assert seals_in(passed) == seals_of(statements_of(guide)), STALE


def test_the_shipped_edition_says_what_it_was_cut_as() -> None:
    """No statement was changed after the edition was cut, and each change before has its reason."""
    root = knowledge_root()
    guide = read_guide(root).guide
    assert guide
    assert isinstance(root, Path)
    cut, statements = read_cut(root), statements_of(guide)
    assert cut
    kept = (root / ".known" / "edition").read_text(encoding="utf-8")
    assert kept == cut_text(guide.front.edition, statements.values()), STALE

    assert list(upkeep(root, guide, date.fromisoformat(guide.front.date))) == []
