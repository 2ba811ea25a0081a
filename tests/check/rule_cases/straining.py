"""Rows of the rules about lambs that strain, and about what is seen under the tail."""

from __future__ import annotations

from tests.check.rule_pages import FEED, NOW, TAKES_MILK_AWAY
from tests.check.rule_rows import UNASKED, Lamb, Row, each, one_unasked, row
from triage.facts import UNSURE

DROPS: Lamb = {"strains": "drops", "sex": "male"}
PASSING_AND_DULL: Lamb = {"trouble": "passing", "manner": "dull"}
NOTHING_COMES: Lamb = {"strains": "strains", "passing": "no-dung"}

ROWS: dict[str, Row] = {
    "flesh-out-calls-now": row(
        NOW, each("strains", "flesh"), [UNASKED, *each("strains", "plug", "ring", "strains", "still")]
    ),
    "no-feed-with-flesh-out-or-a-plug-on": row(
        FEED, each("strains", "flesh", "plug"), [UNASKED, *each("strains", "ring", "still")]
    ),
    "drops-in-a-male-call-now": row(
        NOW,
        each("sex", "male", UNSURE, of=DROPS),
        [
            UNASKED,
            *one_unasked(DROPS),
            *each("sex", "ewe-lamb", of=DROPS),
            *each("strains", "plug", "ring", "still", of=DROPS),
        ],
    ),
    "drops-page-takes-milk-away": row(
        TAKES_MILK_AWAY,
        each("sex", "male", UNSURE, of=DROPS),
        [
            UNASKED,
            *one_unasked(DROPS),
            *each("sex", "ewe-lamb", of=DROPS),
            *each("strains", "ring", "still", of=DROPS),
        ],
    ),
    "trouble-with-passing-and-dull-calls-now": row(
        NOW,
        each("manner", "dull", UNSURE, of=PASSING_AND_DULL),
        [
            UNASKED,
            *one_unasked(PASSING_AND_DULL),
            *each("manner", "bright", "missed", "sore", of=PASSING_AND_DULL),
            *each("trouble", "hurt", "more", of=PASSING_AND_DULL),
        ],
    ),
    "straining-with-no-dung-calls-now": row(
        NOW,
        each("strains", "strains", UNSURE, of=NOTHING_COMES),
        [
            UNASKED,
            *one_unasked(NOTHING_COMES),
            *each("passing", "usual", UNSURE, of=NOTHING_COMES),
            *each("strains", "ring", "still", "plug", of=NOTHING_COMES),
        ],
    ),
}
