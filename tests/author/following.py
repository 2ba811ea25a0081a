"""Somebody who pastes what `triage new` prints, to the letter and in its order."""

from __future__ import annotations

import re
from pathlib import Path

from triage.author.pastes import ORDERS

ORDER = re.compile(
    rf"^(?P<file>[a-z/.-]+?)(?:, line (?P<line>\d+))?\. (?P<order>{'|'.join(map(re.escape, ORDERS.values()))})\n\n"
    r"(?P<lines>(?:.+\n)+)",
    re.MULTILINE,
)


def follow(folder: Path, printed: str) -> list[str]:
    """Do what was printed; the files that were changed or made, in order."""
    done = []
    for order in ORDER.finditer(printed):
        where = next(where for where, words in ORDERS.items() if words == order["order"])
        file = folder / order["file"]
        assert file.exists() == (where != "new"), file
        lines = file.read_text(encoding="utf-8").splitlines(keepends=True) if file.exists() else []
        at = int(order["line"]) - 1 if order["line"] else len(lines)
        first, last = {"above": (at, at), "below": (at + 1, at + 1), "instead": (at, at + 1)}.get(
            where, (at, at)
        )
        lines[first:last] = [order["lines"]]
        file.parent.mkdir(exist_ok=True)
        file.write_text("".join(lines), encoding="utf-8")
        done.append(order["file"])
    return done
