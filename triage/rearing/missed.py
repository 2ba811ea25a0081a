"""A missed feed: caught up safely, and never doubled."""

from __future__ import annotations

from triage.rearing.feeding import Milk
from triage.rearing.reared import Basis
from triage.units import bottle_mark

FIRST_DAY = 24
"""Hours in which a feed is first milk, and none may be let go."""


def after_missed(basis: Basis, milk: Milk, missed: int) -> tuple[str, ...]:
    """Return what to do after so many feeds in a row were missed.

    The next feed is the usual one. What was missed is spread over the feeds left, none of them above the
    ceiling by weight, and what does not fit is let go: a lamb can spare a feed, and not a burst belly.
    """
    if missed < 1:
        return ()
    if basis.lamb.ill:
        return (basis.lamb.ill, "What was missed is made up by that page, or not at all.")
    newborn = basis.lamb.hours(basis.now.moment) < FIRST_DAY
    many = missed >= basis.number("missed-feeds")
    lines = [_first_look(missed, many, newborn)]
    first = "When the guide lets you feed it, give" if many or newborn else "Then give"
    lines.append(f"{first} the usual {milk.each}. Never give two feeds in one.")
    most = min(milk.kg * basis.number("feed-ceiling"), basis.number("feed-most"))
    room = bottle_mark(most, basis.system)
    if newborn:
        lines.append(
            "First milk is not let go: give one more feed later, after the usual gap, and never a larger one."
        )
    elif room > milk.each_ml and not many:
        lines.append(
            f"Each feed after it today may be up to {basis.show(room, 'ml')}, if it asks for more, and "
            f"all of the day no more than {milk.day}. Then as usual."
        )
    else:
        lines.append("The feeds after it stay as they are. What was missed is let go.")
    return tuple(lines)


def _first_look(missed: int, many: bool, newborn: bool) -> str:
    """Return what to look at before the feed: a hungry lamb cools, and milk kills one that is cold."""
    if many:
        return (
            f"{missed} feeds in a row are too many to miss. Take its temperature first, and open the guide "
            "before you feed it. If it would not drink, phone the vet today."
        )
    if newborn:
        return (
            "In its first day no feed can be spared. Take its temperature first, and open the guide before "
            "you feed it."
        )
    return "Is it up, with a warm mouth and a soft belly, and does it suck? If not, open the guide first."
