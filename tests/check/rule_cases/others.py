"""Rows of the rules about the flock, the ewe beside the lamb, and letting a lamb go."""

from __future__ import annotations

from tests.check.rule_pages import FEED, NOW, TODAY
from tests.check.rule_rows import UNASKED, Page, Pages, Row, each, never_tags, row
from triage.facts import UNSURE

FLOCK_SIGNS = ("living", "blood", "many", "blisters", "ate")
EWE_SIGNS = ("stuck", "hanging", "bleeding", "down", "foul")
CANNOT_WAIT = ("pain", "torn", "down")


def every_end_says(*words: str) -> Pages:
    """Every end must say all of these words; a page before it need not."""
    short = (tuple(each for each in words if each != word) for word in words)
    wrong = (Page(says=said, end=end) for said in short for end in ("vet-now", "vet-today"))
    return Pages((*wrong, Page(no_tags=("record",))), (Page(says=words), Page(act=True)))


NOT_TOUCHED = every_end_says("Do not touch it.", "Phone a doctor.")
LOST = every_end_says("If you are pregnant, keep away.", "Put no other lamb on her.")
TAUGHT = every_end_says("A hand inside only if you have been taught.")

ROWS: dict[str, Row] = {
    "flock-danger-calls-now": row(
        NOW, each("flock-danger", *FLOCK_SIGNS, UNSURE), [UNASKED, *each("flock-danger", "none")]
    ),
    "flock-sickness-calls-today": row(
        TODAY, each("flock-trouble", "sick", "lost", UNSURE), [UNASKED, *each("flock-trouble", "dead")]
    ),
    "a-dead-one-past-its-first-days-calls-today": row(
        TODAY, each("flock-dead", "lamb", "grown", UNSURE), [UNASKED, *each("flock-dead", "newborn")]
    ),
    "blood-at-the-openings-is-not-touched": row(
        NOT_TOUCHED,
        each("flock-danger", "blood"),
        [UNASKED, *each("flock-danger", "living", "many", "blisters", "ate", "none", UNSURE)],
    ),
    "blisters-stop-every-move": row(
        every_end_says("Move none on or off your land."),
        each("flock-danger", "blisters"),
        [UNASKED, *each("flock-danger", "living", "ate", "none", UNSURE)],
    ),
    "lost-lambs-harm-pregnancy": row(
        LOST, each("flock-trouble", "lost"), [UNASKED, *each("flock-trouble", "sick", "dead", UNSURE)]
    ),
    "ewe-that-lost-hers-harms-pregnancy": row(
        LOST,
        each("ewe-trouble", "lost"),
        [UNASKED, *each("ewe-trouble", "lambing", "udder", "dull", "unwilling", UNSURE)],
    ),
    "ewe-danger-calls-now": row(
        NOW, each("ewe-danger", *EWE_SIGNS, UNSURE), [UNASKED, *each("ewe-danger", "none")]
    ),
    "birth-harms-pregnancy": row(
        every_end_says("If you are pregnant, keep away."),
        each("ewe-danger", *EWE_SIGNS, UNSURE),
        [UNASKED, *each("ewe-danger", "none")],
    ),
    "no-untaught-hand-inside": row(
        TAUGHT,
        each("ewe-trouble", "lambing"),
        [UNASKED, *each("ewe-trouble", "udder", "lost", "dull", UNSURE)],
    ),
    "no-untaught-hand-when-stuck": row(
        TAUGHT,
        each("ewe-danger", "stuck"),
        [UNASKED, *each("ewe-danger", "bleeding", "down", "none", UNSURE)],
    ),
    "long-labour-calls-now": row(
        NOW,
        each("ewe-labour", "long", UNSURE),
        [UNASKED, *each("ewe-labour", "restless", "pushing", "more")],
    ),
    "afterbirth-kept-calls-today": row(
        TODAY, each("ewe-afterbirth", "over", UNSURE), [UNASKED, *each("ewe-afterbirth", "under")]
    ),
    "afterbirth-is-never-pulled": row(
        every_end_says("Never pull it."), each("ewe-afterbirth", "under", "over", UNSURE), [UNASKED]
    ),
    "ill-ewe-beside-the-lamb-calls-today": row(
        TODAY,
        each("ewe-trouble", "lost", "udder", "dull", UNSURE),
        [UNASKED, *each("ewe-trouble", "lambing", "hanging-on", "unwilling")],
    ),
    "suffering-calls-now": row(
        NOW,
        each("suffering", *CANNOT_WAIT, UNSURE),
        [UNASKED, *each("suffering", "worse", "small", "tired")],
    ),
    "no-feed-for-a-lamb-that-suffers": row(
        FEED,
        each("suffering", *CANNOT_WAIT, UNSURE),
        [UNASKED, *each("suffering", "worse", "small", "tired")],
    ),
    "ending-is-never-improvised": row(
        every_end_says("Never end it yourself.", "Only a vet does it."),
        each("suffering", *CANNOT_WAIT, "worse", "tired", UNSURE),
        [UNASKED, *each("suffering", "small")],
    ),
    "nothing-is-given-to-end-it": row(
        never_tags("medicine", "vet-injection"),
        each("suffering", *CANNOT_WAIT, "worse", "small", "tired", UNSURE),
        [UNASKED],
    ),
}
