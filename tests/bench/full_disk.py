"""A real disk that fills up under a session, again and again: what is told, and whether an answer is lost.

Mounts a file system of its own in memory, of 1 MB, and so has to be run as root. In each round the disk is
filled to a random rest, a session walks on it till it says that nothing is kept, then room is made again.

Run: python tests/bench/full_disk.py [ROUNDS] [SEED]
"""

from __future__ import annotations

import random
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.casebook.writer import forward
from triage.casebook.opening import Opened, open_casebook
from triage.casebook.rows import Case
from triage.commands.shared import open_guide
from triage.guide.model import Guide
from triage.session import Session
from triage.session.desk import House
from triage.session.keeping import Keeping
from triage.walk import Walk


def main() -> int:
    """Fill the disk so many times, and print what came of it."""
    rounds, seed = (int(sys.argv[at]) if len(sys.argv) > at else usual for at, usual in ((1, 50), (2, 1)))
    guide = open_guide(None)
    assert isinstance(guide, Guide)
    chance, told, lost, answers = random.Random(seed), Counter[str](), 0, 0
    for _ in range(rounds):
        with small_disk() as folder:
            came, kept, walked = fill_and_walk(guide, folder, chance)
            told[came] += 1
            answers += walked
            lost += walked - kept
    print(f"{rounds} full disks, {answers} answers given, {lost} of them lost once there was room")
    for why, count in told.items():
        print(f"{count} times told: {why}")
    return int(bool(lost))


@contextmanager
def small_disk() -> Iterator[Path]:
    """A file system of 1 MB."""
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(["mount", "-t", "tmpfs", "-o", "size=1m", "none", folder], check=True)
        try:
            yield Path(folder)
        finally:
            subprocess.run(["umount", folder], check=True)


def fill_and_walk(guide: Guide, folder: Path, chance: random.Random) -> tuple[str, int, int]:
    """Return what was told, how many answers the file holds afterwards, and how many were in hand."""
    filling = folder / "other-things"
    filling.write_bytes(bytes(max(0, shutil.disk_usage(folder).free - chance.randrange(500_000))))
    opened = open_casebook(folder / "casebook.sqlite")
    keeping = Keeping(opened.book) if isinstance(opened, Opened) else Keeping(None, opened.why)
    session = Session(Walk(guide), house=House(keeping))
    named: dict[str, int] = {}
    while not keeping.why_not:
        walk_on(session, guide, chance)
        if keeping.case and not keeping.why_not:
            named[keeping.case.id] = len(session.walk.moves)
    for _ in range(3):  # the guide goes on
        if not session.walk.finished:
            forward(session, chance)
    why = keeping.why_not
    if keeping.book is None:
        return f"at the start, {why}", 0, 0
    filling.unlink()
    session.watch()
    again = open_casebook(folder / "casebook.sqlite")
    assert isinstance(again, Opened), again
    assert again.told == "", again.told
    assert again.book.sound()
    assert keeping.case
    assert not keeping.why_not
    named[keeping.case.id] = len(session.walk.moves)
    found = {name: again.book.case(name) for name in named}
    kept = sum(len(case.moves) for case in found.values() if isinstance(case, Case))
    again.book.close()
    keeping.book.close()
    return why, kept, sum(named.values())


def walk_on(session: Session, guide: Guide, chance: random.Random) -> None:
    """Answer at random; at an end, begin with another lamb."""
    if session.walk.finished:
        session.desk.keeping.take_up(None, None, session.whole, session.desk.clock())
        session.take_up(Walk(guide))
    forward(session, chance)


if __name__ == "__main__":
    raise SystemExit(main())
