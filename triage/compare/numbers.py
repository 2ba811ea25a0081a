"""Numbers that were moved: by how much, to which side, and what goes by them."""

from __future__ import annotations

from triage.compare.compared import NumberMoved, Off
from triage.compare.statements import values_of
from triage.guide.model import Guide, Number
from triage.review.statements import leans_of
from triage.units import convert, same_dimension


def numbers_moved(old: Guide, new: Guide) -> tuple[NumberMoved, ...]:
    """Return the numbers that both guides have, and whose value is not the same, in reading order."""
    moved = [
        (number, now)
        for name, number in old.numbers.items()
        if (now := new.numbers.get(name)) and not _equal(number, now)
    ]
    used = _used(new, {number.name for number, _ in moved}) if moved else {}
    return tuple(_moved(number, now, used.get(number.name, ())) for number, now in moved)


def _equal(number: Number, now: Number) -> bool:
    if number.unit == now.unit:
        return number.value == now.value
    return same_dimension(number.unit, now.unit) and convert(now.value, now.unit, number.unit) == number.value


def _moved(number: Number, now: Number, used: tuple[str, ...]) -> NumberMoved:
    unit, value = number.unit, now.value
    if same_dimension(now.unit, unit):
        value = convert(now.value, now.unit, unit)
    return NumberMoved(number.name, now.title, number.value, value, unit, _off(number, now, value), used)


def _off(number: Number, now: Number, value: float) -> Off:
    """Return the side that it was moved to, by what the old guide calls safer, or else the new one."""
    safer = number.safer if number.safer in ("higher", "lower") else now.safer
    if safer not in ("higher", "lower") or value == number.value:
        return ""
    return "safer" if (value > number.value) == (safer == "higher") else "less safe"


def _used(guide: Guide, names: set[str]) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for key, value in values_of(guide).items():
        for leant in dict.fromkeys(leans_of(value)):
            kind, _, name = leant.partition("/")
            if kind == "number" and name in names and key != leant:
                found.setdefault(name, []).append(key)
    return {name: tuple(keys) for name, keys in found.items()}
