"""Rows of the rules that came of a second reading: sore heads with a fever, heat, scrapes, and well orphans."""

from __future__ import annotations

from tests.check.rule_cases.thin_heat_orphan import NO_MILK_FEED
from tests.check.rule_pages import FEED, NOW, TODAY, WATCH
from tests.check.rule_rows import NOT_ASKED, UNASKED, Lamb, Row, degc, each, one_unasked, row
from triage.facts import UNSURE

SORES: Lamb = {"before-feed": "sores", "temperature": degc(40.8)}
HEAD: Lamb = {"head-part": "mouth", "temperature": degc(40.8)}
HEATED: Lamb = {"heat-harm": "over", "manner": "dull"}
SWALLOWED: Lamb = {"eaten": "string", "swallows": "swallows"}
DULL: Lamb = {"more-trouble": "head", "manner": "dull"}
FOOT_SORE: Lamb = {"sores-seen": "lips", "manner": "sore"}
BRUISED: Lamb = {"wound": "crushed", "temperature": degc(38.5)}
ATE_COOL: Lamb = {"trouble": "ate", "temperature": degc(38.5)}
THIN_COOL: Lamb = {"more-trouble": "thin", "temperature": degc(38.5)}
COOL = (degc(37.1), degc(38.5), degc(38.9))
NOT_COOL = (degc(39), degc(39.1), UNSURE)
REFUSED: Lamb = {"reason": "rejected", "ewe": "refuses", "manner": "dull"}
LAMED: Lamb = {"trouble": "hurt", "manner": "sore"}
FEVERS = (degc(40.5), degc(40.6), degc(42))
NO_FEVERS = (degc(39), degc(40.4), UNSURE)

ROWS: dict[str, Row] = {
    "fever-with-mouth-sores-calls-now": row(
        NOW,
        each("temperature", *FEVERS, of=SORES),
        [
            UNASKED,
            *one_unasked(SORES),
            *each("temperature", *NO_FEVERS, of=SORES),
            *each("before-feed", "none", "swollen", UNSURE, of=SORES),
        ],
    ),
    "fever-with-a-sore-head-calls-now": row(
        NOW,
        [*each("temperature", *FEVERS, of=HEAD), *each("head-part", "mouth", "face", of=HEAD)],
        [
            UNASKED,
            *one_unasked(HEAD),
            *each("temperature", *NO_FEVERS, of=HEAD),
            *each("head-part", "eye", of=HEAD),
        ],
    ),
    "face-that-hangs-calls-now": row(
        NOW, each("mouth-seen", "hangs"), [UNASKED, *each("mouth-seen", "jaw", "teeth", "nothing")]
    ),
    "no-feed-for-a-face-that-hangs": row(
        FEED, each("mouth-seen", "hangs"), [UNASKED, *each("mouth-seen", "jaw", "teeth", "nothing", UNSURE)]
    ),
    "dull-after-heat-calls-now": row(
        NOW,
        [
            *each("heat-harm", "panting", "over", UNSURE, of=HEATED),
            *each("manner", "dull", UNSURE, of=HEATED),
        ],
        [
            UNASKED,
            *one_unasked(HEATED),
            *each("heat-harm", "burnt", "none", of=HEATED),
            *each("manner", "bright", "missed", "sore", of=HEATED),
        ],
    ),
    "only-a-scrape-is-watched": row(
        TODAY, each("wound", "bite", "maggots", "marking", "crushed"), [UNASKED, *each("wound", "torn")]
    ),
    "hole-calls-today": row(TODAY, each("wound-depth", "holes"), [UNASKED, *each("wound-depth", "skin")]),
    "hurt-and-off-its-milk-or-lame-calls-today": row(
        TODAY,
        each("manner", "missed", "sore", of=LAMED),
        [
            UNASKED,
            *one_unasked(LAMED),
            *each("manner", "bright", of=LAMED),
            *each("trouble", "ate", "legs", of=LAMED),
        ],
    ),
    "unmeasured-lamb-is-watched": row(
        WATCH, each("temperature", UNSURE), [UNASKED, *each("temperature", degc(39), degc(40))]
    ),
    "swallowed-something-and-no-suck-calls-now": row(
        NOW,
        [
            *each("eaten", "grain", "string", of=SWALLOWED),
            *each("swallows", "swallows", "no-swallow", UNSURE, of=SWALLOWED),
        ],
        [
            UNASKED,
            *one_unasked(SWALLOWED),
            *each("eaten", "feed", of=SWALLOWED),
            *each("swallows", "sucks", of=SWALLOWED),
        ],
    ),
    "sore-head-and-dull-calls-now": row(
        NOW,
        each("manner", "dull", UNSURE, of=DULL),
        [
            UNASKED,
            *one_unasked(DULL),
            *each("manner", "bright", "missed", "sore", of=DULL),
            *each("more-trouble", "thin", of=DULL),
        ],
    ),
    "sore-mouth-and-lame-calls-now": row(
        NOW,
        each("sores-seen", "inside", "lips", of=FOOT_SORE),
        [UNASKED, *one_unasked(FOOT_SORE), *each("manner", "bright", "missed", of=FOOT_SORE)],
    ),
    "no-feed-for-a-sore-head-and-a-dull-lamb": row(
        FEED,
        each("manner", "dull", UNSURE, of=DULL),
        [
            UNASKED,
            *one_unasked(DULL),
            *each("manner", "bright", "missed", "sore", of=DULL),
            *each("more-trouble", "thin", of=DULL),
        ],
    ),
    "bruised-and-cool-calls-now": row(
        NOW,
        [*each("temperature", *COOL, of=BRUISED), *each("wound", "bite", "crushed", of=BRUISED)],
        [
            UNASKED,
            *one_unasked(BRUISED),
            *each("temperature", *NOT_COOL, of=BRUISED),
            *each("wound", "torn", of=BRUISED),
        ],
    ),
    "ate-it-and-cool-calls-now": row(
        NOW,
        each("temperature", *COOL, of=ATE_COOL),
        [
            UNASKED,
            *one_unasked(ATE_COOL),
            *each("temperature", *NOT_COOL, of=ATE_COOL),
            *each("trouble", "legs", of=ATE_COOL),
        ],
    ),
    "thin-and-cool-calls-today": row(
        TODAY,
        each("temperature", *COOL, of=THIN_COOL),
        [
            UNASKED,
            *one_unasked(THIN_COOL),
            *each("temperature", *NOT_COOL, of=THIN_COOL),
            *each("more-trouble", "hot", of=THIN_COOL),
        ],
    ),
    "refused-lamb-is-looked-at-before-a-feed": row(
        NO_MILK_FEED,
        [
            *each("manner", "dull", "sore", UNSURE, NOT_ASKED, of=REFUSED),
            *each("ewe", "refuses", "too-many", "ill", "down", of=REFUSED),
        ],
        [
            UNASKED,
            {"ewe": "refuses", "manner": "dull"},
            {"reason": "rejected", "manner": "dull"},
            *each("ewe", "gone", of=REFUSED),
            *each("manner", "bright", "missed", of=REFUSED),
        ],
    ),
}
