"""Whatever a moved file brings, no page of it fails: names of another guide, and values that fit nothing."""

from __future__ import annotations

import random
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from tests.casebook.conftest import LAMB, NOW, opened_at
from tests.moving.made import file_of, read
from triage.casebook.rows import Case, Look, Observation
from triage.clock import Now
from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, Guide
from triage.moving.taking import Taken, take_in
from triage.observations.kinds import KINDS
from triage.page.lines import lay_out
from triage.session import Session
from triage.session.desk import House
from triage.session.keeping import Keeping
from triage.walk import Answer, Done, Move, Walk

HARD = ("hot", "", "{x}", "[red]\x1b[2J\u202e", 0.0, -1.0, 4.2, 39.3, 1e9, -1e9, 1e-300)
KEYS = [
    "o",
    "2",
    "?",
    "1",
    "b",
    "a",
    "b",
    "w",
    "b",
    "l",
    "1",
    "38.2",
    "b",
    "c",
    "b",
    "v",
    "b",
    "u",
    "l",
    "v",
    "b",
    "b",
    "39",
    "1",
    "d",
    "n",
    "o",
    "2",
    "l",
]


class Chance:
    """Invented lambs, made by chance."""

    def __init__(self, guide: Guide, seed: int) -> None:
        self.guide, self.chance = guide, random.Random(seed)

    def time(self) -> datetime:
        minutes = self.chance.choice([0, -60, -90_000, 600_000])
        return self.chance.choice([NOW + timedelta(minutes=minutes), datetime(1900, 1, 1, tzinfo=UTC)])

    def stray(self) -> Move:
        """A move that may fit no question at all."""
        if self.chance.random() < 0.2:
            return Done(self.chance.choice([*self.guide.nodes, "an-act-of-another-guide"]), self.time())
        choices = [name for finding in self.guide.findings.values() for name in finding.choices]
        value = self.chance.choice(
            [UNSURE, self.chance.choice(choices), *(each for each in HARD if each != "")]
        )
        finding = self.chance.choice([*self.guide.findings, "of-another-guide", "{x}"])
        return Answer(finding, value, self.chance.choice(["", "kept", "born 3:00"]), self.time())

    def moves(self) -> tuple[Move, ...]:
        """A walk by the guide, with strays among its moves."""
        walk = Walk(self.guide)
        for _ in range(self.chance.randrange(15)):
            node = walk.node
            if isinstance(node, Act):
                walk = walk.done(self.time())
            elif isinstance(node, Ask):
                finding = self.guide.findings[node.finding]
                known: list[Value] = [*finding.choices]
                value = self.chance.choice(known or [self.chance.uniform(*finding.plausible)])
                walk = walk.answer(value, "", self.time())
        moves = list(walk.moves)
        for _ in range(self.chance.randrange(5)):
            moves.insert(self.chance.randrange(len(moves) + 1), self.stray())
        return tuple(moves)

    def case(self, name: str) -> Case:
        begun = self.time()
        look = self.chance.choice([None, Look(begun, begun + timedelta(minutes=self.chance.randrange(9999)))])
        return Case(
            name, LAMB.id, begun, self.time(), self.chance.choice(["2026", "{e}"]), self.moves(), look
        )

    def note(self, name: str) -> Observation:
        names = sorted(
            {part.name for kind in KINDS.values() for part in kind.parts} | {"of-another-guide", "{}"}
        )
        parts = {self.chance.choice(names): self.chance.choice(HARD) for _ in range(self.chance.randrange(4))}
        kind = self.chance.choice([*KINDS, "a-kind-of-another-edition"])
        return Observation(name, LAMB.id, kind, self.time(), self.time(), parts)


@pytest.mark.parametrize("seed", range(8))
def test_every_page_shows_what_a_file_brings(seed: int, guide: Guide, tmp_path: Path) -> None:
    """The list, the lamb's story, the vet's page and the walk itself take any moved lamb as it is."""
    chance = Chance(guide, seed)
    book, other = (opened_at(tmp_path / name).book for name in ("from", "to"))
    lamb = replace(
        LAMB, name=f"Invented {seed} \x1b[2J[b]", birth_type="of-another-guide", born=chance.time()
    )
    cases = [chance.case(f"case-{number}") for number in range(4)]
    notes = [chance.note(f"note-{number}") for number in range(8)]
    for case in cases:
        book.begin(lamb, case)
    for note in notes:
        book.note(note)
    assert take_in(other, read(file_of(book, lamb))) == Taken(True, 4, 8, 0)
    book.close()

    held = Session(Walk(guide), clock=lambda: Now(NOW, UTC), house=House(Keeping(other)))
    shown = ""
    for key in KEYS:
        held.take(key)
        held.watch()
        shown += "".join(line.text for line in lay_out(held.page(), 80))

    assert f"Invented {seed}" in shown
    assert "\x1b" not in shown
    assert held.desk.keeping.why_not == ""
