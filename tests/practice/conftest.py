"""The dealer over the shipped guide, which takes a moment to make."""

from __future__ import annotations

import pytest

from triage.guide.model import Guide
from triage.practice.dealing import Dealer


@pytest.fixture(scope="session")
def dealer(guide: Guide) -> Dealer:
    """What deals the shipped guide's cases."""
    return Dealer(guide)
