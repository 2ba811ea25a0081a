"""Rows of the rules about lambs that are stiff, blind, drunk, shaking or down."""

from __future__ import annotations

from tests.check.rule_pages import ALONE, FEED, NOW
from tests.check.rule_rows import UNASKED, Lamb, Page, Pages, Row, days, degc, each, one_unasked, row
from triage.facts import UNSURE

SHAKES_AND_HOT: Lamb = {"strange": "shakes", "temperature": degc(41)}
SWAYS_AND_WEAK: Lamb = {"strange": "sways", "swallows": "swallows"}
TURNED = Pages(
    (Page(says=("Turn it each 3 h.",)), Page(says=("Turn it each 3 h.",), act=True)),
    (Page(), Page(says=("Leave it where it lies.",)), Page(no_tags=("position",))),
)

ROWS: dict[str, Row] = {
    "stiff-or-strange-in-the-head-calls-now": row(
        NOW,
        each("strange", "stiff", "head", UNSURE),
        [UNASKED, *each("strange", "drunk", "shakes", "down", "sways")],
    ),
    "no-feed-when-stiff-or-strange-in-the-head": row(
        FEED,
        each("strange", "stiff", "head", UNSURE),
        [UNASKED, *each("strange", "shakes", "sways")],
    ),
    "no-feed-when-stiff-or-blind-at-first-sight": row(
        FEED, each("fit", "jerks", "stiff", "head", UNSURE), [UNASKED]
    ),
    "no-feed-for-a-lamb-that-is-down": row(
        FEED, each("strange", "down"), [UNASKED, *each("strange", "shakes", "sways")]
    ),
    "down-calls-now": row(
        NOW,
        each("went-down", "knock", "run", "slow", "birth", "no-gain", UNSURE),
        [UNASKED, *each("went-down", "seen")],
    ),
    "a-lamb-that-may-be-hurt-lies-still": row(
        TURNED,
        each("went-down", "knock", UNSURE),
        [UNASKED, *each("went-down", "run", "slow", "birth", "seen")],
    ),
    "strange-without-a-suck-calls-now": row(
        NOW,
        [
            *each("age", days(3), days(20), UNSURE, of=SWAYS_AND_WEAK),
            *each("strange", "drunk", "shakes", of=SWAYS_AND_WEAK),
        ],
        [
            UNASKED,
            *one_unasked(SWAYS_AND_WEAK),
            *each("swallows", "sucks", of=SWAYS_AND_WEAK),
            *each("strange", "down", of=SWAYS_AND_WEAK),
        ],
    ),
    "strange-and-hot-calls-now": row(
        NOW,
        [
            *each("temperature", degc(40.5), degc(40.6), degc(43), of=SHAKES_AND_HOT),
            *each("strange", "stiff", "head", "drunk", "sways", UNSURE, of=SHAKES_AND_HOT),
        ],
        [
            UNASKED,
            *one_unasked(SHAKES_AND_HOT),
            *each("temperature", degc(38.6), degc(40.4), UNSURE, of=SHAKES_AND_HOT),
            *each("strange", "down", of=SHAKES_AND_HOT),
        ],
    ),
    "no-feed-for-weak-legs-without-a-suck": row(
        FEED,
        [SWAYS_AND_WEAK],
        [
            UNASKED,
            *one_unasked(SWAYS_AND_WEAK),
            *each("swallows", "sucks", of=SWAYS_AND_WEAK),
            *each("strange", "shakes", of=SWAYS_AND_WEAK),
        ],
    ),
    "no-feed-while-it-shakes-on": row(
        FEED, each("shakes-since", "later", UNSURE), [UNASKED, *each("shakes-since", "birth", "short")]
    ),
    "shaking-that-came-later-calls-now": row(
        NOW, each("shakes-since", "later", UNSURE), [UNASKED, *each("shakes-since", "birth", "short")]
    ),
    "a-born-shaker-stays-apart": row(
        ALONE, each("shakes-since", "birth"), [UNASKED, *each("shakes-since", "short", "later")]
    ),
}
