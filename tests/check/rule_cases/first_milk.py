"""Rows of the rules about first milk."""

from __future__ import annotations

from tests.check.rule_cases.pages import NOW, TODAY
from tests.check.rule_rows import (
    UNASKED,
    Lamb,
    Row,
    days,
    each,
    hours,
    never_shows,
    one_unasked,
    row,
    says_with_sum,
)
from triage.facts import UNSURE

LATE: Lamb = {"first-milk-had": "none", "age": hours(10)}
NONE_YET: Lamb = {"reason": "no-first-milk", "age": hours(10)}
NO_GUARD_NO_SUCK: Lamb = {"reason": "no-first-milk", "swallows": "swallows", "age": hours(30)}

ROWS: dict[str, Row] = {
    "no-first-milk-promised-too-late": row(
        never_shows("first-milk", "first-milk-day", "first-milk-day-cold", "first-milk-count"),
        [UNASKED, *each("age", hours(36.1), days(14))],
        each("age", hours(0), hours(35.9), hours(36)),
    ),
    "late-first-milk-calls-today": row(
        TODAY,
        [
            *each("first-milk-had", "none", UNSURE, of=LATE),
            *each("age", hours(6.1), days(3), UNSURE, of=LATE),
        ],
        [
            UNASKED,
            *one_unasked(LATE),
            *each("first-milk-had", "had", of=LATE),
            *each("age", hours(0), hours(5.9), hours(6), of=LATE),
        ],
    ),
    "no-first-milk-yet-calls-today": row(
        TODAY,
        each("age", hours(6.1), days(3), UNSURE, of=NONE_YET),
        [
            UNASKED,
            *one_unasked(NONE_YET),
            *each("reason", "refusing", "rejected", of=NONE_YET),
            *each("age", hours(0), hours(5.9), hours(6), of=NONE_YET),
        ],
    ),
    "no-guard-and-no-suck-calls-now": row(
        NOW,
        each("age", hours(12.1), hours(30), hours(71.9), hours(72), UNSURE, of=NO_GUARD_NO_SUCK),
        [
            UNASKED,
            *one_unasked(NO_GUARD_NO_SUCK),
            *each("reason", "refusing", "rejected", of=NO_GUARD_NO_SUCK),
            *each("swallows", "sucks", of=NO_GUARD_NO_SUCK),
            *each("age", hours(0), hours(11.9), hours(12), hours(72.1), days(13), of=NO_GUARD_NO_SUCK),
        ],
    ),
    "first-milk-not-heated": row(says_with_sum(("first-milk",), "microwave", "boil"), [UNASKED]),
    "first-milk-only-from-well-ewes": row(
        says_with_sum(
            ("first-milk",), "aborted", "or is ill", nearly="Not if she aborted, or is lame. She is ill."
        ),
        [UNASKED],
    ),
    "newborn-fluids-harm-pregnancy": row(says_with_sum(("first-milk",), "pregnant"), [UNASKED]),
}
