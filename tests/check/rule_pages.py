"""Pages of the rows, by what they have; several rules speak of the same."""

from __future__ import annotations

from tests.check.rule_rows import URGENCIES, Page, Pages, calls, never_tags

FEED = never_tags("feed-by-mouth", "tube-feed")
TUBE = never_tags("tube-feed")
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
TAKES_MILK_AWAY = Pages(
    (*(Page(end=each) for each in URGENCIES), Page(no_tags=("no-mouth",))),
    (*(Page(("no-mouth",), end=each) for each in URGENCIES), Page(act=True)),
)
"""Every end must tell the reader to stop everything by mouth; a page before it need not."""
