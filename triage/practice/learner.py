"""One helper at practice: what was done, what is remembered, and the round in hand, each kept at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime

from triage.casebook.failing import NotKept
from triage.casebook.practice import FINISHED, Helper, KeptCard, KeptRound, PracticeBook
from triage.casebook.rows import new_id
from triage.guide.model import Guide
from triage.practice.dealing import Dealer, Past, Played
from triage.practice.faults import Score
from triage.practice.memory import Remembered, after_round, reviewed, scheduler_of
from triage.practice.questions import Posed
from triage.practice.readiness import Shown
from triage.practice.round import Round, replay
from triage.practice.scoring import score
from triage.practice.stored import (
    card_from,
    card_row,
    case_from,
    case_parts,
    given_from,
    given_text,
    score_parts,
    shown_by,
)


@dataclass
class Learner:
    """What is known of one helper. Without a book everything is held as long as the program runs."""

    helper: Helper
    book: PracticeBook | None = None
    why_not: str = ""
    """Why the last writing was not kept."""
    shown: list[Shown] = field(default_factory=list)
    kept: dict[str, Remembered] = field(default_factory=dict)
    _row: KeptRound | None = None
    _waiting: list[tuple[KeptRound, list[KeptCard]]] = field(default_factory=list)
    """What could not be written yet; it is written with what comes next."""

    @classmethod
    def of(cls, helper: Helper, book: PracticeBook | None) -> Learner:
        """Return a helper with all that is kept of it."""
        learner = cls(helper, book)
        if book is None:
            return learner
        rounds, cards = book.rounds_of(helper.id), book.cards_of(helper.id)
        if isinstance(rounds, NotKept) or isinstance(cards, NotKept):
            # Nothing is written over what could not be read.
            learner.book, learner.why_not = (
                None,
                rounds.why if isinstance(rounds, NotKept) else "it can't be read",
            )
            return learner
        learner.shown = [shown for each in rounds if (shown := shown_by(each))]
        learner.kept = {card.card: card for each in cards if (card := card_from(each))}
        return learner

    def past(self, guide: Guide) -> Past:
        """Return what dealing goes by."""
        top = guide.top
        return Past(
            [Played(each.case, each.page, frozenset(each.asked), each.urgency == top) for each in self.shown],
            self.kept,
        )

    def begin(self, posed: Posed, now: datetime) -> Round:
        """Begin a round."""
        case = posed.case
        edition = case.walk.guide.front.edition
        self._row = KeptRound(new_id(), self.helper.id, now, edition, case_parts(case))
        played = Round(posed)
        self.give(played)
        return played

    def resume(self, dealer: Dealer) -> Round | None:
        """Return the round that was left in the middle; one that no longer fits the guide is forgotten."""
        row = self.book.open_round(self.helper.id) if self.book else None
        if self.book is None or row is None or isinstance(row, NotKept):
            return None
        case = case_from(dealer.guide, row.parts)
        if case is None:
            if row.edition != dealer.guide.front.edition:
                self.book.drop_round(row.id)
            return None
        self._row = row
        return replay(dealer.pose(case), given_from(str(row.parts.get("given", ""))))

    def give(self, played: Round) -> None:
        """Keep a round as it now stands."""
        if self._row is not None:
            self._row = replace(self._row, parts={**self._row.parts, "given": given_text(played)})
            self._keep()

    def finish(self, played: Round, now: datetime) -> Score:
        """Score a finished round, and keep what came of it before anybody is told."""
        came = score(played)
        changed = after_round(self.kept, came, now)
        edition = played.posed.case.walk.guide.front.edition
        row = self._row or KeptRound(new_id(), self.helper.id, now, edition, case_parts(played.posed.case))
        page = {"page": played.posed.case.page.name, "given": given_text(played)}
        self._row = replace(row, ended=now, parts={**row.parts, **page, **score_parts(came)})
        self._keep(list(changed.values()))
        if self.why_not != FINISHED.why:
            self.kept |= changed
            self.shown += [shown for shown in (shown_by(self._row),) if shown]
        self._row = None
        return came

    def drilled(self, knew: Mapping[str, bool], now: datetime) -> None:
        """Take what a drill has shown of single cards."""
        plan = scheduler_of()
        changed = {
            card: reviewed(self.kept.get(card), card, known, now, plan) for card, known in knew.items()
        }
        self.kept |= changed
        if self.book:
            came = self.book.keep_cards(self.helper, [card_row(card) for card in changed.values()])
            self.why_not = came.why if isinstance(came, NotKept) else ""

    def flush(self) -> None:
        """Write what could not be written before, if that can be done now."""
        while self.book and self._waiting:
            came = self.book.keep_round(self.helper, *self._waiting[0])
            self.why_not = came.why if isinstance(came, NotKept) else ""
            if self.why_not and came != FINISHED:
                return
            del self._waiting[0]

    def _keep(self, changed: Sequence[Remembered] = ()) -> None:
        if self.book is None or self._row is None:
            return
        self._waiting = [each for each in self._waiting if each[0].id != self._row.id]
        self._waiting.append((self._row, [card_row(card) for card in changed]))
        self.flush()
