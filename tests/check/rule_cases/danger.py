"""Rows of the rules about danger signs, and about every page that calls now."""

from __future__ import annotations

from tests.check.rule_pages import ALONE, FEED, NOW, SAYS_PHONE
from tests.check.rule_rows import UNASKED, Lamb, Row, degc, each, one_unasked, row
from triage.facts import UNSURE

LIMP_AND_HOT: Lamb = {"danger": "limp", "temperature": degc(40.2)}

ROWS: dict[str, Row] = {
    "danger-sign-calls-now": row(
        NOW,
        each("danger", "gasping", "bleeding", "fitting", "tight-belly", "limp", UNSURE),
        [UNASKED, *each("danger", "none")],
    ),
    "no-feed-in-collapse": row(
        FEED,
        [UNASKED, *each("danger", "gasping", "bleeding", "fitting")],
        each("danger", "limp", "none"),
    ),
    "no-feed-for-a-limp-warm-lamb": row(
        FEED,
        [UNASKED, *one_unasked(LIMP_AND_HOT), *each("temperature", degc(40.1), degc(43), of=LIMP_AND_HOT)],
        [
            *each("temperature", degc(39.9), degc(40), of=LIMP_AND_HOT),
            *each("danger", "none", of=LIMP_AND_HOT),
        ],
    ),
    "limp-lamb-stays-alone": row(
        ALONE,
        [UNASKED, *each("danger", "gasping", "bleeding", "fitting", "tight-belly", "limp")],
        each("danger", "none"),
    ),
    "call-now-page-says-phone": row(SAYS_PHONE, [UNASKED]),
}
