"""The bag of milk replacer that this holding keeps, for the sum that needs one."""

from __future__ import annotations

from collections.abc import Sequence

from triage.holding.fields import text_of
from triage.holding.holding import Holding

BAG = "The rate is that of this holding's bag, as `triage setup` keeps it. Is it the bag in your hand?"

_SUM = "milk-batch"
_PARTS = ("bag-powder", "bag-water", "bag-way")


def bag_of(holding: Holding, amount: str, given: Sequence[str]) -> list[str]:
    """Return what the sum lacks of a bag as finding=value; nothing where any of it was given, or is not kept.

    Half of one bag and half of another would be a wrong mix.
    """
    typed = {pair.partition("=")[0] for pair in given}
    kept = {part: text_of(holding, part) for part in _PARTS}
    if amount != _SUM or typed & set(_PARTS) or not all(kept.values()):
        return []
    return [f"{part}={text}" for part, text in kept.items()]


def lacking(holding: Holding) -> list[str]:
    """Return what a bag that is kept lacks to be of use; nothing where none is kept, or all of it is."""
    lacks = [part for part in _PARTS if not text_of(holding, part)]
    return lacks if len(lacks) < len(_PARTS) else []
