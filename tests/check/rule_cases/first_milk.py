"""Rows of the rules about first milk."""

from __future__ import annotations

from tests.check.rule_pages import NOW, TODAY
from tests.check.rule_rows import (
    NOT_ASKED,
    UNASKED,
    Lamb,
    Page,
    Pages,
    Row,
    days,
    each,
    hours,
    kg,
    never_shows,
    one_unasked,
    row,
    says_with_sum,
)
from triage.facts import UNSURE

LATE: Lamb = {"first-milk-had": "none", "age": hours(10)}
NONE_YET: Lamb = {"reason": "no-first-milk", "age": hours(10)}
NO_GUARD_NO_SUCK: Lamb = {"reason": "no-first-milk", "swallows": "swallows", "age": hours(30)}
UNFED_AND_MILK_AT_NOSE: Lamb = {"reason": "no-first-milk", "before-feed": "milk-nose"}
GUESSED_WEIGHT: Lamb = {"weight": UNSURE, "birth-type": NOT_ASKED, "age": hours(10)}

OLDER_ORPHAN: Lamb = {"reason": "rejected", "age": days(20)}
YOUNG_ORPHAN: Lamb = {"reason": "rejected", "age": hours(20), "first-milk-had": NOT_ASKED}
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
    "unfed-newborn-with-milk-at-the-nose-calls-now": row(
        NOW,
        [UNFED_AND_MILK_AT_NOSE],
        [
            UNASKED,
            *one_unasked(UNFED_AND_MILK_AT_NOSE),
            *each("reason", "refusing", "rejected", of=UNFED_AND_MILK_AT_NOSE),
            *each("before-feed", "none", of=UNFED_AND_MILK_AT_NOSE),
        ],
    ),
    "orphan-in-its-first-week-is-asked-for-first-milk": row(
        Pages(
            (Page(shows=("milk-feed",)), Page(shows=("milk-feed",), act=True)),
            (Page(("feed-by-mouth",)), Page(shows=("first-milk", "milk-day"))),
        ),
        each("age", hours(0), days(6.9), days(7), UNSURE, of=YOUNG_ORPHAN),
        [
            UNASKED,
            *one_unasked({name: YOUNG_ORPHAN[name] for name in ("reason", "age")}),
            *each("age", days(7.1), days(30), of=YOUNG_ORPHAN),
            *each("reason", "no-first-milk", "refusing", of=YOUNG_ORPHAN),
            *each("first-milk-had", "had", "none", UNSURE, of=YOUNG_ORPHAN),
        ],
    ),
    "older-orphan-is-not-called-unfed": row(
        Pages(
            (
                Page(says=("A lamb with no first milk.",)),
                Page(says=("A lamb with no first milk.",), act=True),
            ),
            (Page(), Page(says=("It had no first milk.",))),
        ),
        each("age", days(7.1), days(30), of=OLDER_ORPHAN),
        [
            UNASKED,
            *one_unasked(OLDER_ORPHAN),
            *each("age", days(7), UNSURE, of=OLDER_ORPHAN),
            *each("reason", "no-first-milk", of=OLDER_ORPHAN),
        ],
    ),
    "a-guessed-weight-asks-how-many-were-born": row(
        never_shows("first-milk"),
        each("age", hours(0), hours(35.9), hours(36), hours(36.1), days(30), of=GUESSED_WEIGHT),
        [
            UNASKED,
            *each("weight", UNSURE),
            *each("age", hours(10), hours(40)),
            *each("weight", kg(0.8), kg(4), kg(60), of=GUESSED_WEIGHT),
            *each("birth-type", "single", "twin", "triplet", UNSURE, of=GUESSED_WEIGHT),
            *each("age", NOT_ASKED, UNSURE, of=GUESSED_WEIGHT),
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
