"""What of a guide is read beside what every walk goes by."""

from __future__ import annotations

from collections.abc import Mapping
from collections.abc import Set as AbstractSet
from typing import Literal, get_args

Part = Literal["proof", "rearing", "cupboard", "practice"]
"""The rules and whom each page is for; the raising plan; the cupboard; the made-up cases."""

EVERYTHING: frozenset[Part] = frozenset(get_args(Part))

_FILES: Mapping[str, Part] = {
    "rules.yaml": "proof",
    "rearing.yaml": "rearing",
    "laws.yaml": "rearing",
    "cupboard.yaml": "cupboard",
    "farm.yaml": "practice",
    "deeds.yaml": "practice",
    "practice": "practice",
}
"""The files and folders that no walk goes by."""


def is_wanted(file: str, also: AbstractSet[Part]) -> bool:
    """Whether a file, by its path in the knowledge folder, is read where these parts are."""
    part = _FILES.get(file.partition("/")[0])
    return part is None or part in also
