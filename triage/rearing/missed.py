"""A missed feed: caught up safely, and never doubled."""

from __future__ import annotations

from triage.rearing.feeding import Milk
from triage.rearing.reared import Basis
from triage.units import bottle_mark


def after_missed(basis: Basis, milk: Milk, missed: int) -> tuple[str, ...]:
    """Return what to do after so many feeds in a row were missed.

    The next feed is the usual one. What was missed is spread over the feeds left, none of them above the
    ceiling by weight, and what does not fit is let go: a lamb can spare a feed, and not a burst belly.
    """
    if missed < 1:
        return ()
    lines, ill = [], missed >= basis.number("missed-feeds")
    if ill:
        lines.append(
            f"{missed} feeds in a row are too many to miss. Take its temperature first, and open the guide "
            "before you feed it. If it would not drink, phone the vet today."
        )
    first = "When the guide lets you feed it, give" if ill else "Give the next feed now,"
    lines.append(f"{first} the usual {milk.each}. Never give two feeds in one.")
    most = min(milk.kg * basis.number("feed-ceiling"), basis.number("feed-most"))
    room = bottle_mark(most, basis.system)
    if room > milk.each_ml and not ill:
        lines.append(
            f"Each feed after it today may be up to {basis.show(room, 'ml')}, if it asks for more. "
            "Then as usual."
        )
    else:
        lines.append("The feeds after it stay as they are. What was missed is let go.")
    return tuple(lines)
