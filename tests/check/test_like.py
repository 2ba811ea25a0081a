"""No false alarm: sound guides of like shape to the shipped one pass every check."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.bench.like import write_like
from triage.check import prove
from triage.guide.read import read_guide


@pytest.mark.parametrize("seed", range(20))
def test_a_sound_guide_has_no_problem(tmp_path: Path, seed: int) -> None:
    """A made-up guide that is sound is read and proved without a word."""
    read = read_guide(write_like(tmp_path, 60 + 20 * seed, seed))
    assert read.problems == ()
    assert read.guide is not None
    proof = prove(read.guide)
    assert proof.problems == ()
    assert proof.tally is not None
    assert len(read.guide.nodes) > 60
