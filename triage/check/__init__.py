"""The proof: everything that must hold of a guide, and exactly where it does not."""

from __future__ import annotations

from triage.check.run import CHECKS, Proof, check, check_parts, prove
from triage.check.tally import Tally

__all__ = ["CHECKS", "Proof", "Tally", "check", "check_parts", "prove"]
