"""A lamb told of in pairs of finding=value, for a plan without a casebook."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta

from triage.clock import Now
from triage.entry import usual_span
from triage.facts import Value
from triage.guide.model import Guide
from triage.holding.holding import Holding
from triage.page.listing import take_pair
from triage.problems import nearest
from triage.rearing.gathering import GRAMS, bag_of
from triage.rearing.reared import Reared
from triage.typed import Refused, read_measure
from triage.units import System, show

OWN = ("eaten", "law", "name")
"""What may be told beside the findings: dry feed eaten in a day, whose law holds, and its name."""

OTHERWISE = "No plan goes by {}. It is for a lamb that is well: of any other ask the guide first, by triage."

TOO_HEAVY = 1.25
"""So many times the most that is usual at an age is no lamb's weight. Common practice, no source."""

HOW = (
    'Name a lamb that is kept, or tell of one: triage plan age="born 2026-03-28 23:30" weight=4.2kg '
    "birth-type=twin keep-as=wether"
)


def lamb_told(
    guide: Guide, given: Sequence[str], holding: Holding, now: Now, system: System
) -> tuple[Reared, tuple[str, ...]] | str:
    """Return the lamb that pairs tell of and what was taken for granted, or a sentence on what is wrong."""
    own = dict(pair.split("=", 1) for pair in given if pair.partition("=")[0] in OWN and "=" in pair)
    known: dict[str, Value] = {}
    notes: list[str] = []
    # A weight is judged by the age, so the age is taken first.
    for pair in sorted(given, key=lambda each: not each.startswith("age=")):
        wrong = None if pair.partition("=")[0] in own else take_pair(guide, pair, known, notes, system)
        if wrong:
            return wrong
    of_duties = (name for duty in guide.duties.values() for name in duty.for_)
    strange = known.keys() - {"age", "weight", "birth-type", *of_duties}
    # A temperature that was told and then let go by would look as if the feeds were right for it.
    if strange and guide.duties:
        return OTHERWISE.format(", ".join(sorted(strange)))
    hours, weight = known.pop("age", None), known.pop("weight", None)
    if not isinstance(hours, float):
        return HOW
    if isinstance(weight, float) and weight > _heaviest(guide, hours):
        told, age = show(weight, "kg", system), show(hours, "h", system)
        return (
            f"weight: {told} can't be right at {age} old. Weigh it again; milk for it would be far too much."
        )
    law = own.get("law", holding.law)
    if law and law not in guide.laws:
        return f"There is no law '{law}'{nearest(law, guide.laws)}. There are {', '.join(guide.laws)}."
    eaten = read_measure(own["eaten"], "g", (0.0, 3000.0), system) if "eaten" in own else None
    if isinstance(eaten, Refused):
        return f"eaten: {eaten.why}"
    exact = any(pair.startswith("age=") and "born" in pair for pair in given)
    name, born = own.get("name", "this lamb"), _on_the_minute(now.moment - timedelta(hours=hours))
    lamb = Reared(
        # Two lambs that are only told of must not change each other's entries in a calendar.
        f"told {name} {born:%Y-%m-%d}",
        name,
        born,
        not exact,
        ((now.moment, weight),) if isinstance(weight, float) else (),
        ((now.moment, eaten.value / GRAMS),) if eaten else (),
        known,
        law,
        bag_of(holding),
    )
    return lamb, tuple(notes)


def _heaviest(guide: Guide, hours: float) -> float:
    """Return the weight (kg) above which a lamb of an age is a slip of the pen or the scale."""
    span = usual_span(guide, guide.findings["weight"], {"age": hours})
    return span[1] * TOO_HEAVY if span else float("inf")


def _on_the_minute(moment: datetime) -> datetime:
    """Return the whole minute before: hours are rounded, and a lamb told to be 42 days old is not 41."""
    return moment.replace(second=0, microsecond=0)
