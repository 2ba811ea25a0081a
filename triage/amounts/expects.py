"""What the sums take for granted: the unit of each number and finding, and the choices they know.

A guide is held to this when it is read, so that a number rewritten in litres can't become a dose.
"""

from __future__ import annotations

NUMBER_UNITS: dict[str, str] = {
    "birth-single": "kg",
    "birth-twin": "kg",
    "birth-triplet": "kg",
    "guess-growth": "kg/day",
    "first-milk-rate": "ml/kg",
    "first-milk-day-rate": "ml/kg",
    "first-milk-cold-extra": "%",
    "first-milk-feeds": "count",
    "first-milk-fading": "h",
    "first-milk-poor": "h",
    "milk-day-rate": "ml/kg/day",
    "feed-ceiling": "ml/kg",
    "feed-most": "ml",
    "recovery-feed": "ml",
    "recovery-rate": "ml/kg",
    "week-one": "day",
    "week-three": "day",
    "week-five": "day",
    "feeds-first-week": "count",
    "feeds-to-three-weeks": "count",
    "feeds-to-five-weeks": "count",
    "feeds-later": "count",
    "powder-volume": "ml",
    "electrolyte-rate": "ml/kg",
    "electrolyte-most": "ml",
    "upkeep-rate": "ml/kg/day",
    "loss-rate": "ml/kg/day",
    "dryness-light": "%",
    "dryness-marked": "%",
    "dryness-severe": "%",
    "tent-quick": "s",
    "tent-stays": "s",
    "glucose-rate": "ml/kg",
    "glucose-strength": "%",
    "glucose-stock": "%",
}

RAISING_UNITS: dict[str, str] = {
    "first-milk-soon": "h",
    "ring-from": "h",
    "ring-until": "day",
    "gain-expected": "kg/day",
    "gain-good": "kg/day",
    "gain-young": "kg/day",
    "growth-fast": "kg/day",
    "wean-age": "day",
    "wean-weight": "kg",
    "wean-feed": "kg/day",
    "wean-feed-days": "count",
    "milk-least": "day",
    "off-milk-latest": "day",
    "missed-feeds": "count",
    "mix-share": "%",
    "energy-upkeep": "MJ/kg/day",
    "energy-gain": "MJ/kg",
    "energy-powder": "MJ/kg",
    "energy-creep": "MJ/kg",
    "wet-heat": "W/kg",
    "wind-heat": "W/kg",
    "milk-week-one": "ml",
    "milk-week-two": "ml",
    "milk-week-three": "ml",
    "milk-week-four": "ml",
    "milk-week-five": "ml",
}
"""What a raising plan stands on: a guide with duties has all of these, in these units."""

FINDING_UNITS: dict[str, str] = {
    "age": "h",
    "weight": "kg",
    "skin": "s",
    "dryness": "%",
    "batch": "ml",
    "bag-powder": "g",
    "bag-water": "ml",
}

FINDING_CHOICES: dict[str, tuple[str, ...]] = {
    "birth-type": ("single", "twin", "triplet"),
    "weather": ("cold-wet-wind",),
    "bag-way": ("added-to", "made-up-to"),
    "dry-signs": ("some", "bad"),
    "eyes": ("sunken", "gap"),
    "gums": ("tacky", "dry"),
}
