"""A kept lamb as a plan takes it: card, weighings, what was written down, and the holding's bag and law."""

from __future__ import annotations

from collections.abc import Iterable

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
    )


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
    if lamb.sex:
        known["keep-as"] = lamb.sex
    # A lamb that had none of its mother's milk has none of her cover either.
    if any(
        isinstance(move, Answer) and (move.finding, move.value) == ("first-milk-had", "none")
        for move in moves
    ):
        known["dam-vaccine"] = "uncovered"
    for each in sorted(seen, key=lambda each: each.at):
        if each.kind != "raising":
            continue
        for part, finding in ASKED.items():
            value = each.parts.get(part)
            if isinstance(value, str) and value:
                known[finding] = UNSURE if value == UNDECIDED else value
    return known
