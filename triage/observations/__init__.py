"""Observations between walks: what can be written down, how it is asked, and how it reads."""

from triage.observations.kinds import DIGITS, KINDS, KindOf, PartOf
from triage.observations.noting import Kept, Noting
from triage.observations.wording import words_of

__all__ = ["DIGITS", "KINDS", "Kept", "KindOf", "Noting", "PartOf", "words_of"]
