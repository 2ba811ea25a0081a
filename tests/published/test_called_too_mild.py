"""Under- and over-triage against published counts.

- Rehn and others, Scand J Trauma Resusc Emerg Med 2009;17:1: under-triage is 1 - sensitivity. Of 2,221 severely
  injured people 2,002 were met by a team: under-triage 10 %.
- Braken and others, Scand J Trauma Resusc Emerg Med 2018;26:32 (its abstract): 80 of 406 were not: 19.7 %.
- van Rein and others, JAMA Surg 2018;153:322 (its abstract): of 4,950 people 436 were severely injured; under-triage
  21.6 %, over-triage 30.6 % of the others. The counts behind the two shares, 94 and 1,381, are reckoned from them.

All of them part people into two classes; here the top urgency is one and "phone today" the other.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime

import pytest

from triage.guide.model import Guide
from triage.practice.readiness import PassMark, Readiness, Shown, over_triage, under_triage

NOON = datetime(2026, 2, 1, 12, tzinfo=UTC)


def rounds(*counts: tuple[int, str, str]) -> list[Shown]:
    """Return so many rounds of each: the guide's urgency, and the one that was said."""
    return [
        Shown(NOON, "a", urgency, said, fails=said > urgency)
        for count, urgency, said in counts
        for _ in range(count)
    ]


@pytest.mark.parametrize(
    ("severe", "missed", "per_cent"),
    [(2221, 2221 - 2002, 10), (406, 80, 19.7), (436, 94, 21.6)],
    ids=["Rehn 2009", "Braken 2018", "van Rein 2018"],
)
def test_under_triage_is_the_published_share(guide: Guide, severe: int, missed: int, per_cent: float) -> None:
    """Of all that needed it at once."""
    under = under_triage(
        guide, rounds((severe - missed, "vet-now", "vet-now"), (missed, "vet-now", "vet-today"))
    )
    assert (under.some, under.of) == (missed, severe)
    assert under.share * 100 == pytest.approx(per_cent, abs=0.15)


def test_over_triage_is_the_published_share(guide: Guide) -> None:
    """Of all that did not need it at once (van Rein 2018)."""
    others, sent = 4950 - 436, 1381
    told = rounds(
        (others - sent, "vet-today", "vet-today"), (sent, "vet-today", "vet-now"), (436, "vet-now", "vet-now")
    )
    over = over_triage(guide, told)
    assert (over.some, over.of) == (sent, others)
    assert over.share * 100 == pytest.approx(30.6, abs=0.05)


def test_who_could_not_be_called_milder_does_not_count(guide: Guide) -> None:
    """The least urgent can't be under-triaged, nor the most urgent over-triaged."""
    told = rounds((7, "care-here", "care-here"), (5, "vet-now", "vet-now"), (3, "watch", "watch"))
    assert under_triage(guide, told).of == 8
    assert over_triage(guide, told).of == 10


WELL: Sequence[tuple[int, str, str]] = ((60, "vet-now", "vet-now"), (30, "watch", "watch"))


def test_the_usual_pass_mark(guide: Guide) -> None:
    """Sixty danger cases with no safety miss, one per cent called too mild, thirty-five too grave."""
    mark = PassMark()
    assert (mark.danger, mark.under, mark.over) == (60, 0.01, 0.35)
    assert Readiness(guide, rounds(*WELL)).ready
    assert not Readiness(guide, rounds((59, "vet-now", "vet-now"), (30, "watch", "watch"))).ready
    assert not Readiness(guide, rounds((60, "vet-now", "vet-now"), (19, "watch", "watch"))).ready


def test_one_safety_miss_starts_the_row_anew(guide: Guide) -> None:
    """However good all else was, and until sixty more have been right."""
    miss = Shown(NOON, "a", "vet-now", "vet-now", fails=True)
    for after in (0, 1, 59):
        told = [*rounds(*WELL), miss, *rounds((after, "vet-now", "vet-now"))]
        readiness = Readiness(guide, told)
        assert not readiness.ready
        assert readiness.in_a_row == after
    assert Readiness(guide, [*rounds(*WELL), miss, *rounds((60, "vet-now", "vet-now"))]).ready


def test_a_safety_miss_in_any_case_counts(guide: Guide) -> None:
    """A forbidden deed to a lamb that needs no vet is one as well."""
    miss = Shown(NOON, "a", "watch", "watch", fails=True)
    assert not Readiness(guide, [*rounds(*WELL), miss]).ready
    assert not Readiness(guide, [*rounds(*WELL), miss, *rounds((59, "vet-now", "vet-now"))]).ready
    assert Readiness(guide, [miss, *rounds(*WELL)]).ready


def test_both_shares_have_a_limit_of_their_own(guide: Guide) -> None:
    """Under-triage of what is not for now counts as well, and crying wolf is no way to pass."""
    mild = (*WELL, (2, "vet-today", "watch"))
    assert not Readiness(guide, rounds(*mild)).ready
    grave = ((60, "vet-now", "vet-now"), (13, "watch", "watch"), (7, "watch", "vet-now"))
    assert Readiness(guide, rounds(*grave)).ready
    graver = ((60, "vet-now", "vet-now"), (12, "watch", "watch"), (8, "watch", "vet-now"))
    assert not Readiness(guide, rounds(*graver)).ready
    wolf = ((60, "vet-now", "vet-now"), (30, "watch", "vet-now"))
    assert any("more urgent" in line for line in Readiness(guide, rounds(*wolf)).wanting)


def test_a_holding_may_ask_for_more(guide: Guide) -> None:
    """Its own mark counts, and what is wanting names it."""
    asked = Readiness(guide, rounds(*WELL), PassMark(danger=100))
    assert not asked.ready
    assert "100 danger cases since" in asked.wanting[0]
