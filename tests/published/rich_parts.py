"""What rich guides are made of: findings, numbers, words, and the dice that choose among them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn

from triage.guide.model import Finding, Number

Item = TypeVar("Item")

URGENCIES = ("vet-now", "vet-today", "care-here")
TAGS = ("feed", "warm", "phone")
SHOWN = ("first-milk", "milk-feed", "lamb-age", "weight-guess", "cool")
"""Sums that need a weight, a weight and an age, an age, and a kind of birth; and a number."""

TITLES = ("No", "Milk", "No milk", "Phone the vet", "{lamb-age} old")
STEPS = (
    "Look at it.",
    "Milk, no more.",
    "Give {first-milk}.",
    "Give {milk-feed}.",
    "{weight-guess}: {cool}.",
)
SAID = (("no",), ("milk",), ("no milk",), ("phone", "VET"), ("milk look",))
NUMBERS = {
    name: Number(name, name, value, unit, {"common-practice": (value, value)}, "higher", "common-practice")
    for name, value, unit in (
        ("cool", 37.0, "degC"),
        ("hot", 104.0, "degF"),
        ("day-old", 1.0, "day"),
        ("just-born", 100.0, "min"),
        ("light", 2.5, "kg"),
        ("heavy", 4321.0, "g"),
    )
}
LINES = {"temperature": ("cool", "hot"), "age": ("just-born", "day-old"), "weight": ("light", "heavy")}
"""The numbers that each measurement may be held to, lowest first."""

POOL = (
    Finding("danger", "Danger", "Any danger?", "Why.", {"no": "No", "yes": "Yes", "bad": "Very"}),
    Finding("mouth", "Mouth", "Its mouth?", "Why.", {"warm": "Warm", "cold": "Cold"}),
    Finding(
        "birth-type", "Born", "Born as?", "Why.", {"single": "Single", "twin": "Twin", "triplet": "More"}
    ),
    Finding(
        "temperature", "Warmth", "Warm?", "Why.", measure="degC", plausible=(30.0, 43.0), usual=(38.0, 39.0)
    ),
    Finding("age", "Age", "How old?", "Why.", measure="h", plausible=(0.0, 100.0)),
    Finding("weight", "Weight", "What weight?", "Why.", measure="kg", plausible=(0.5, 10.0)),
)

MATTER = Finding(
    "matter",
    "Matter",
    "What is it about?",
    "Why.",
    {"one": "One", "two": "Two", "all": "All"},
    never_unsure="So.",
)
"""What a walk can be about, in a guide with several ways in."""


class Dice:
    """Bytes thrown one after the other; when they are used up, each further one is nought."""

    def __init__(self, draw: DrawFn, size: int) -> None:
        self._left = iter(draw(st.binary(min_size=size, max_size=size)))

    def below(self, count: int) -> int:
        """Return a number from nought up to, not including, a count."""
        return next(self._left, 0) % count

    def one(self, items: Sequence[Item]) -> Item:
        """Return one of the items; the first is the plainest."""
        return items[self.below(len(items))]

    def chance(self, of: int) -> bool:
        """Return whether something rare happens, once in so many times."""
        return self.below(of) == of - 1

    def some(self, items: Sequence[Item], least: int = 0) -> tuple[Item, ...]:
        """Return some of the items in their order, at least so many."""
        bits = self.below(1 << len(items))
        picked = [item for at, item in enumerate(items) if bits >> at & 1]
        return tuple(picked if len(picked) >= least else items[:least])
