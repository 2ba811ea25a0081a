"""Rows of the rules about wounds, poison, eyes and sore mouths."""

from __future__ import annotations

from tests.check.rule_pages import FEED, NOW, TAKES_MILK_AWAY
from tests.check.rule_rows import UNASKED, Lamb, Page, Row, days, degc, each, one_unasked, row, says
from triage.facts import UNSURE

BITTEN: Lamb = {"wound": "bite", "wound-depth": "holes"}
STRUCK: Lamb = {"wound": "maggots", "wound-depth": "open"}
STIFF: Lamb = {"wound": "marking", "manner": "sore"}
HURT: Lamb = {"trouble": "hurt", "manner": "dull"}
HOT: Lamb = {"trouble": "hurt", "temperature": degc(40.8)}
ATE: Lamb = {"trouble": "ate", "manner": "dull"}
GORGED: Lamb = {"eaten": "grain", "age": days(60)}
EVERY_END_SAYS_PEOPLE = says(
    ("passes to people",), Page(), Page(end="vet-now"), elsewhere=Page(act=True), nearly="people pass"
)

WOUNDS: dict[str, Row] = {
    "bite-through-the-skin-calls-now": row(
        NOW,
        each("wound-depth", "body", "open", "holes", UNSURE, of=BITTEN),
        [
            UNASKED,
            *one_unasked(BITTEN),
            *each("wound-depth", "skin", of=BITTEN),
            *each("wound", "torn", of=BITTEN),
        ],
    ),
    "deep-wound-calls-now": row(
        NOW, each("wound-depth", "body", "open", UNSURE), [UNASKED, *each("wound-depth", "holes", "skin")]
    ),
    "break-or-unknown-hurt-calls-now": row(
        NOW,
        each("wound", "break", UNSURE),
        [UNASKED, *each("wound", "bite", "torn", "maggots", "marking", "crushed")],
    ),
    "raw-fly-strike-calls-now": row(
        NOW,
        each("wound-depth", "body", "open", "holes", UNSURE, of=STRUCK),
        [
            UNASKED,
            *one_unasked(STRUCK),
            *each("wound-depth", "skin", of=STRUCK),
            *each("wound", "torn", of=STRUCK),
        ],
    ),
    "stiff-after-a-ring-calls-now": row(
        NOW,
        each("manner", "sore", "dull", UNSURE, of=STIFF),
        [
            UNASKED,
            *one_unasked(STIFF),
            *each("manner", "bright", "missed", of=STIFF),
            *each("wound", "torn", "crushed", of=STIFF),
        ],
    ),
    "hurt-and-dull-calls-now": row(
        NOW,
        each("manner", "dull", UNSURE, of=HURT),
        [UNASKED, *one_unasked(HURT), *each("manner", "bright", "missed", "sore", of=HURT)],
    ),
    "hurt-or-poisoned-with-a-fever-calls-now": row(
        NOW,
        [
            *each("temperature", degc(40.5), degc(40.6), degc(42), of=HOT),
            *each("trouble", "hurt", "ate", of=HOT),
        ],
        [
            UNASKED,
            *one_unasked(HOT),
            *each("temperature", degc(39), degc(40.4), UNSURE, of=HOT),
            *each("trouble", "legs", "chest", of=HOT),
        ],
    ),
    "no-feed-for-a-bad-wound": row(
        FEED, each("wound-depth", "body", "open", UNSURE), [UNASKED, *each("wound-depth", "holes", "skin")]
    ),
    "no-feed-for-a-bite-through-the-skin": row(
        FEED,
        each("wound-depth", "body", "open", "holes", of=BITTEN),
        [
            UNASKED,
            *one_unasked(BITTEN),
            *each("wound-depth", "skin", of=BITTEN),
            *each("wound", "torn", of=BITTEN),
        ],
    ),
    "no-feed-for-a-broken-leg": row(
        FEED, each("wound", "break", UNSURE), [UNASKED, *each("wound", "torn", "marking", "crushed")]
    ),
}

POISON: dict[str, Row] = {
    "poison-calls-now": row(
        NOW,
        each("eaten", "plant", "chemical", "medicine", UNSURE),
        [UNASKED, *each("eaten", "grain", "feed", "string")],
    ),
    "gorged-on-grain-calls-now": row(
        NOW,
        each("age", days(21.1), days(22), days(60), UNSURE, of=GORGED),
        [
            UNASKED,
            *one_unasked(GORGED),
            *each("age", days(1), days(20.9), days(21), of=GORGED),
            *each("eaten", "feed", "string", of=GORGED),
        ],
    ),
    "ate-it-and-dull-calls-now": row(
        NOW,
        each("manner", "dull", "sore", UNSURE, of=ATE),
        [UNASKED, *one_unasked(ATE), *each("manner", "bright", "missed", of=ATE)],
    ),
    "no-feed-after-poison": row(
        FEED,
        each("eaten", "plant", "chemical", "medicine", UNSURE),
        [UNASKED, *each("eaten", "grain", "feed", "string")],
    ),
    "poison-page-takes-the-rest-away": row(
        TAKES_MILK_AWAY,
        each("eaten", "plant", "chemical", "medicine", "grain", "feed", "string", UNSURE),
        [UNASKED],
    ),
}

HEAD: dict[str, Row] = {
    "hurt-or-blind-eye-calls-now": row(
        NOW,
        each("eye-seen", "hurt", "blind", UNSURE),
        [UNASKED, *each("eye-seen", "lid", "cloudy", "wet")],
    ),
    "sores-with-lame-sheep-call-now": row(
        NOW, each("sores-seen", "spread", UNSURE), [UNASKED, *each("sores-seen", "inside", "lips")]
    ),
    "sores-pass-to-people": row(
        EVERY_END_SAYS_PEOPLE, each("sores-seen", "spread", "inside", "lips", UNSURE), [UNASKED]
    ),
    "stuck-in-the-mouth-calls-now": row(
        NOW, each("mouth-seen", "stuck", UNSURE), [UNASKED, *each("mouth-seen", "jaw", "teeth", "nothing")]
    ),
    "no-feed-with-a-stuck-mouth": row(
        FEED, each("mouth-seen", "stuck", UNSURE), [UNASKED, *each("mouth-seen", "jaw", "teeth", "nothing")]
    ),
}

ROWS: dict[str, Row] = {**WOUNDS, **POISON, **HEAD}
