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
