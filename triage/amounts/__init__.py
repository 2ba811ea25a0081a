"""The sums: what to give this lamb, from the guide's numbers and what is known of it."""

from __future__ import annotations

from triage.amounts import feed, fluid, lamb, mixing
from triage.amounts.sums import Amount, Figure, Sum

AMOUNTS: dict[str, Amount] = {
    amount.name: amount for room in (feed, mixing, fluid, lamb) for amount in room.AMOUNTS
}

__all__ = ["AMOUNTS", "Amount", "Figure", "Sum"]
