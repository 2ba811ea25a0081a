"""Rows of the rules about scours and drying out."""

from __future__ import annotations

from tests.check.rule_pages import ALONE, EVERY_END_SAYS_SOAP, FEED, NOW, TODAY, TUBE
from tests.check.rule_rows import UNASKED, Lamb, Row, days, degc, each, hours, one_unasked, row
from triage.facts import UNSURE

DRY_AND_YOUNG: Lamb = {"dung": "watery", "dry-signs": "some", "age": days(6)}
NEWBORN_SCOURS: Lamb = {"dung": "watery", "age": hours(30)}
SCOURS_WITH_A_CORD: Lamb = {"dung": "watery", "age": UNSURE, "cord": "dry"}
WEAK_SCOURS: Lamb = {"dung": "watery", "swallows": "swallows"}
DULL_SCOURS: Lamb = {"dung": "watery", "manner": "dull"}
CHILLED_SCOURS: Lamb = {"reason": "scours", "temperature": degc(38)}
COOL_SCOURS: Lamb = {"reason": "scours", "temperature": UNSURE, "mouth": "cool"}
SCOURS: Lamb = {"dung": "watery", "before-feed": "none"}

ROWS: dict[str, Row] = {
    "bloody-dung-calls-now": row(
        NOW, each("dung", "bloody", UNSURE), [UNASKED, *each("dung", "usual", "loose", "watery")]
    ),
    "very-dry-calls-now": row(
        NOW, each("dry-signs", "bad", UNSURE), [UNASKED, *each("dry-signs", "none", "some")]
    ),
    "getting-dry-calls-today": row(TODAY, each("dry-signs", "some"), [UNASKED, *each("dry-signs", "none")]),
    "scouring-and-dry-and-young-calls-now": row(
        NOW,
        [
            *each("dung", "loose", "watery", of=DRY_AND_YOUNG),
            *each("age", hours(0), days(13.9), UNSURE, of=DRY_AND_YOUNG),
        ],
        [
            UNASKED,
            *one_unasked(DRY_AND_YOUNG),
            *each("dung", "usual", of=DRY_AND_YOUNG),
            *each("dry-signs", "none", of=DRY_AND_YOUNG),
            *each("age", days(14), days(14.1), of=DRY_AND_YOUNG),
        ],
    ),
    "newborn-scours-calls-now": row(
        NOW,
        [
            *each("dung", "loose", "watery", of=NEWBORN_SCOURS),
            *each("age", hours(0), hours(71.9), hours(72), of=NEWBORN_SCOURS),
        ],
        [
            UNASKED,
            *one_unasked(NEWBORN_SCOURS),
            *each("dung", "usual", of=NEWBORN_SCOURS),
            *each("age", hours(72.1), days(13), of=NEWBORN_SCOURS),
        ],
    ),
    "scouring-newborn-of-unknown-age-calls-now": row(
        NOW,
        [
            *each("dung", "loose", "watery", of=SCOURS_WITH_A_CORD),
            *each("cord", "wet", "dry", UNSURE, of=SCOURS_WITH_A_CORD),
        ],
        [
            UNASKED,
            {"age": UNSURE, "cord": "wet"},
            {"dung": "watery", "cord": "wet"},
            *each("dung", "usual", of=SCOURS_WITH_A_CORD),
            *each("age", hours(72.1), days(13), of=SCOURS_WITH_A_CORD),
            *each("cord", "gone", of=SCOURS_WITH_A_CORD),
        ],
    ),
    "scouring-and-weak-calls-now": row(
        NOW,
        [
            *each("dung", "loose", "watery", of=WEAK_SCOURS),
            *each("swallows", "swallows", "no-swallow", of=WEAK_SCOURS),
        ],
        [
            UNASKED,
            *one_unasked(WEAK_SCOURS),
            *each("dung", "usual", of=WEAK_SCOURS),
            *each("swallows", "sucks", of=WEAK_SCOURS),
        ],
    ),
    "scouring-and-dull-calls-today": row(
        TODAY,
        [
            *each("dung", "loose", "watery", of=DULL_SCOURS),
            *each("manner", "missed", "dull", "sore", UNSURE, of=DULL_SCOURS),
        ],
        [
            UNASKED,
            *one_unasked(DULL_SCOURS),
            *each("dung", "usual", of=DULL_SCOURS),
            *each("manner", "bright", of=DULL_SCOURS),
        ],
    ),
    "no-feed-for-bloody-dung": row(
        FEED, each("dung", "bloody", UNSURE), [UNASKED, *each("dung", "usual", "loose", "watery")]
    ),
    "no-feed-for-a-very-dry-lamb": row(
        FEED, each("dry-signs", "bad", UNSURE), [UNASKED, *each("dry-signs", "none", "some")]
    ),
    "no-feed-for-a-chilled-scouring-lamb": row(
        FEED,
        each("temperature", degc(25), degc(37.1), degc(38.5), of=CHILLED_SCOURS),
        [
            UNASKED,
            *one_unasked(CHILLED_SCOURS),
            *each("reason", "cold", "refusing", of=CHILLED_SCOURS),
            *each("temperature", degc(38.6), degc(38.7), of=CHILLED_SCOURS),
        ],
    ),
    "no-feed-for-a-cool-mouth-that-scours": row(
        FEED,
        each("mouth", "cool", "cold", UNSURE, of=COOL_SCOURS),
        [
            UNASKED,
            *one_unasked(COOL_SCOURS),
            *each("reason", "cold", "refusing", of=COOL_SCOURS),
            *each("temperature", degc(38.6), degc(39.5), of=COOL_SCOURS),
            *each("mouth", "warm", of=COOL_SCOURS),
        ],
    ),
    "no-tube-while-it-scours": row(
        TUBE,
        each("reason", "scours"),
        [UNASKED, *each("reason", "cold", "refusing", "belly", "no-first-milk", "rejected", "other")],
    ),
    "scouring-lamb-stays-apart": row(
        ALONE, each("dung", "loose", "watery", "bloody", UNSURE), [UNASKED, *each("dung", "usual")]
    ),
    "scours-pass-to-people": row(
        EVERY_END_SAYS_SOAP,
        [
            *each("dung", "loose", "watery", "bloody", UNSURE),
            *each("dung", "loose", "watery", "bloody", UNSURE, of=SCOURS),
            *each("before-feed", "none", "sores", of=SCOURS),
        ],
        [
            UNASKED,
            *each("before-feed", "none", "sores"),
            *each("dung", "usual"),
            *each("dung", "usual", of=SCOURS),
            *each("before-feed", "cleft", of=SCOURS),
        ],
    ),
}
