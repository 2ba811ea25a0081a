"""Rows of the rules about suck and swallow, the tube, and looking before a feed."""

from __future__ import annotations

from tests.check.rule_pages import ALONE, FEED, NOW, TODAY, TUBE
from tests.check.rule_rows import (
    UNASKED,
    Lamb,
    Row,
    days,
    degc,
    each,
    hours,
    never_tags,
    one_unasked,
    row,
    says_with_sum,
    says_with_tag,
)
from triage.facts import UNSURE

NO_SUCK: Lamb = {"swallows": "swallows", "belly": "hollow", "age": days(2)}
REFUSING_AND_NO_SUCK: Lamb = {"reason": "refusing", "swallows": "swallows", "temperature": degc(39.5)}
OFF_ITS_MILK: Lamb = {"reason": "refusing", "belly": "hollow", "age": hours(12)}

ROWS: dict[str, Row] = {
    "no-tube-without-a-swallow": row(
        TUBE,
        [UNASKED, *each("swallows", "no-swallow", UNSURE)],
        each("swallows", "sucks", "swallows"),
    ),
    "no-bottle-without-a-swallow": row(
        never_tags("feed-by-mouth"),
        [UNASKED, *each("swallows", "no-swallow", UNSURE)],
        each("swallows", "sucks", "swallows"),
    ),
    "no-swallow-calls-now": row(
        NOW,
        each("swallows", "no-swallow", UNSURE),
        [UNASKED, *each("swallows", "sucks", "swallows")],
    ),
    "no-suck-calls-today": row(
        TODAY,
        [
            *each("swallows", "swallows"),
            *each("belly", "hollow", "swollen", UNSURE, of=NO_SUCK),
            *each("age", hours(6.1), days(30), UNSURE, of=NO_SUCK),
            {"swallows": "swallows", "belly": "hollow"},
            {"swallows": "swallows", "age": days(2)},
        ],
        [
            UNASKED,
            {"belly": "hollow", "age": days(2)},
            *each("swallows", "sucks", of=NO_SUCK),
            *each("belly", "soft", of=NO_SUCK),
            *each("age", hours(0), hours(5.9), hours(6), of=NO_SUCK),
        ],
    ),
    "refusing-without-a-suck-calls-today": row(
        TODAY,
        [
            *each("reason", "cold", "refusing", of=REFUSING_AND_NO_SUCK),
            *each("temperature", degc(39), degc(39.1), degc(43), UNSURE, of=REFUSING_AND_NO_SUCK),
        ],
        [
            UNASKED,
            *one_unasked(REFUSING_AND_NO_SUCK),
            *each("reason", "no-first-milk", "rejected", of=REFUSING_AND_NO_SUCK),
            *each("swallows", "sucks", of=REFUSING_AND_NO_SUCK),
            *each("temperature", degc(25), degc(38.6), degc(38.9), of=REFUSING_AND_NO_SUCK),
        ],
    ),
    "newborn-off-its-milk-calls-today": row(
        TODAY,
        [
            *each("reason", "cold", "refusing", of=OFF_ITS_MILK),
            *each("age", hours(6.1), hours(35.9), hours(36), UNSURE, of=OFF_ITS_MILK),
        ],
        [
            UNASKED,
            *one_unasked(OFF_ITS_MILK),
            *each("reason", "belly", "rejected", of=OFF_ITS_MILK),
            *each("belly", "soft", of=OFF_ITS_MILK),
            *each("age", hours(0), hours(5.9), hours(6), hours(36.1), days(5), of=OFF_ITS_MILK),
        ],
    ),
    "tube-only-by-a-taught-hand": row(says_with_tag("tube-feed", "taught"), [UNASKED]),
    "tube-is-never-pushed": row(
        says_with_tag(
            "tube-feed", "Never push the tube", nearly="Push the tube gently. Never push the bottle."
        ),
        [UNASKED],
    ),
    "first-feed-stops-at-a-cough": row(says_with_sum(("first-milk", "small-first-feed"), "cough"), [UNASKED]),
    "no-feed-before-looking": row(
        FEED, [UNASKED, *each("before-feed", UNSURE)], each("before-feed", "none", "sores")
    ),
    "no-feed-for-a-drooling-lamb": row(
        FEED, [UNASKED, *each("before-feed", "drooling")], each("before-feed", "none", "sores")
    ),
    "no-feed-with-milk-at-the-nose": row(
        FEED, [UNASKED, *each("before-feed", "milk-nose")], each("before-feed", "none", "sores")
    ),
    "no-feed-through-a-cleft": row(
        FEED, [UNASKED, *each("before-feed", "cleft")], each("before-feed", "none", "sores")
    ),
    "mouth-trouble-calls-today": row(
        TODAY, each("before-feed", "milk-nose", "cleft"), [UNASKED, *each("before-feed", "none")]
    ),
    "sores-call-today": row(TODAY, each("before-feed", "sores"), [UNASKED, *each("before-feed", "none")]),
    "sores-stay-apart": row(ALONE, each("before-feed", "sores"), [UNASKED, *each("before-feed", "none")]),
}
