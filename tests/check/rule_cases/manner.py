"""Rows of the rules about how a lamb is, about the ewe, and about medicine."""

from __future__ import annotations

from tests.check.rule_pages import FEED, NOW, TODAY, TUBE, WATCH
from tests.check.rule_rows import (
    UNASKED,
    Lamb,
    Row,
    days,
    each,
    hours,
    never_tags,
    one_unasked,
    row,
    says_with_tag,
)
from triage.facts import UNSURE

DULL_NEWBORN: Lamb = {"manner": "dull", "age": days(3)}
DULL_AND_NO_SUCK: Lamb = {"manner": "dull", "swallows": "swallows"}

ROWS: dict[str, Row] = {
    "dull-calls-today": row(
        TODAY, each("manner", "dull", "sore", UNSURE), [UNASKED, *each("manner", "bright")]
    ),
    "dull-newborn-calls-now": row(
        NOW,
        [
            *each("manner", "dull", UNSURE, of=DULL_NEWBORN),
            *each("age", hours(0), days(6.9), of=DULL_NEWBORN),
        ],
        [
            UNASKED,
            {"age": days(3)},
            *each("manner", "bright", of=DULL_NEWBORN),
            *each("age", days(7), days(7.1), days(30), of=DULL_NEWBORN),
        ],
    ),
    "dull-without-a-suck-calls-now": row(
        NOW,
        each("manner", "dull", UNSURE, of=DULL_AND_NO_SUCK),
        [
            UNASKED,
            *one_unasked(DULL_AND_NO_SUCK),
            *each("manner", "bright", of=DULL_AND_NO_SUCK),
            *each("swallows", "sucks", of=DULL_AND_NO_SUCK),
        ],
    ),
    "no-feed-for-a-dull-newborn": row(
        FEED,
        [
            *each("manner", "dull", UNSURE, of=DULL_NEWBORN),
            *each("age", hours(0), days(6.9), of=DULL_NEWBORN),
        ],
        [
            UNASKED,
            {"age": days(3)},
            *each("manner", "bright", of=DULL_NEWBORN),
            *each("age", days(7), days(7.1), days(30), of=DULL_NEWBORN),
        ],
    ),
    "no-tube-for-a-dull-or-stiff-lamb": row(
        TUBE, each("manner", "dull", "sore", UNSURE), [UNASKED, *each("manner", "bright", "missed")]
    ),
    "missed-feeds-call-today": row(TODAY, each("manner", "missed"), [UNASKED, *each("manner", "bright")]),
    "care-here-means-seen-bright": row(
        WATCH, [UNASKED, *each("manner", "missed", "dull", "sore", UNSURE)], each("manner", "bright")
    ),
    "a-lamb-in-trouble-is-watched": row(
        WATCH,
        each("reason", "cold", "refusing", "scours", "belly", "no-first-milk", "other"),
        [UNASKED, *each("reason", "rejected")],
    ),
    "ill-ewe-calls-today": row(
        TODAY, each("ewe", "ill"), [UNASKED, *each("ewe", "refuses", "too-many", "gone")]
    ),
    "ewe-down-calls-now": row(
        NOW, each("ewe", "down"), [UNASKED, *each("ewe", "refuses", "too-many", "ill", "gone")]
    ),
    "no-page-calls-today": row(
        TODAY,
        each("more-trouble", "none"),
        [UNASKED, *each("more-trouble", "head", "thin", "hot", "suffering", "flock", "ewe")],
    ),
    "strange-or-poisoned-calls-today": row(
        TODAY,
        each("trouble", "nerves", "ate"),
        [UNASKED, *each("trouble", "chest", "legs", "passing", "hurt", "more")],
    ),
    "no-home-injection": row(
        never_tags("vet-injection"),
        [UNASKED, *each("glucose", "given", "nobody", UNSURE)],
        each("glucose", "can-give"),
    ),
    "injection-only-by-a-taught-hand": row(
        says_with_tag("vet-injection", "vet-taught", nearly="Only a taught hand, or a vet."), [UNASKED]
    ),
    "medicine-names-label-law-and-vet": row(says_with_tag("medicine", "label", "law", "vet"), [UNASKED]),
}
