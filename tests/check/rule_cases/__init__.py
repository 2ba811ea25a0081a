"""For each rule of the guide the lambs that it must stop, and lambs that it must leave alone.

The lambs were typed from what each rule is for and from the published figures, and held against its
`when` only after. Where a rule asks less than its words might, the lambs in question stand in neither
list, so that it can be tightened, or its row keeps to the rule: a page relies on that, or another rule
holds the lamb. Each line of a number is probed just below, on it and just above.
"""

from __future__ import annotations

from tests.check.rule_cases import belly, cold, danger, feeding, fever, first_milk, hurt, manner, scours
from tests.check.rule_rows import Row

TABLES = tuple(each.ROWS for each in (cold, fever, danger, feeding, belly, scours, first_milk, manner, hurt))
ROWS: dict[str, Row] = {name: row for table in TABLES for name, row in table.items()}
