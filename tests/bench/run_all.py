"""Every measuring script in one run, as one table; exit 1 when any limit is exceeded.

Each part's title names its own baseline, timed in the same run and in turns with what it stands beside.

Run: python tests/bench/run_all.py
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench import book, lazy, memory, paint, practice, printing, read, start
from tests.bench.figures import Figure, report

# Memory comes first, while this script itself is small.
SCRIPTS = (memory, lazy, read, start, paint, practice, printing, book)


def main() -> int:
    """Run them in turn and print the table."""
    sections: list[tuple[str, Sequence[Figure]]] = []
    for script in SCRIPTS:
        print(f"{script.TITLE} ...", file=sys.stderr, flush=True)
        sections.append((script.TITLE, script.measure()))
    return report(*sections)


if __name__ == "__main__":
    raise SystemExit(main())
