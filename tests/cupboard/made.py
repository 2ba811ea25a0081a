"""A small guide with a cupboard, invented for the tests."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from tests.conftest import small_guide
from triage.cupboard.lots import read_lots
from triage.cupboard.shelf import Shelf
from triage.guide.model import Guide

TODAY = date(2026, 11, 29)

CUPBOARD = """\
probe:
  title: Thermometer
  first: tonight
  why: It tells cold from warm.
  how_many: {least: 2}
  words: [measure it, thermometer]
  sources: [a-paper]
  certainty: high
powder:
  title: Powder
  first: tonight
  why: It feeds.
  how_many: {each_lamb: sack}
  words: [powder]
  tags: feed-by-mouth
  dated: true
  sources: [a-paper]
  certainty: high
drink:
  title: Drink
  first: this-week
  why: It wets.
  how_many: {each_lamb: [rate, sack, times]}
  words: [drink]
  shows: pause
  dated: true
  sources: [a-paper]
  certainty: high
heater:
  title: Heater
  first: season
  why: It warms.
  how_many: {least: 1, one_for: 4}
  words: [heater]
  tags: warm
  sources: [a-paper]
  certainty: high
needle:
  title: Needle
  first: this-week
  why: A vet has one.
  ask_vet: Ask the vet.
  words: [needle]
  sources: [a-paper]
  certainty: high
phone:
  title: Phone
  at_hand: true
  why: A vet can hear.
  tags: phone
  sources: [common-practice]
  certainty: common-practice
"""

NUMBERS = "".join(
    f"{name}: {{title: N, value: {value}, unit: {unit}, published: {{a-paper: {value}}}, safer: lower, certainty: high}}\n"
    for name, value, unit in (("sack", 13, "kg"), ("rate", 10, "ml/kg"), ("times", 2, "count"))
)

CHANGES = (
    ("cupboard.yaml", "", CUPBOARD),
    ("numbers.yaml", "pause:", f"{NUMBERS}pause:"),
    ("how-to/measure-it.yaml", "steps: [Hold it still.]", "need: [a clean thermometer]\nsteps: [Hold it still.]"),
    ("topics/first.yaml", "do: [{do: Phone., tag: phone}]", 'do: [{do: "Phone. Needle? {pause}, heater off.", tag: phone}]'),
)  # fmt: skip
"""What makes the small guide one with a cupboard, and as sound as it was."""


def stocked(folder: Path, *changes: tuple[str, str, str]) -> Guide:
    """Return the small guide with a cupboard, and with changes."""
    return small_guide(folder, *CHANGES, *changes)


def shelf(lambs: int | None = None, **lots: str) -> Shelf:
    """Return a shelf from texts as they are written."""
    units = {"powder": "kg", "drink": "ml"}
    read = {name: read_lots(text, units.get(name, "count")) for name, text in lots.items()}
    return Shelf(lambs, {name: came for name, came in read.items() if not isinstance(came, str)})
