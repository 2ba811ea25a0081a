"""The rooms that open over the walk, each by its name. Loaded when one is first opened."""

from __future__ import annotations

from typing import TYPE_CHECKING

from triage.session.desk import Room

if TYPE_CHECKING:
    from triage.session.session import Session


def room_for(name: str, session: Session) -> Room:
    """Return a new room: lambs, lamb, card, plan, vet, holding or reading."""
    match name:
        case "lambs":
            from triage.session.lambs import LambsRoom

            return LambsRoom(session)
        case "lamb":
            from triage.session.lamb import LambRoom

            return LambRoom(session)
        case "card":
            from triage.session.cards import CardRoom

            return CardRoom(session)
        case "plan":
            from triage.session.plan import PlanRoom

            return PlanRoom(session)
        case "vet":
            from triage.session.vet import VetRoom

            return VetRoom(session)
        case "holding":
            from triage.session.holding import HoldingRoom

            return HoldingRoom(session)
        case "reading":
            from triage.session.reading import reading_room

            return reading_room(session)
    raise LookupError(name)
