"""Rows of the rules about a swollen belly, and about what a lamb passes."""

from __future__ import annotations

from tests.check.rule_pages import FEED, NOW, TAKES_MILK_AWAY, TODAY
from tests.check.rule_rows import UNASKED, Lamb, Row, days, each, hours, one_unasked, row
from triage.facts import UNSURE

FULL_AND_NO_SUCK: Lamb = {"reason": "belly", "belly": "soft", "swallows": "swallows"}
NO_DUNG: Lamb = {"passing": "no-dung", "age": hours(30)}
NO_DUNG_NO_SUCK: Lamb = {"passing": "no-dung", "swallows": "swallows", "age": hours(30)}

ROWS: dict[str, Row] = {
    "no-feed-into-a-swollen-belly": row(
        FEED, [UNASKED, *each("before-feed", "swollen")], each("before-feed", "none", "sores")
    ),
    "no-feed-into-a-belly-felt-swollen": row(
        FEED, each("belly", "swollen", UNSURE), [UNASKED, *each("belly", "hollow", "soft")]
    ),
    "no-feed-into-a-tight-belly": row(
        FEED, [UNASKED, *each("danger", "tight-belly")], each("danger", "none", "limp")
    ),
    "swollen-or-drooling-calls-now": row(
        NOW,
        each("before-feed", "swollen", "drooling", UNSURE),
        [UNASKED, *each("before-feed", "milk-nose", "cleft", "sores", "none")],
    ),
    "belly-felt-swollen-calls-now": row(
        NOW, each("belly", "swollen", UNSURE), [UNASKED, *each("belly", "hollow", "soft")]
    ),
    "full-belly-and-no-suck-calls-now": row(
        NOW,
        [FULL_AND_NO_SUCK],
        [
            UNASKED,
            *one_unasked(FULL_AND_NO_SUCK),
            *each("reason", "refusing", "rejected", of=FULL_AND_NO_SUCK),
            *each("belly", "hollow", of=FULL_AND_NO_SUCK),
            *each("swallows", "sucks", of=FULL_AND_NO_SUCK),
        ],
    ),
    "swollen-page-takes-milk-away": row(
        TAKES_MILK_AWAY,
        each("before-feed", "swollen", "drooling"),
        [UNASKED, *each("before-feed", "sores", "none")],
    ),
    "belly-felt-swollen-page-takes-milk-away": row(
        TAKES_MILK_AWAY, each("belly", "swollen", UNSURE), [UNASKED, *each("belly", "hollow", "soft")]
    ),
    "tight-page-takes-milk-away": row(
        TAKES_MILK_AWAY, each("danger", "tight-belly"), [UNASKED, *each("danger", "none")]
    ),
    "no-feed-when-it-cannot-pass": row(
        FEED, each("passing", "no-urine", "no-anus"), [UNASKED, *each("passing", "usual", "no-dung")]
    ),
    "cannot-pass-calls-now": row(
        NOW, each("passing", "no-urine", "no-anus"), [UNASKED, *each("passing", "usual", "no-dung", UNSURE)]
    ),
    "no-feed-when-passing-is-in-doubt": row(
        FEED, each("passing", UNSURE), [UNASKED, *each("passing", "usual")]
    ),
    "not-sure-what-it-passes-calls-today": row(
        TODAY, each("passing", UNSURE), [UNASKED, *each("passing", "usual")]
    ),
    "no-feed-with-no-dung": row(
        FEED,
        [*each("age", hours(12.1), days(30), UNSURE, of=NO_DUNG), *each("passing", "no-dung")],
        [
            UNASKED,
            {"age": hours(30)},
            *each("passing", "usual", of=NO_DUNG),
            *each("age", hours(0), hours(11.9), hours(12), of=NO_DUNG),
        ],
    ),
    "no-dung-and-no-suck-calls-now": row(
        NOW,
        each("age", hours(12.1), hours(30), hours(71.9), hours(72), UNSURE, of=NO_DUNG_NO_SUCK),
        [
            UNASKED,
            *one_unasked(NO_DUNG_NO_SUCK),
            *each("passing", "usual", of=NO_DUNG_NO_SUCK),
            *each("swallows", "sucks", of=NO_DUNG_NO_SUCK),
            *each("age", hours(0), hours(11.9), hours(12), hours(72.1), days(13), of=NO_DUNG_NO_SUCK),
        ],
    ),
}
