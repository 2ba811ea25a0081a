"""For each rule of the guide the lambs that it must stop, and lambs that it must leave alone.

The lambs were typed from what each rule is for and from the published figures, and held against its
`when` only after. Where a rule asks less than its words might, the lambs in question stand in neither
list, so that it can be tightened, or its row keeps to the rule: a page relies on that, or another rule
holds the lamb. Each line of a number is probed just below, on it and just above.
"""

from __future__ import annotations

from tests.check.rule_rows import (
    UNASKED,
    URGENCIES,
    Lamb,
    Page,
    Pages,
    Row,
    calls,
    days,
    degc,
    each,
    hours,
    never_shows,
    never_tags,
    one_unasked,
    row,
    says_with_sum,
    says_with_tag,
)
from triage.facts import UNSURE

FEED = never_tags("feed-by-mouth", "tube-feed")
WARM = never_tags("warm")
ALONE = never_tags("company")
NOW, TODAY, WATCH = (calls(urgency) for urgency in URGENCIES[:-1])
HOTTEST_AIR = Pages(
    (Page(("warm",)), Page(("warm",), act=True), Page(("warm",), no_shows=("warm-air-max",))),
    (
        Page(("warm",), shows=("warm-air-max",)),
        Page(("warm",), shows=("warm-air-max",), act=True),
        Page(no_tags=("warm",)),
    ),
)
SAYS_PHONE = Pages(
    (Page(end="vet-now"), Page(no_tags=("phone",), end="vet-now")),
    (Page(("phone",), end="vet-now"), *(Page(end=each) for each in URGENCIES[1:]), Page(act=True)),
)
EVERY_END_SAYS_SOAP = Pages(
    (Page(), Page(no_tags=("record",)), Page(end="vet-now"), Page(no_shows=("milk-feed",))),
    (Page(says=("Wash your hands with soap.",)), Page(act=True)),
)

FLAT: Lamb = {"temperature": degc(36), "age": hours(12), "glucose": "nobody"}
NO_THERMOMETER: Lamb = {"temperature": UNSURE}
COLD_MOUTH: Lamb = {"temperature": UNSURE, "mouth": "cold"}
FLAT_BY_MOUTH: Lamb = {"temperature": UNSURE, "mouth": "cold", "age": hours(12), "glucose": "nobody"}
TOO_WARM: Lamb = {"temperature": degc(40.2), "heat": "no-heat"}
OVERHEATED: Lamb = {"danger": "none", "heat": "heat"}
LIMP_AND_HOT: Lamb = {"danger": "limp", "temperature": degc(40.2)}
DRY_AND_YOUNG: Lamb = {"dung": "watery", "dry-signs": "some", "age": days(6)}
NEWBORN_SCOURS: Lamb = {"dung": "watery", "age": hours(30)}
WEAK_SCOURS: Lamb = {"dung": "watery", "swallows": "swallows"}
DULL_SCOURS: Lamb = {"dung": "watery", "manner": "dull"}
CHILLED_SCOURS: Lamb = {"reason": "scours", "temperature": degc(38)}
SCOURS: Lamb = {"dung": "watery", "before-feed": "none"}
LATE: Lamb = {"first-milk-had": "none", "age": hours(10)}
SORES: Lamb = {"before-feed": "sores", "reason": "refusing"}
MISSED: Lamb = {"manner": "missed", "reason": "refusing"}

ROWS: dict[str, Row] = {
    # cold
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
    "warming-names-the-hottest-air": row(
        HOTTEST_AIR,
        each("temperature", degc(25), degc(36.9), degc(37)),
        [UNASKED, *each("temperature", degc(37.1), UNSURE)],
    ),
    "warming-by-mouth-names-the-hottest-air": row(
        HOTTEST_AIR,
        each("mouth", "cold", "cool", UNSURE, of=NO_THERMOMETER),
        [
            UNASKED,
            *one_unasked(COLD_MOUTH),
            *each("mouth", "warm", of=NO_THERMOMETER),
            *each("temperature", degc(37.1), of=COLD_MOUTH),
        ],
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
    "chill-is-watched": row(
        WATCH,
        each("temperature", degc(25), degc(37.1), degc(38.5)),
        [UNASKED, *each("temperature", degc(38.6), degc(38.7), UNSURE)],
    ),
    "no-thermometer-is-watched": row(
        WATCH,
        [NO_THERMOMETER, *each("mouth", "warm", of=NO_THERMOMETER)],
        [UNASKED, {"mouth": "warm"}, {"temperature": degc(39.5), "mouth": "warm"}],
    ),
    # fever and heat
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
        [OVERHEATED],
        [
            UNASKED,
            *one_unasked(OVERHEATED),
            *each("heat", "no-heat", of=OVERHEATED),
            *each("danger", "limp", of=OVERHEATED),
        ],
    ),
    # swallow, tube and bottle
    "no-tube-without-a-swallow": row(
        never_tags("tube-feed"),
        [UNASKED, *each("swallows", "no-swallow", UNSURE)],
        each("swallows", "sucks", "swallows"),
    ),
    "no-bottle-without-a-swallow": row(
        never_tags("feed-by-mouth"),
        [UNASKED, *each("swallows", "no-swallow", UNSURE)],
        each("swallows", "sucks", "swallows"),
    ),
    "no-swallow-calls-now": row(
        NOW,
        each("swallows", "no-swallow", UNSURE),
        [UNASKED, *each("swallows", "sucks", "swallows")],
    ),
    "tube-only-by-a-taught-hand": row(says_with_tag("tube-feed", "taught"), [UNASKED]),
    "tube-is-never-pushed": row(
        says_with_tag("tube-feed", "Never push the tube", nearly="Push the tube gently. Never force it."),
        each("swallows", "swallows"),
        [UNASKED, *each("swallows", "sucks")],
    ),
    "first-feed-stops-at-a-cough": row(says_with_sum(("first-milk", "small-first-feed"), "cough"), [UNASKED]),
    # before a feed
    "no-feed-before-looking": row(
        FEED, [UNASKED, *each("before-feed", UNSURE)], each("before-feed", "none", "sores")
    ),
    "no-feed-into-a-swollen-belly": row(
        FEED, [UNASKED, *each("before-feed", "swollen")], each("before-feed", "none", "sores")
    ),
    "no-feed-into-a-belly-felt-swollen": row(
        FEED, each("belly", "swollen"), [UNASKED, *each("belly", "hollow", "soft")]
    ),
    "no-feed-into-a-tight-belly": row(
        FEED, [UNASKED, *each("danger", "tight-belly")], each("danger", "none", "limp")
    ),
    "no-feed-for-a-drooling-lamb": row(
        FEED, [UNASKED, *each("before-feed", "drooling")], each("before-feed", "none", "sores")
    ),
    "no-feed-with-milk-at-the-nose": row(
        FEED, [UNASKED, *each("before-feed", "milk-nose")], each("before-feed", "none", "sores")
    ),
    "no-feed-through-a-cleft": row(
        FEED, [UNASKED, *each("before-feed", "cleft")], each("before-feed", "none", "sores")
    ),
    "no-feed-when-it-cannot-pass": row(
        FEED, each("passing", "no-urine", "no-anus"), [UNASKED, *each("passing", "usual", "no-dung")]
    ),
    "swollen-or-drooling-calls-now": row(
        NOW,
        each("before-feed", "swollen", "drooling", UNSURE),
        [UNASKED, *each("before-feed", "milk-nose", "cleft", "sores", "none")],
    ),
    "belly-felt-swollen-calls-now": row(
        NOW, each("belly", "swollen", UNSURE), [UNASKED, *each("belly", "hollow", "soft")]
    ),
    "mouth-trouble-calls-today": row(
        TODAY, each("before-feed", "milk-nose", "cleft"), [UNASKED, *each("before-feed", "none")]
    ),
    "mouth-sores-call-today": row(
        TODAY,
        each("reason", "refusing", "other", of=SORES),
        [
            UNASKED,
            *one_unasked(SORES),
            *each("reason", "belly", of=SORES),
            *each("before-feed", "none", of=SORES),
        ],
    ),
    "cannot-pass-calls-now": row(
        NOW, each("passing", "no-urine", "no-anus"), [UNASKED, *each("passing", "usual", "no-dung", UNSURE)]
    ),
    "not-sure-what-it-passes-calls-today": row(
        TODAY, each("passing", UNSURE), [UNASKED, *each("passing", "usual")]
    ),
    # danger signs
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
    # scours
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
        FEED, each("dung", "bloody"), [UNASKED, *each("dung", "usual", "loose", "watery")]
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
    "scouring-lamb-stays-apart": row(
        ALONE, each("dung", "loose", "watery", "bloody"), [UNASKED, *each("dung", "usual")]
    ),
    "scours-pass-to-people": row(
        EVERY_END_SAYS_SOAP,
        each("dung", "loose", "watery", of=SCOURS),
        [
            UNASKED,
            *one_unasked(SCOURS),
            *each("dung", "usual", of=SCOURS),
            *each("before-feed", "cleft", of=SCOURS),
        ],
    ),
    # medicine
    "no-home-injection": row(
        never_tags("vet-injection"),
        [UNASKED, *each("glucose", "given", "nobody", UNSURE)],
        each("glucose", "can-give"),
    ),
    "injection-only-by-a-taught-hand": row(
        says_with_tag("vet-injection", "vet-taught", nearly="Only a taught hand, or a vet."), [UNASKED]
    ),
    "medicine-names-label-law-and-vet": row(says_with_tag("medicine", "label", "law", "vet"), [UNASKED]),
    # first milk
    "no-first-milk-promised-too-late": row(
        never_shows("first-milk", "first-milk-day", "first-milk-day-cold", "first-milk-count"),
        [UNASKED, *each("age", hours(36.1), days(14))],
        each("age", hours(0), hours(35.9), hours(36)),
    ),
    "late-first-milk-calls-today": row(
        TODAY,
        each("age", hours(6.1), days(3), of=LATE),
        [
            UNASKED,
            *one_unasked(LATE),
            *each("first-milk-had", "had", of=LATE),
            *each("age", hours(0), hours(5.9), hours(6), of=LATE),
        ],
    ),
    "first-milk-not-heated": row(says_with_sum(("first-milk",), "microwave", "boil"), [UNASKED]),
    "first-milk-only-from-well-ewes": row(says_with_sum(("first-milk",), "aborted", "ill"), [UNASKED]),
    "newborn-fluids-harm-pregnancy": row(says_with_sum(("first-milk",), "pregnant"), [UNASKED]),
    # manner, ewe and the rest
    "dull-calls-today": row(
        TODAY, each("manner", "dull", "sore", UNSURE), [UNASKED, *each("manner", "bright")]
    ),
    "missed-feeds-call-today": row(
        TODAY,
        each("reason", "refusing", "cold", of=MISSED),
        [
            UNASKED,
            *one_unasked(MISSED),
            *each("reason", "belly", of=MISSED),
            *each("manner", "bright", of=MISSED),
        ],
    ),
    "ill-ewe-calls-today": row(
        TODAY, each("ewe", "ill"), [UNASKED, *each("ewe", "refuses", "too-many", "gone")]
    ),
    "ewe-down-calls-now": row(
        NOW, each("ewe", "down"), [UNASKED, *each("ewe", "refuses", "too-many", "ill", "gone")]
    ),
    "no-page-calls-today": row(
        TODAY,
        each("reason", "other"),
        [UNASKED, *each("reason", "cold", "refusing", "scours", "belly", "no-first-milk", "rejected")],
    ),
}
