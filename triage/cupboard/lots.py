"""What is on the shelf of one thing: packs, each with how much it holds and the date on its label."""

from __future__ import annotations

import re
from dataclasses import dataclass

from triage.cupboard.dates import Until, read_until
from triage.page.inert import inert
from triage.typed import Refused, read_measure
from triage.units import UNITS

MOST_LOTS = 20
MOST = {"count": 10_000.0, "kg": 10_000.0, "ml": 1_000_000.0}
"""More than this of anything is a slip of the hand."""
LEAST = {"kg": 0.001, "ml": 1.0}
LIKE = {"count": "2", "kg": "10 kg, 2027-03", "ml": "500 ml, 2027-03"}

_PACKS = re.compile(r"(\d{1,4})\s*[x*×]\s*(\D*\d.*)", re.IGNORECASE)
_COUNT = re.compile(r"(\d{1,5})\s*([A-Za-z][A-Za-z -]{0,29})?")
_COMMA = re.compile(r",\s+|(?<!\d),|,(?!\d)|,(?=\d{4}\b)")
"""A comma before a date; one between two digits belongs to the number."""
_NOTHING = ("", "-", "0", "none")
_NO_COUNT = {"dozen", "half", "kg", "g", "ml", "l", "lb", "oz", "litres", "litre", "kilos", "and"}
"""Words that would make another number of it."""


@dataclass(frozen=True)
class Lot:
    """One pack, or some of one date."""

    value: float
    """In kilograms, millilitres, or so many."""
    said: str
    """As it was written."""
    until: Until | None = None

    def __str__(self) -> str:
        return f"{self.said}, {self.until.said}" if self.until else self.said


def read_lots(text: str, unit: str) -> tuple[Lot, ...] | str:
    """Read `10 kg, 2027-03; 2 x 5 kg`, or say in a sentence what is wrong. Nothing is no lot."""
    lots: list[Lot] = []
    for part in text.split(";"):
        if part.strip().lower() in _NOTHING:
            continue
        lot = _lot(part.strip(), unit)
        if isinstance(lot, str):
            return lot
        lots.append(lot)
    if len(lots) > MOST_LOTS:
        return f"That is more than {MOST_LOTS} packs of one thing. Put those of one date together."
    return tuple(lots)


def _lot(text: str, unit: str) -> Lot | str:
    said, _, dated = _split(text)
    value = _amount(said, unit)
    if isinstance(value, str):
        return value
    until = read_until(dated) if dated.strip() else None
    if isinstance(until, str):
        return inert(until)
    return Lot(value, " ".join(said.split()), until)


def _split(text: str) -> tuple[str, str, str]:
    match = _COMMA.search(text)
    return (text[: match.start()], ",", text[match.end() :]) if match else (text, "", "")


def _amount(text: str, unit: str) -> float | str:
    packs = _PACKS.fullmatch(text.strip())
    each = (
        _count(packs[2] if packs else text)
        if unit == "count"
        else _measure(packs[2] if packs else text, unit)
    )
    if isinstance(each, str):
        return each
    value = each * int(packs[1]) if packs else each
    if not 0 < value <= MOST[unit]:
        return f"'{inert(text, 40)}' can't be right. Write how much there is, like {LIKE[unit]}."
    return round(value, 4)


def _count(text: str) -> float | str:
    match = _COUNT.fullmatch(text.strip())
    if match and not _NO_COUNT & set((match[2] or "").lower().split()):
        return float(match[1])
    return f"'{inert(text, 40)}' is no whole number. This is counted: write how many there are, like 2."


def _measure(text: str, unit: str) -> float | str:
    such = f"Write what the packs hold, like {LIKE[unit]}, or 2 x {LIKE[unit]}."
    if not any(sign.isalpha() for sign in text):
        return f"'{inert(text, 40)}' of what? {such}"
    came = read_measure(text, unit, (LEAST[unit], MOST[unit]))
    if isinstance(came, Refused):
        kind = UNITS[unit].dimension
        start = came.why.partition(". ")[0].rstrip(".") if "can't be right" in came.why else ""
        return inert(f"{start}. {such}" if start else f"'{inert(text, 40)}' is no {kind}. {such}")
    return came.value
