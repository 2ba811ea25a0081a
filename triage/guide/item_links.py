"""Looking up what the cupboard says of its things: fields that go together, and sums that can be made."""

from __future__ import annotations

from collections.abc import Mapping

from triage.guide import model
from triage.guide.items import HowMany, Item
from triage.guide.shapes import Reading
from triage.multiplied import multiplied


def look_up_items(items: Mapping[str, Item], numbers: Mapping[str, model.Number], reading: Reading) -> None:
    """Add a mistake for each thing that says too much or too little of how it is to be had."""
    for item in items.values():
        if bool(item.first) == item.at_hand:
            what = f"'{item.name}' needs either 'first' or 'at_hand', and not both"
            reading.wrong(item.place, what)
        if sum((item.how_many is not None, bool(item.ask_vet), item.at_hand)) != 1:
            what = f"'{item.name}' needs exactly one of 'how_many', 'ask_vet' and 'at_hand'"
            reading.wrong(item.place, what)
        if item.how_many:
            _how_many(item, item.how_many, numbers, reading)


def _how_many(item: Item, how_many: HowMany, numbers: Mapping[str, model.Number], reading: Reading) -> None:
    if bool(how_many.each_lamb) == bool(how_many.least or how_many.one_for):
        what = "write either 'each_lamb', or 'least' and 'one_for' for things that are counted"
        reading.wrong(how_many.place, what)
    known = [numbers[name].quantity for name in how_many.each_lamb if name in numbers]
    if len(known) == len(how_many.each_lamb) > 0 and multiplied(known) is None:
        what = (
            f"the numbers of '{item.name}' multiplied are no weight, volume or count; "
            f"take numbers that are, like ml for each kg and kg"
        )
        reading.wrong(how_many.place, what, "unit")
