"""When to look again, page by page: a second entry, so that a longer wait is never a slip.

Common practice, no source, except where the number's own row in `figures.py` names one. The times were
typed from what each page is about: a lamb that can turn within the hour is seen within the half hour, one
that is being fed by hand at the next feed.
"""

from __future__ import annotations

from tests.published.walks import shipped
from triage.guide.model import Act, End

MINUTES: dict[str, int] = {
    # may turn within the hour
    "full-belly": 30, "not-hungry": 30, "belly-hollow": 30,
    "chilled-new-bottle": 30, "chilled-new-tube": 30, "chilled-old-bottle": 30, "not-cold": 30,
    "inhaled-milk": 30, "something-else": 30,
    "overheated": 20, "warm-under-heat": 20, "warm-by-thermometer": 20, "warm-by-mouth": 20,
    "fever": 60, "wobbly-lamb": 60,
    # at the next small feed
    "no-dung-yet": 120, "no-dung": 120, "no-dung-older": 120,
    "first-milk-bottle": 120, "first-milk-tube": 120, "first-milk-late": 120, "first-milk-last": 120,
    "first-milk-unknown": 120, "try-bottle-new": 120, "tube-new": 120, "foster-now": 120,
    "raise-weak": 120, "scours-dry": 120,
    # before it can have missed a feed
    "first-milk-gone": 180, "cleft-palate": 180, "mouth-sores": 180, "sore-lamb": 180, "dull-lamb": 180,
    "try-bottle": 180, "tube-once": 180, "try-ewe": 180, "too-many": 180, "ewe-ill": 180,
    "raise-bottle": 180, "normal-dung": 180, "scours-young": 180, "scours-overfed": 180,
    "scours-older": 180,
    # a chest sign may turn within the hour, a heated lamb sooner
    "breathing-milk": 30, "breathing-fast": 30, "breathing-sputter": 60, "breathing-warm": 20,
    "breathing-quiet": 120, "breathing-cough": 180, "breathing-several": 180,
    # lockjaw shows itself by the next small feed, the rest before a missed one
    "limbs-ring": 120, "limbs-joint": 180, "limbs-no-weight": 180,
    "limbs-soft": 180, "limbs-fixed": 180, "navel-ill": 180, "navel-bulge": 180,
    # seen at each feed anyway: the foot, the limp and the dry cord are looked at morning and evening, or sooner
    "limbs-foot": 720, "limbs-limp": 720, "navel-cord": 360,
    # nerves and straining
    "nerves-shaker": 30, "nerves-shakes": 30, "nerves-sways": 180, "nerves-nurse": 180,
    "straining-plug": 60, "straining-ring": 60, "straining-other": 60, "straining-loose": 120,
    "straining-nothing": 180,
    # the flock, the ewe and letting go: before they can have turned
    "ewe-lambing": 15, "ewe-unwilling": 30, "letting-chance": 30, "letting-small": 30,
    "flock-shared": 120, "flock-several": 120, "flock-newborn-dead": 120, "flock-one-dead": 120,
    "ewe-dull": 120,
    "flock-lost": 180, "ewe-cleansing": 180, "ewe-not-cleansed": 180, "ewe-udder": 180,
    "ewe-lost-lamb": 180, "letting-agree": 180, "letting-tired": 180,
    # thin lambs that are bright, and dull ones
    "thin-lid-unsure": 180, "thin-pale-young": 180, "thin-bottle": 180, "thin-bottle-fed": 180, "thin-ewe": 180,
    "thin-pale": 720, "thin-gut": 720, "thin-weaned": 720, "thin-failing": 60,
    # out of the heat
    "still-panting": 20, "heat-over": 20, "hot-no-heat": 30, "burn-small": 180,
    # taken over
    "orphan-first-day": 120, "orphan-days": 120, "orphan-weeks": 180, "orphan-older": 180,
    "orphan-hungry": 30, "orphan-shy": 180, "orphan-help": 180,
    # a hurt or poisoned lamb that is bright: shock and bloat show within the half hour
    "wound-skin": 30, "crushed": 30, "grain-young": 30, "face-swollen": 30,
    # at the next feed
    "torn-hole": 180, "fly-strike": 180, "marking-wound": 180, "other-feed": 180, "thing-swallowed": 180,
    "lid-rolled-in": 180, "eye-cloudy": 180, "eye-wet": 180, "scabs-on-lips": 180, "jaw-wrong": 180,
    "teeth-sore": 180, "sores-inside": 120,
    # skin deep, or a sore eye with a fever; out of the heat again; an older lamb that is well, at its next feed
    "scrape": 180, "mouth-minds": 180, "eye-fever": 60, "heat-cooled": 20, "not-hot": 30, "orphan-well": 180,
}  # fmt: skip
"""The longest that a page may leave a lamb alone."""


def test_no_page_leaves_a_lamb_alone_for_longer() -> None:
    """Each act waits, and each end looks again, after no more than the minutes typed here."""
    guide = shipped()
    waits = {
        name: guide.numbers[time].quantity.to("min").value
        for name, node in guide.nodes.items()
        if isinstance(node, Act | End) and (time := node.wait if isinstance(node, Act) else node.look_again)
    }
    assert waits.keys() == MINUTES.keys()
    assert {name: wait for name, wait in waits.items() if wait > MINUTES[name]} == {}
