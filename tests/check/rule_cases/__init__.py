"""For each rule of the guide the lambs that it must stop, and lambs that it must leave alone.

The lambs were typed from what each rule is for and from the published figures, and held against its
`when` only after. Where a rule asks less than its words might, the lambs in question stand in neither
list, so that it can be tightened, or its row keeps to the rule: a page relies on that, or another rule
holds the lamb. Each line of a number is probed just below, on it and just above.
"""

from __future__ import annotations

from importlib import import_module
from pkgutil import iter_modules

from tests.check.rule_rows import Row

TABLES: tuple[dict[str, Row], ...] = tuple(
    import_module(f"{__name__}.{each.name}").ROWS for each in iter_modules(__path__)
)
"""The table of each module in this folder; a new one is found by being there."""

ROWS: dict[str, Row] = {name: row for table in TABLES for name, row in table.items()}
