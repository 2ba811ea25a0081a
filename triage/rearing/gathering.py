"""A kept lamb as a plan takes it: card, weighings, what was written down, and the holding's bag and law."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from typing import NamedTuple

from triage.casebook.rows import Lamb, Observation
from triage.facts import UNSURE, Value
from triage.holding.holding import Holding
from triage.observations.kinds import UNDECIDED
from triage.rearing.reared import Bag, Reared
from triage.walk import Answer, Move
from triage.weighings import weighings

ASKED = {"kept": "keep-as", "tail": "tail", "dam": "dam-vaccine"}
"""The parts of the observation `raising`, and the finding each answers."""

NO_BIRTH = "Its age is not known, so nothing can be dated. Give it on the lamb's card: l, then c."

GRAMS = 1000

KEPT = {"ewe": "ewe", "wether": "castrated"}
"""What a card's sex tells of what it is kept as. A ram lamb may still become a wether: it tells nothing."""

HAD = "first-milk-had"
FIRST_MILKS = ("first-milk", "ewes-milk")
MILKS = (*FIRST_MILKS, "milk")
"""What a feed was, among the choices of the observation `feed`."""


class Given(NamedTuple):
    """A feed that was written down: when, what, and how much in ml."""

    at: datetime
    what: str
    ml: float


def reared_of(
    lamb: Lamb, moves: Iterable[Move], observations: Iterable[Observation], holding: Holding
) -> Reared | str:
    """Return the lamb for a plan, or a sentence on what is lacking."""
    if lamb.born is None:
        return NO_BIRTH
    walked, seen = tuple(moves), tuple(observations)
    return Reared(
        lamb.id,
        lamb.name,
        lamb.born,
        lamb.born_guessed,
        tuple(weighings(walked, seen)),
        tuple(
            (each.at, value / GRAMS)
            for each in sorted(seen, key=lambda each: each.at)
            if each.kind == "eaten"
            for value in each.parts.values()
            if isinstance(value, float)
        ),
        _known(lamb, walked, seen),
        holding.law,
        bag_of(holding),
        fed=tuple((each.at, each.ml) for each in fed_of(seen) if each.what in MILKS),
        weaned=max((each.at for each in seen if each.kind == "weaned"), default=None),
    )


def fed_of(seen: Iterable[Observation]) -> tuple[Given, ...]:
    """Return every feed that was written down and went in, the oldest first."""
    given = []
    for each in seen:
        amount = each.parts.get("amount") if each.kind == "feed" else None
        if isinstance(amount, float) and amount > 0:
            given.append(Given(each.at, str(each.parts.get("what", "")), amount))
    return tuple(sorted(given))


def bag_of(holding: Holding) -> Bag | None:
    """Return the holding's bag, None where any of its rate is not kept: half a rate is a wrong mix."""
    if holding.bag_powder is None or holding.bag_water is None or not holding.bag_way:
        return None
    return Bag(holding.bag_powder, holding.bag_water, holding.bag_way)


def _known(lamb: Lamb, moves: tuple[Move, ...], seen: tuple[Observation, ...]) -> dict[str, Value]:
    """Return what is known for the plan; what was written down last counts."""
    known: dict[str, Value] = {}
    if lamb.birth_type:
        known["birth-type"] = lamb.birth_type
    if lamb.sex in KEPT:
        known["keep-as"] = KEPT[lamb.sex]
    told = [move.value for move in moves if isinstance(move, Answer) and move.finding == HAD]
    if told:
        known[HAD] = told[-1]
    # A lamb that had none of its mother's milk has none of her cover either.
    if "none" in told:
        known["dam-vaccine"] = "uncovered"
    if any(each.what in FIRST_MILKS for each in fed_of(seen)):
        known[HAD] = "had"
    for each in sorted(seen, key=lambda each: each.at):
        if each.kind != "raising":
            continue
        for part, finding in ASKED.items():
            value = each.parts.get(part)
            if isinstance(value, str) and value:
                known[finding] = UNSURE if value == UNDECIDED else value
    return known
