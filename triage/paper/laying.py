"""Laying pieces on sheets: nothing is torn, no heading stands alone, a table's head goes with it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from triage.paper.pieces import ROOM, SHORT, TURN, Part, Piece, Rows


@dataclass(frozen=True)
class Laid:
    """One sheet: its HTML, and the height in mm that was counted."""

    html: str
    high: float


@dataclass
class _Laying:
    """The sheets that are full, and what stands on the one that is being filled."""

    full: list[Laid] = field(default_factory=list)
    here: list[str] = field(default_factory=list)
    used: float = 0.0

    @property
    def room(self) -> float:
        return ROOM - self.used

    def put(self, html: str, tall: float) -> None:
        self.here.append(html)
        self.used += tall

    def turn(self) -> None:
        """Begin a new sheet, unless this one is empty."""
        if self.here:
            self.full.append(Laid("".join(self.here), self.used))
            self.here, self.used = [], 0.0


def laid(parts: Iterable[Part]) -> tuple[Laid, ...]:
    """Lay parts on sheets."""
    flow, laying = tuple(parts), _Laying()
    for at, part in enumerate(flow):
        if part is TURN or _least(flow[at:]) > laying.room:
            laying.turn()
        if isinstance(part, Rows):
            _lay_rows(part, laying)
        elif part is not TURN:
            laying.put(part.html, part.high)
    laying.turn()
    return tuple(laying.full)


def _least(flow: Sequence[Part]) -> float:
    """Return the height that must be free for the first part to stand where it is."""
    needed = 0.0
    for part in flow:
        if isinstance(part, Rows):
            tall = part.head.high + sum(each.high for each in part.rows)
            return needed + (tall if tall <= SHORT else part.head.high + part.rows[0].high)
        needed += part.high
        if not part.leads:
            return needed
    return needed


def _lay_rows(table: Rows, laying: _Laying) -> None:
    """Lay as many rows on a sheet as fit, and go on with the rest on the next one, under the same head."""
    rows: list[Piece] = []
    tall = table.head.high
    for each in table.rows:
        if rows and tall + each.high > laying.room:
            laying.put(_table(table, rows), tall)
            laying.turn()
            rows, tall = [], table.head.high
        rows.append(each)
        tall += each.high
    laying.put(_table(table, rows), tall)


def _table(table: Rows, rows: Iterable[Piece]) -> str:
    columns = "".join(f'<col style="width:{width:g}mm">' for width in table.columns)
    named = f' class="{table.name}"' if table.name else ""
    body = "".join(each.html for each in rows)
    return (
        f"<table{named}><colgroup>{columns}</colgroup>"
        f"<thead>{table.head.html}</thead><tbody>{body}</tbody></table>"
    )
