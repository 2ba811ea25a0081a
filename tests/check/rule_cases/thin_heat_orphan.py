"""Rows of the rules about thin lambs, about heat and burns, and about a lamb just taken over."""

from __future__ import annotations

from tests.check.rule_pages import FEED, NOW, TODAY, TUBE, WARM
from tests.check.rule_rows import (
    NOT_ASKED,
    UNASKED,
    Lamb,
    Page,
    Pages,
    Row,
    days,
    degc,
    each,
    hours,
    one_unasked,
    row,
    says,
    says_with_sum,
    says_with_tag,
)
from triage.facts import UNSURE

SHORT_OF_BREATH: Lamb = {"eyelid": UNSURE, "keeps-up": "tires"}
WEANED: Lamb = {"milk-way": "weaned", "eyelid": "red"}
THIN_AND_NO_SUCK: Lamb = {"milk-way": "leaves", "swallows": "swallows"}
OFF_ITS_FOOD: Lamb = {"milk-way": "leaves", "age": days(4)}
HOT_AND_PANTING: Lamb = {"heat-harm": "panting", "temperature": degc(41)}
HOT_LATELY: Lamb = {"heat-lately": "lately", "temperature": degc(41)}
OLDER_ORPHAN: Lamb = {"ewe": "gone", "age": days(10), "manner": NOT_ASKED}
NEW_ORPHAN: Lamb = {"ewe": "gone", "foster": "no-ewe", "age": hours(20)}

BEGINS_SMALL = Pages(
    (Page(), Page(end="vet-now"), Page(no_shows=("small-first-feed",))),
    (Page(shows=("small-first-feed",)), Page(shows=("small-first-feed",), end="vet-today"), Page(act=True)),
)
"""Every end must show the small first feed; a page before it need not."""

SAYS_WHEN_TO_STOP = Pages(
    (Page(("cool",)), Page(("cool",), act=True), Page(("cool",), no_shows=("cooling-stop",))),
    (
        Page(("cool",), shows=("cooling-stop",)),
        Page(("cool",), shows=("cooling-stop",), act=True),
        Page(no_tags=("cool",)),
    ),
)
NO_MILK_FEED = Pages(
    (Page(shows=("milk-feed",)), Page(shows=("milk-feed",), act=True)),
    (Page(shows=("first-milk", "milk-day", "milk-count")), Page(("feed-by-mouth",))),
)
SAYS_NO_DRENCH = says(
    ("Do not drench",), Page(), Page(end="vet-now"), elsewhere=Page(act=True), nearly="Do drench it."
)
SAYS_DUNG_TEST = says(("dung test",), Page(), Page(end="vet-now"), elsewhere=Page(act=True), nearly="Dung.")

ROWS: dict[str, Row] = {
    "white-lids-call-now": row(
        NOW, each("eyelid", "white", "yellow"), [UNASKED, *each("eyelid", "red", "pale", UNSURE)]
    ),
    "unsure-lids-and-no-breath-call-now": row(
        NOW,
        each("keeps-up", "tires", UNSURE, of=SHORT_OF_BREATH),
        [
            UNASKED,
            *one_unasked(SHORT_OF_BREATH),
            *each("keeps-up", "walks", of=SHORT_OF_BREATH),
            *each("eyelid", "red", "pale", of=SHORT_OF_BREATH),
        ],
    ),
    "pale-lids-call-today": row(TODAY, each("eyelid", "pale", UNSURE), [UNASKED, *each("eyelid", "red")]),
    "no-feed-for-white-lids": row(
        FEED, each("eyelid", "white", "yellow", UNSURE), [UNASKED, *each("eyelid", "red", "pale")]
    ),
    "no-drench-on-a-guess": row(
        SAYS_NO_DRENCH,
        each("milk-way", "bottle", "ewe", "weaned", "leaves", UNSURE),
        [UNASKED],
    ),
    "dung-test-for-a-weaned-lamb": row(
        SAYS_DUNG_TEST,
        [WEANED],
        [
            UNASKED,
            *one_unasked(WEANED),
            *each("milk-way", "bottle", "ewe", "leaves", UNSURE, of=WEANED),
            *each("eyelid", "pale", "white", UNSURE, of=WEANED),
        ],
    ),
    "thin-and-no-suck-calls-now": row(
        NOW,
        each("milk-way", "leaves", UNSURE, of=THIN_AND_NO_SUCK),
        [
            UNASKED,
            *one_unasked(THIN_AND_NO_SUCK),
            *each("milk-way", "weaned", of=THIN_AND_NO_SUCK),
            *each("swallows", "sucks", of=THIN_AND_NO_SUCK),
        ],
    ),
    "thin-and-off-its-food-in-its-first-week-calls-now": row(
        NOW,
        [
            *each("age", hours(5), days(6.9), UNSURE, of=OFF_ITS_FOOD),
            *each("milk-way", UNSURE, of=OFF_ITS_FOOD),
        ],
        [
            UNASKED,
            *one_unasked(OFF_ITS_FOOD),
            *each("age", days(7), days(7.1), days(30), of=OFF_ITS_FOOD),
            *each("milk-way", "bottle", "ewe", "weaned", of=OFF_ITS_FOOD),
        ],
    ),
    "no-feed-for-a-thin-lamb-that-leaves-its-food": row(
        FEED,
        each("milk-way", "leaves", UNSURE),
        [UNASKED, *each("milk-way", "bottle", "ewe", "weaned")],
    ),
    "hot-and-panting-calls-now": row(
        NOW,
        [
            *each("temperature", degc(40.5), degc(43), UNSURE, of=HOT_AND_PANTING),
            *each("heat-harm", UNSURE, of=HOT_AND_PANTING),
        ],
        [
            UNASKED,
            *one_unasked(HOT_AND_PANTING),
            *each("temperature", degc(39), degc(40.4), of=HOT_AND_PANTING),
            *each("heat-harm", "burnt", "none", of=HOT_AND_PANTING),
        ],
    ),
    "no-feed-while-it-pants": row(
        FEED, each("heat-harm", "panting", UNSURE), [UNASKED, *each("heat-harm", "burnt", "over", "none")]
    ),
    "no-heat-after-heat": row(
        WARM, each("heat-harm", "burnt", "panting", "over", UNSURE), [UNASKED, *each("heat-harm", "none")]
    ),
    "cooling-a-hurt-lamb-warns-of-cold-water": row(
        says_with_tag("cool", "cold water", nearly="Water, and not too cold."),
        each("heat-harm", "burnt", "panting", "over", "none", UNSURE),
        [UNASKED],
    ),
    "too-hot-says-when-to-stop": row(
        SAYS_WHEN_TO_STOP,
        [
            *each("temperature", degc(40.5), degc(43), UNSURE, of=HOT_LATELY),
            *each("heat-lately", UNSURE, of=HOT_LATELY),
        ],
        [
            UNASKED,
            *one_unasked(HOT_LATELY),
            *each("temperature", degc(39), degc(40.4), of=HOT_LATELY),
            *each("heat-lately", "not-lately", of=HOT_LATELY),
        ],
    ),
    "bad-burn-calls-now": row(
        NOW, each("burn", "deep", "tender", "smoke", UNSURE), [UNASKED, *each("burn", "small")]
    ),
    "no-feed-for-a-bad-burn": row(
        FEED, each("burn", "deep", "tender", "smoke", UNSURE), [UNASKED, *each("burn", "small")]
    ),
    "hungry-orphan-calls-today": row(
        TODAY, each("fed-till-now", "hungry", UNSURE), [UNASKED, *each("fed-till-now", "mother", "bottle")]
    ),
    "hungry-orphan-begins-small": row(
        BEGINS_SMALL,
        each("fed-till-now", "hungry", UNSURE),
        [UNASKED, *each("fed-till-now", "mother", "bottle")],
    ),
    "no-tube-for-a-hungry-orphan": row(
        TUBE, each("fed-till-now", "hungry", UNSURE), [UNASKED, *each("fed-till-now", "mother", "bottle")]
    ),
    "older-orphan-is-looked-at-before-a-feed": row(
        NO_MILK_FEED,
        each("age", days(3.1), days(8), days(60), of=OLDER_ORPHAN),
        [
            {"age": days(10), "manner": NOT_ASKED},
            {"ewe": "gone", "manner": NOT_ASKED},
            *each("age", hours(10), days(3), UNSURE, of=OLDER_ORPHAN),
            *each("ewe", "refuses", "too-many", "ill", of=OLDER_ORPHAN),
            *each("manner", "bright", "missed", of=OLDER_ORPHAN),
        ],
    ),
    "new-orphan-is-told-what-milk-not-to-take": row(
        says_with_sum(("milk-day",), "ewe that died", nearly="A ewe that is ill."),
        [
            *each("age", hours(0), hours(36), of=NEW_ORPHAN),
            *each("foster", UNSURE, of=NEW_ORPHAN),
        ],
        [
            UNASKED,
            *one_unasked(NEW_ORPHAN),
            *each("age", hours(36.1), days(10), UNSURE, of=NEW_ORPHAN),
            *each("foster", "now", of=NEW_ORPHAN),
            *each("ewe", "refuses", "too-many", "ill", of=NEW_ORPHAN),
        ],
    ),
}
