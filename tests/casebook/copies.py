"""A copy of the program that opens a casebook and begins walks in it, as fast as it can.

python -m tests.casebook.copies CASEBOOK NAME COUNT
Waits for a line on stdin, opens, writes, and prints how many walks were kept and what did not go well.
"""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

from tests.casebook.conftest import CASE, LAMB
from triage.casebook.book import Behind
from triage.casebook.failing import NotKept
from triage.casebook.opening import Opened, open_casebook
from triage.casebook.rows import Case


def main(path: Path, name: str, count: int) -> None:
    """Open and write."""
    print("ready", flush=True)
    sys.stdin.readline()
    opened = open_casebook(path)
    if not isinstance(opened, Opened):
        print(0, opened.why)
        return
    kept, why = 0, opened.told
    came: Case | Behind | NotKept
    for number in range(count):
        each = f"{name}-{number}"
        came = opened.book.begin(replace(LAMB, id=each), replace(CASE, id=each))
        if isinstance(came, Case):
            came = opened.book.keep(replace(came, moves=came.moves[:1]), CASE.begun)
        if isinstance(came, Case):
            kept += 1
        else:
            why = str(came)
    opened.book.close()
    print(kept, why)


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2], int(sys.argv[3]))
