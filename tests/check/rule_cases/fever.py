"""Rows of the rules about fever and heat."""

from __future__ import annotations

from tests.check.rule_pages import ALONE, FEED, NOW, TODAY, TUBE, WATCH
from tests.check.rule_rows import UNASKED, Lamb, Row, degc, each, one_unasked, row, says_with_tag
from triage.facts import UNSURE

TOO_WARM: Lamb = {"temperature": degc(40.2), "heat": "no-heat"}
HEAT_STROKE: Lamb = {"temperature": degc(41.5), "heat": "heat"}
FEVER_AND_MILK_AT_NOSE: Lamb = {"temperature": degc(40.7), "before-feed": "milk-nose"}

FEVER_AND_NO_DUNG: Lamb = {"temperature": degc(41), "passing": "no-dung"}
ROWS: dict[str, Row] = {
    "fever-and-no-dung-calls-now": row(
        NOW,
        each("temperature", degc(40.5), degc(43), of=FEVER_AND_NO_DUNG),
        [
            UNASKED,
            *one_unasked(FEVER_AND_NO_DUNG),
            *each("temperature", degc(40.4), UNSURE, of=FEVER_AND_NO_DUNG),
            *each("passing", "usual", of=FEVER_AND_NO_DUNG),
        ],
    ),
    "high-fever-calls-now": row(
        NOW,
        each("temperature", degc(41), degc(41.1), degc(43)),
        [UNASKED, *each("temperature", degc(40.9), UNSURE)],
    ),
    "fever-calls-today": row(
        TODAY,
        each("temperature", degc(40.5), degc(40.6), degc(43)),
        [UNASKED, *each("temperature", degc(40.4), UNSURE)],
    ),
    "fever-with-mouth-trouble-calls-now": row(
        NOW,
        [
            *each("temperature", degc(40.5), degc(40.6), degc(43), of=FEVER_AND_MILK_AT_NOSE),
            *each("before-feed", "milk-nose", "cleft", of=FEVER_AND_MILK_AT_NOSE),
        ],
        [
            UNASKED,
            *one_unasked(FEVER_AND_MILK_AT_NOSE),
            *each("temperature", degc(39.5), degc(40.4), UNSURE, of=FEVER_AND_MILK_AT_NOSE),
            *each("before-feed", "none", of=FEVER_AND_MILK_AT_NOSE),
        ],
    ),
    "warm-without-heat-calls-today": row(
        TODAY,
        [
            *each("temperature", degc(40.1), degc(43), of=TOO_WARM),
            *each("heat", "no-heat", UNSURE, of=TOO_WARM),
        ],
        [
            UNASKED,
            *one_unasked(TOO_WARM),
            *each("temperature", degc(39.9), degc(40), UNSURE, of=TOO_WARM),
            *each("heat", "heat", of=TOO_WARM),
        ],
    ),
    "warm-under-heat-is-watched": row(
        WATCH,
        [*each("temperature", degc(40.1), degc(43)), *each("heat", "heat", of=TOO_WARM)],
        [UNASKED, *each("temperature", degc(39.9), degc(40), UNSURE)],
    ),
    "no-cold-water": row(
        says_with_tag("cool", "cold water", nearly="Water, and not too cold."),
        each("temperature", degc(40.5), degc(40.6), degc(43), UNSURE),
        [UNASKED, *each("temperature", degc(38), degc(40.4))],
    ),
    "no-tube-with-a-fever": row(
        TUBE,
        each("temperature", degc(40.5), degc(40.6), degc(43)),
        [UNASKED, *each("temperature", degc(39.5), degc(40.4))],
    ),
    "no-drink-for-a-lamb-far-too-hot-under-heat": row(
        FEED,
        each("temperature", degc(41), degc(41.1), degc(43), of=HEAT_STROKE),
        [
            UNASKED,
            {"heat": "heat"},
            *each("temperature", degc(39.5), degc(40.9), of=HEAT_STROKE),
            *each("heat", "no-heat", of=HEAT_STROKE),
        ],
    ),
    "fever-stays-apart": row(
        ALONE,
        each("temperature", degc(40.5), degc(40.6), degc(43)),
        [UNASKED, *each("temperature", degc(39.5), degc(40.4))],
    ),
}
