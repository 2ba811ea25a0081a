"""Rows of the rules about cold, warming and glucose."""

from __future__ import annotations

from tests.check.rule_pages import FEED, HOTTEST_AIR, NOW, TODAY, WARM, WATCH
from tests.check.rule_rows import (
    NOT_ASKED,
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
    says_with_tag,
)
from triage.facts import UNSURE

FLAT: Lamb = {"temperature": degc(36), "age": hours(12), "glucose": "nobody"}
NO_THERMOMETER: Lamb = {"temperature": UNSURE}
COLD_MOUTH: Lamb = {"temperature": UNSURE, "mouth": "cold"}
FLAT_BY_MOUTH: Lamb = {"temperature": UNSURE, "mouth": "cold", "age": hours(12), "glucose": "nobody"}
COOL_AND_LIMP: Lamb = {"temperature": UNSURE, "mouth": "cool", "danger": "limp"}
COOL_AND_NO_SUCK: Lamb = {"temperature": UNSURE, "mouth": "cool", "swallows": "swallows"}
NEWBORN_CHILL: Lamb = {"temperature": degc(38), "age": hours(12)}
CHILL_PAST_FIRST_HOURS: Lamb = {"reason": "refusing", "temperature": degc(38.8), "age": hours(12)}
OLDER_CHILL: Lamb = {"temperature": degc(38), "age": days(5)}
NO_SWALLOW: Lamb = {"swallows": "no-swallow", "age": hours(12), "glucose": "nobody"}
LIMP: Lamb = {"danger": "limp", "age": hours(12), "glucose": "nobody"}

NO_SUCK_PAST_FUEL: Lamb = {"temperature": degc(38), "swallows": "swallows", "age": hours(9)}
WEAK_NEWBORN: Lamb = {"temperature": degc(38.8), "swallows": "no-swallow", "age": hours(20)}
OLDER_RIGHT_WARMTH: Lamb = {"temperature": degc(38.8), "age": days(5), "glucose": NOT_ASKED}
RIGHT_FOR_ITS_AGE: Lamb = {"temperature": degc(38.8), "swallows": "no-swallow", "age": days(5)}

ROWS: dict[str, Row] = {
    "chilled-and-no-suck-past-its-fuel-calls-now": row(
        NOW,
        [
            *each("temperature", degc(37.1), degc(38.5), of=NO_SUCK_PAST_FUEL),
            *each("age", hours(5.1), hours(24), days(30), UNSURE, of=NO_SUCK_PAST_FUEL),
        ],
        [
            UNASKED,
            *one_unasked(NO_SUCK_PAST_FUEL),
            *each("temperature", degc(37), degc(38.6), UNSURE, of=NO_SUCK_PAST_FUEL),
            *each("age", hours(0), hours(5), of=NO_SUCK_PAST_FUEL),
            *each("swallows", "sucks", of=NO_SUCK_PAST_FUEL),
        ],
    ),
    "no-cooling-for-a-chilled-newborn-that-cannot-swallow": row(
        never_tags("cool"),
        [
            *each("temperature", degc(25), degc(38.9), of=WEAK_NEWBORN),
            *each("age", hours(0), hours(72), of=WEAK_NEWBORN),
            *each("swallows", "no-swallow", UNSURE, of=WEAK_NEWBORN),
        ],
        [
            UNASKED,
            *one_unasked(WEAK_NEWBORN),
            *each("temperature", degc(39), UNSURE, of=WEAK_NEWBORN),
            *each("age", hours(72.1), UNSURE, of=WEAK_NEWBORN),
            *each("swallows", "sucks", "swallows", of=WEAK_NEWBORN),
        ],
    ),
    "no-heat-for-an-older-lamb-of-right-warmth": row(
        WARM,
        [
            *each("temperature", degc(38.6), degc(41), of=OLDER_RIGHT_WARMTH),
            *each("age", hours(72.1), days(30), of=OLDER_RIGHT_WARMTH),
        ],
        [
            UNASKED,
            *one_unasked({name: OLDER_RIGHT_WARMTH[name] for name in ("temperature", "age")}),
            *each("temperature", degc(38.5), UNSURE, of=OLDER_RIGHT_WARMTH),
            *each("age", hours(72), UNSURE, of=OLDER_RIGHT_WARMTH),
            *each("glucose", "given", "can-give", "nobody", UNSURE, of=OLDER_RIGHT_WARMTH),
        ],
    ),
    "no-needle-for-an-older-lamb-of-right-warmth": row(
        never_tags("vet-injection"),
        [
            *each("temperature", degc(38.6), degc(39), degc(41), of=RIGHT_FOR_ITS_AGE),
            *each("age", hours(72.1), days(30), of=RIGHT_FOR_ITS_AGE),
            *each("swallows", "no-swallow", UNSURE, of=RIGHT_FOR_ITS_AGE),
        ],
        [
            UNASKED,
            *one_unasked(RIGHT_FOR_ITS_AGE),
            *each("temperature", degc(38.5), UNSURE, of=RIGHT_FOR_ITS_AGE),
            *each("age", hours(72), hours(5), UNSURE, of=RIGHT_FOR_ITS_AGE),
            *each("swallows", "sucks", "swallows", of=RIGHT_FOR_ITS_AGE),
        ],
    ),
    "no-feed-when-severely-chilled": row(
        FEED,
        [UNASKED, *each("temperature", degc(25), degc(36.9), degc(37))],
        each("temperature", degc(37.1), degc(39.5), UNSURE),
    ),
    "no-feed-when-its-warmth-is-unknown": row(
        FEED,
        [UNASKED, *one_unasked(COLD_MOUTH), *each("mouth", "cold", UNSURE, of=NO_THERMOMETER)],
        [*each("mouth", "warm", of=NO_THERMOMETER), *each("temperature", degc(37.1), of=COLD_MOUTH)],
    ),
    "no-feed-for-a-cool-mouth-without-a-suck": row(
        FEED,
        [UNASKED, *one_unasked(COOL_AND_NO_SUCK), COOL_AND_NO_SUCK],
        [
            *each("temperature", degc(37.1), degc(39.5), of=COOL_AND_NO_SUCK),
            *each("mouth", "warm", of=COOL_AND_NO_SUCK),
            *each("swallows", "sucks", of=COOL_AND_NO_SUCK),
        ],
    ),
    "no-feed-for-a-cool-mouth-that-may-be-limp": row(
        FEED,
        [UNASKED, *one_unasked(COOL_AND_LIMP), *each("danger", "limp", UNSURE, of=COOL_AND_LIMP)],
        [
            *each("temperature", degc(37.1), degc(39.5), of=COOL_AND_LIMP),
            *each("mouth", "warm", of=COOL_AND_LIMP),
            *each("danger", "none", of=COOL_AND_LIMP),
        ],
    ),
    "no-feed-for-a-limp-lamb-before-glucose": row(
        FEED,
        [
            UNASKED,
            *one_unasked(LIMP),
            *each("age", hours(5.1), days(30), UNSURE, of=LIMP),
            *each("glucose", "can-give", "nobody", UNSURE, of=LIMP),
        ],
        [
            *each("danger", "none", of=LIMP),
            *each("age", hours(0), hours(4.9), hours(5), of=LIMP),
            *each("glucose", "given", of=LIMP),
        ],
    ),
    "glucose-before-warmth": row(
        WARM,
        [
            UNASKED,
            *one_unasked(FLAT),
            *each("temperature", degc(25), degc(36.9), degc(37), of=FLAT),
            *each("age", hours(5.1), days(30), UNSURE, of=FLAT),
            *each("glucose", "can-give", "nobody", UNSURE, of=FLAT),
        ],
        [
            *each("temperature", degc(37.1), UNSURE, of=FLAT),
            *each("age", hours(0), hours(4.9), hours(5), of=FLAT),
            *each("glucose", "given", of=FLAT),
        ],
    ),
    "glucose-before-warmth-by-mouth": row(
        WARM,
        [
            UNASKED,
            *one_unasked(FLAT_BY_MOUTH),
            *each("mouth", "cold", UNSURE, of=FLAT_BY_MOUTH),
            *each("age", hours(5.1), days(30), UNSURE, of=FLAT_BY_MOUTH),
            *each("glucose", "can-give", "nobody", UNSURE, of=FLAT_BY_MOUTH),
        ],
        [
            *each("temperature", degc(37.1), of=FLAT_BY_MOUTH),
            *each("mouth", "warm", of=FLAT_BY_MOUTH),
            *each("age", hours(0), hours(4.9), hours(5), of=FLAT_BY_MOUTH),
            *each("glucose", "given", of=FLAT_BY_MOUTH),
        ],
    ),
    "glucose-before-warmth-without-a-swallow": row(
        WARM,
        [
            UNASKED,
            *one_unasked(NO_SWALLOW),
            *each("swallows", "no-swallow", UNSURE, of=NO_SWALLOW),
            *each("age", hours(5.1), days(30), UNSURE, of=NO_SWALLOW),
            *each("glucose", "can-give", "nobody", UNSURE, of=NO_SWALLOW),
        ],
        [
            *each("swallows", "sucks", "swallows", of=NO_SWALLOW),
            *each("age", hours(0), hours(4.9), hours(5), of=NO_SWALLOW),
            *each("glucose", "given", of=NO_SWALLOW),
        ],
    ),
    "no-heat-for-a-hot-lamb": row(
        WARM,
        [UNASKED, *each("temperature", degc(40.1), degc(43))],
        each("temperature", degc(36), degc(39.9), degc(40), UNSURE),
    ),
    "no-heat-while-it-fits": row(
        WARM,
        [UNASKED, *each("danger", "fitting")],
        each("danger", "gasping", "bleeding", "tight-belly", "limp", "none"),
    ),
    "warming-names-the-hottest-air": row(HOTTEST_AIR, [UNASKED]),
    "heat-names-fire": row(
        says_with_tag("warm", "heaters and lamps", nearly="Mind heaters and fire, and lamps."),
        [UNASKED],
    ),
    "severe-chill-calls-now": row(
        NOW,
        each("temperature", degc(25), degc(36.9), degc(37)),
        [UNASKED, *each("temperature", degc(37.1), UNSURE)],
    ),
    "cold-mouth-calls-now": row(
        NOW,
        each("mouth", "cold", UNSURE, of=NO_THERMOMETER),
        [
            UNASKED,
            *one_unasked(COLD_MOUTH),
            *each("mouth", "warm", "cool", of=NO_THERMOMETER),
            *each("temperature", degc(37.1), of=COLD_MOUTH),
        ],
    ),
    "cool-mouth-calls-today": row(
        TODAY,
        [*each("mouth", "cool"), *each("mouth", "cool", of=NO_THERMOMETER)],
        [UNASKED, NO_THERMOMETER, *each("mouth", "warm")],
    ),
    "chilled-past-its-first-hours-calls-today": row(
        TODAY,
        [
            *each("temperature", degc(25), degc(37.1), degc(38.5), of=OLDER_CHILL),
            *each("age", hours(6.1), days(30), UNSURE, of=OLDER_CHILL),
        ],
        [
            UNASKED,
            *one_unasked(OLDER_CHILL),
            *each("temperature", degc(38.6), degc(38.7), UNSURE, of=OLDER_CHILL),
            *each("age", hours(0), hours(5.9), hours(6), of=OLDER_CHILL),
        ],
    ),
    "chilled-newborn-past-its-first-hours-calls-today": row(
        TODAY,
        [
            *each("temperature", degc(25), degc(38.6), degc(38.9), of=CHILL_PAST_FIRST_HOURS),
            *each("age", hours(6.1), hours(35.9), hours(36), of=CHILL_PAST_FIRST_HOURS),
            *each("reason", "cold", "refusing", "no-first-milk", "rejected", of=CHILL_PAST_FIRST_HOURS),
        ],
        [
            UNASKED,
            *one_unasked(CHILL_PAST_FIRST_HOURS),
            *each("temperature", degc(39), degc(39.1), UNSURE, of=CHILL_PAST_FIRST_HOURS),
            *each("age", hours(0), hours(5.9), hours(6), hours(36.1), days(5), of=CHILL_PAST_FIRST_HOURS),
            *each("reason", "scours", "belly", of=CHILL_PAST_FIRST_HOURS),
        ],
    ),
    "chill-is-watched": row(
        WATCH,
        each("temperature", degc(25), degc(38.5), degc(38.9)),
        [UNASKED, *each("temperature", degc(39), degc(39.1), UNSURE)],
    ),
    "newborn-chill-is-watched": row(
        WATCH,
        [
            *each("temperature", degc(25), degc(38.9), of=NEWBORN_CHILL),
            *each("age", hours(0), hours(71.9), hours(72), UNSURE, of=NEWBORN_CHILL),
        ],
        [
            UNASKED,
            *one_unasked(NEWBORN_CHILL),
            *each("temperature", degc(39), degc(39.1), UNSURE, of=NEWBORN_CHILL),
            *each("age", hours(72.1), days(13), of=NEWBORN_CHILL),
        ],
    ),
    "no-thermometer-is-watched": row(
        WATCH,
        [NO_THERMOMETER, *each("mouth", "warm", of=NO_THERMOMETER)],
        [UNASKED, {"mouth": "warm"}, {"temperature": degc(39.5), "mouth": "warm"}],
    ),
}
