"""Rows of the rules about breathing, about legs, and about the navel."""

from __future__ import annotations

from tests.check.rule_pages import ALONE, FEED, NOW, TODAY, TUBE
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
)
from triage.facts import UNSURE
from triage.units import Quantity


def breaths(value: float) -> Quantity:
    return Quantity(float(value), "count")


def end_says(*words: str) -> Pages:
    """An end that leaves out any of the words is wrong; one that says them all is right, and so is an act."""
    short = (Page(says=tuple(each for each in words if each != word)) for word in words)
    return Pages((Page(), *short), (Page(says=words), Page(act=True)))


FAST_AND_HOT: Lamb = {"breaths": breaths(70), "temperature": degc(40.8)}
WRONG_WAY_AND_HOT: Lamb = {"breath-start": "tube", "temperature": degc(40.8)}
CHEST_AND_DULL: Lamb = {"trouble": "chest", "manner": "dull"}
WRONG_WAY_NO_SUCK: Lamb = {"breath-start": "tube", "swallows": "swallows"}
FAST_AFTER_HEAT: Lamb = {"breath-start": "hot", "temperature": degc(41)}
COOLED = Pages(
    (Page(), Page(no_tags=("cool",)), Page(end="vet-now")),
    (Page(("cool",)), Page(("cool", "position"), end="vet-now"), Page(act=True)),
)
"""Every end must cool it; a page before it need not."""
LAME_WITH_SORES: Lamb = {"limb-sign": "lame", "before-feed": "sores"}
YOUNG_LIMP: Lamb = {"lame-leg": "limp", "age": days(10)}
OLD_AND_WET: Lamb = {"navel-look": "wet", "age": days(6)}
BULGE: Lamb = {"navel-look": "soft", "limb-manner": "bright", "temperature": degc(39.5)}
OFF_ITS_MILK: Lamb = {"navel-look": "soft", "limb-manner": "missed"}
OTHER_TROUBLES = ("legs", "nerves", "passing", "hurt", "ate", "more")
OTHER_LEGS = ("navel", "bent", "lame")

BREATHING: dict[str, Row] = {
    "hard-breathing-calls-now": row(
        NOW, each("breath-effort", "hard", UNSURE), [UNASKED, *each("breath-effort", "easy")]
    ),
    "no-feed-while-it-works-to-breathe": row(
        FEED, each("breath-effort", "hard", UNSURE), [UNASKED, *each("breath-effort", "easy")]
    ),
    "no-feed-while-it-breathes-fast": row(
        FEED,
        each("breaths", breaths(60.1), breaths(61), breaths(200), UNSURE),
        [UNASKED, *each("breaths", breaths(20), breaths(59), breaths(60))],
    ),
    "milk-gone-wrong-calls-today": row(
        TODAY,
        each("breath-start", "tube", UNSURE),
        [UNASKED, *each("breath-start", "hot", "fast")],
    ),
    "cough-calls-today": row(
        TODAY, each("breath-start", "cough"), [UNASKED, *each("breath-start", "hot", "fast")]
    ),
    "fast-breath-at-rest-calls-today": row(
        TODAY,
        each("breaths", breaths(60.1), breaths(61), breaths(200), UNSURE),
        [UNASKED, *each("breaths", breaths(20), breaths(59), breaths(60))],
    ),
    "fast-breath-and-fever-calls-now": row(
        NOW,
        [
            *each("breaths", breaths(60.1), breaths(61), breaths(200), UNSURE, of=FAST_AND_HOT),
            *each("temperature", degc(40.5), degc(43), of=FAST_AND_HOT),
        ],
        [
            UNASKED,
            *one_unasked(FAST_AND_HOT),
            *each("breaths", breaths(59), breaths(60), of=FAST_AND_HOT),
            *each("temperature", degc(39.5), degc(40.4), UNSURE, of=FAST_AND_HOT),
        ],
    ),
    "milk-gone-wrong-and-fever-calls-now": row(
        NOW,
        [
            *each("breath-start", "tube", "fed", UNSURE, of=WRONG_WAY_AND_HOT),
            *each("temperature", degc(40.5), degc(43), of=WRONG_WAY_AND_HOT),
        ],
        [
            UNASKED,
            *one_unasked(WRONG_WAY_AND_HOT),
            *each("breath-start", "cough", "hot", "fast", of=WRONG_WAY_AND_HOT),
            *each("temperature", degc(39.5), degc(40.4), UNSURE, of=WRONG_WAY_AND_HOT),
        ],
    ),
    "chest-sign-and-dull-calls-now": row(
        NOW,
        each("manner", "dull", UNSURE, of=CHEST_AND_DULL),
        [
            UNASKED,
            *one_unasked(CHEST_AND_DULL),
            *each("manner", "bright", "missed", "sore", of=CHEST_AND_DULL),
            *each("trouble", *OTHER_TROUBLES, of=CHEST_AND_DULL),
        ],
    ),
    "no-tube-for-a-chest-sign": row(
        TUBE, each("trouble", "chest"), [UNASKED, *each("trouble", *OTHER_TROUBLES)]
    ),
    "chest-sign-without-a-suck-calls-now": row(
        NOW,
        each("breath-start", "tube", "fed", "cough", UNSURE, of=WRONG_WAY_NO_SUCK),
        [
            UNASKED,
            *one_unasked(WRONG_WAY_NO_SUCK),
            *each("swallows", "sucks", of=WRONG_WAY_NO_SUCK),
            *each("breath-start", "hot", "fast", of=WRONG_WAY_NO_SUCK),
        ],
    ),
    "fast-breath-after-heat-is-cooled": row(
        COOLED,
        each("temperature", degc(40.5), degc(42), UNSURE, of=FAST_AFTER_HEAT),
        [
            UNASKED,
            *one_unasked(FAST_AFTER_HEAT),
            *each("temperature", degc(39), degc(40.4), of=FAST_AFTER_HEAT),
            *each("breath-start", "fed", "cough", "fast", UNSURE, of=FAST_AFTER_HEAT),
        ],
    ),
    "coughing-lamb-stays-alone": row(
        ALONE, each("trouble", "chest"), [UNASKED, *each("trouble", *OTHER_TROUBLES)]
    ),
}

LIMBS: dict[str, Row] = {
    "broken-leg-calls-now": row(
        NOW, each("limb-sign", "swings"), [UNASKED, *each("limb-sign", "stiff", "joint", *OTHER_LEGS)]
    ),
    "no-home-splint": row(
        end_says("splint", "only as this vet"),
        each("limb-sign", "swings"),
        [UNASKED, *each("limb-sign", "stiff", "joint", *OTHER_LEGS)],
    ),
    "no-feed-with-a-broken-leg": row(
        FEED, each("limb-sign", "swings"), [UNASKED, *each("limb-sign", "joint", *OTHER_LEGS)]
    ),
    "stiff-legs-call-today": row(
        TODAY, each("limb-sign", "stiff", "joint"), [UNASKED, *each("limb-sign", *OTHER_LEGS)]
    ),
    "bad-leg-and-dull-calls-now": row(
        NOW, each("limb-manner", "dull", UNSURE), [UNASKED, *each("limb-manner", "bright", "missed")]
    ),
    "no-feed-for-a-bad-leg-and-dull": row(
        FEED, each("limb-manner", "dull", UNSURE), [UNASKED, *each("limb-manner", "bright", "missed")]
    ),
    "bad-leg-and-missed-feeds-calls-today": row(
        TODAY, each("limb-manner", "missed"), [UNASKED, *each("limb-manner", "bright")]
    ),
    "lame-with-mouth-sores-calls-now": row(
        NOW,
        each("limb-sign", "joint", "lame", of=LAME_WITH_SORES),
        [
            UNASKED,
            *one_unasked(LAME_WITH_SORES),
            *each("limb-sign", "navel", "bent", of=LAME_WITH_SORES),
            *each("before-feed", "milk-nose", "cleft", "none", of=LAME_WITH_SORES),
        ],
    ),
    "sore-foot-names-blisters": row(
        end_says("blisters", "move no sheep"),
        each("lame-leg", "no-weight", "foot"),
        [UNASKED, *each("lame-leg", "ring", "limp")],
    ),
    "no-weight-calls-today": row(
        TODAY,
        each("lame-leg", "no-weight", "ring", UNSURE),
        [UNASKED, *each("lame-leg", "foot", "limp")],
    ),
    "young-limp-calls-today": row(
        TODAY,
        each("age", hours(1), days(28), days(41.9), days(42), UNSURE, of=YOUNG_LIMP),
        [
            UNASKED,
            *one_unasked(YOUNG_LIMP),
            *each("age", days(42.1), days(90), NOT_ASKED, of=YOUNG_LIMP),
            *each("lame-leg", "foot", of=YOUNG_LIMP),
        ],
    ),
    "fixed-legs-call-today": row(
        TODAY, each("bent-legs", "fixed", UNSURE), [UNASKED, *each("bent-legs", "soft")]
    ),
}

NAVEL: dict[str, Row] = {
    "open-navel-calls-now": row(
        NOW, each("navel-look", "open"), [UNASKED, *each("navel-look", "hot", "soft", "wet")]
    ),
    "no-feed-with-an-open-navel": row(
        FEED, each("navel-look", "open"), [UNASKED, *each("navel-look", "hot", "soft", "wet")]
    ),
    "hot-navel-calls-today": row(
        TODAY, each("navel-look", "hot"), [UNASKED, *each("navel-look", "soft", "wet")]
    ),
    "old-wet-navel-calls-today": row(
        TODAY,
        each("age", hours(72.1), days(6), days(40), UNSURE, of=OLD_AND_WET),
        [
            UNASKED,
            *one_unasked(OLD_AND_WET),
            *each("age", hours(2), hours(71.9), hours(72), of=OLD_AND_WET),
            *each("navel-look", "soft", of=OLD_AND_WET),
        ],
    ),
    "bulge-and-missed-feeds-calls-now": row(
        NOW,
        each("navel-look", "soft", "hot", of=OFF_ITS_MILK),
        [
            UNASKED,
            *one_unasked(OFF_ITS_MILK),
            *each("navel-look", "wet", of=OFF_ITS_MILK),
            *each("limb-manner", "bright", "dull", UNSURE, of=OFF_ITS_MILK),
        ],
    ),
    "no-feed-with-a-bulge-and-missed-feeds": row(
        FEED,
        each("navel-look", "soft", "hot", of=OFF_ITS_MILK),
        [
            UNASKED,
            *one_unasked(OFF_ITS_MILK),
            *each("navel-look", "wet", of=OFF_ITS_MILK),
            *each("limb-manner", "bright", "dull", UNSURE, of=OFF_ITS_MILK),
        ],
    ),
    "bulge-is-never-ringed": row(
        end_says("no ring"),
        each("temperature", degc(38.6), degc(40.4), of=BULGE),
        [
            UNASKED,
            *one_unasked(BULGE),
            *each("temperature", degc(40.5), degc(42), UNSURE, of=BULGE),
            *each("navel-look", "hot", "wet", of=BULGE),
            *each("limb-manner", "dull", of=BULGE),
        ],
    ),
}

ROWS: dict[str, Row] = {**BREATHING, **LIMBS, **NAVEL}
