"""A program that walks and keeps without end, to be killed: it names each answer after it is kept.

python -m tests.casebook.writer CASEBOOK SEED
Prints `case count` once that many answers of the case are on the disk, and `back` before it takes one
back. Its walks are taken at random through
the shipped guide by the session itself, as the screens do it.
"""

from __future__ import annotations

import random
import sys
from pathlib import Path

from triage.casebook.opening import Opened, open_casebook
from triage.commands.shared import open_guide
from triage.guide.model import Act, Ask, Guide
from triage.session import Session
from triage.session.desk import House
from triage.session.keeping import Keeping
from triage.walk import Walk


def main(path: Path, seed: int) -> None:
    """Walk lamb after lamb, until killed."""
    chance = random.Random(seed)
    guide = open_guide(None)
    assert isinstance(guide, Guide)
    opened = open_casebook(path)
    assert isinstance(opened, Opened), opened
    print("open", flush=True)
    session = Session(Walk(guide), house=House(Keeping(opened.book)))
    while True:
        if session.walk.finished:
            session.desk.keeping.take_up(None, None, session.whole, session.desk.clock())
            session.take_up(Walk(guide))
        forward(session, chance)
        tell(session)
        if len(session.walk.moves) > 2 and chance.random() < 0.1:
            print("back", flush=True)
            session.take("b")
            tell(session)


def tell(session: Session) -> None:
    """Name the last answer that is kept."""
    case = session.desk.keeping.case
    assert case is not None
    assert not session.desk.keeping.why_not
    print(case.id, len(case.moves), flush=True)


def forward(session: Session, chance: random.Random) -> None:
    """Answer at random."""
    node = session.walk.node
    if isinstance(node, Act):
        session.take("d")
    elif isinstance(node, Ask):
        finding = session.walk.guide.findings[node.finding]
        if finding.choices:
            session.take(str(chance.randint(1, len(finding.choices))))
        else:
            session.take("n")


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]))
