"""An invented lamb and the moments of its raising, for the tests here. None of it is a record of a real one."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from functools import cache
from typing import Any

from triage.clock import Now
from triage.guide.find import knowledge_root
from triage.guide.model import Guide
from triage.guide.read import read_guide
from triage.rearing.reared import Bag, Basis, Reared
from triage.units import System
from triage.weighings import Weighing

BORN = datetime(2026, 3, 20, 2, 0, tzinfo=UTC)
BAG = Bag(200, 800, "added-to")


@cache
def shipped() -> Guide:
    """The shipped guide with its raising plan, read once."""
    guide = read_guide(knowledge_root(), {"rearing"}).guide
    assert guide is not None
    return guide


def at(days: float) -> datetime:
    return BORN + timedelta(days=days)


def now(days: float) -> Now:
    return Now(at(days), UTC)


def weighed(*pairs: tuple[float, float]) -> tuple[Weighing, ...]:
    """Return weighings from pairs of a day of age and kilograms."""
    return tuple((at(day), kilos) for day, kilos in pairs)


def lamb(**known: Any) -> Reared:
    told = {"born": BORN, "weighed": weighed((0, 4.0)), "bag": BAG, **known}
    return Reared("blue", "Blue 7", **told)


def basis(reared: Reared, days: float, system: System = "metric") -> Basis:
    return Basis(shipped(), reared, now(days), system)
