"""The first line: who calls, which lamb, and why now."""

from __future__ import annotations

from datetime import timedelta, timezone
from pathlib import Path
from zoneinfo import ZoneInfo

from tests.conftest import small_guide
from tests.handover.made import AT, HOLDING, HOSTILE, NOW, answered, full, lamb, minutes, noted
from triage.clock import Now
from triage.facts import UNSURE
from triage.guide.model import Guide
from triage.handover import Situation, handover_of
from triage.handover.situation import FORM, GUIDE
from triage.holding.holding import Holding
from triage.walk import Walk


def opening(situation: Situation) -> str:
    """Return the first line of a handover."""
    return handover_of(situation).spoken[0].text


def test_it_says_who_which_lamb_and_why(guide: Guide) -> None:
    """Caller and place, the lamb by its card and its last weight, and the finding that raised the urgency."""
    walk = answered(guide, "none", 36.2)
    seen = (noted("weight", -200, weight=3.4),)

    assert opening(Situation(walk, NOW, "metric", lamb(), seen, (), HOLDING)) == (
        "This is Ann Field at Hill Farm, Upper Example. "
        "I have a lamb: Bramble, a ewe lamb, about 9.8 hours old, twin, 3.4 kg. "
        "Why now: temperature 36.2 °C at 02:11. The guide says: phone the vet now."
    )


def test_it_rests_on_what_it_says(guide: Guide) -> None:
    """Holding, card, weighing and the answer stand behind it, and the guide for the urgency."""
    walk = answered(guide, "none", 36.2)
    seen = (noted("weight", -200, weight=3.4),)
    card = lamb()
    first = handover_of(Situation(walk, NOW, "metric", card, seen, (), HOLDING)).spoken[0]

    assert first.rests_on == (HOLDING, card, seen[0], GUIDE, walk.moves[1])


def test_with_nothing_kept_the_caller_is_told_to_say_it(guide: Guide) -> None:
    """Without a holding and a card the line still stands."""
    first = handover_of(Situation(Walk(guide), NOW)).spoken[0]

    assert first.text == (
        "(Say your name, and where you are.) I have a young lamb. Why now: I want your advice."
    )
    assert first.rests_on == (FORM, GUIDE)
    assert opening(Situation(Walk(guide), NOW, holding=Holding(place="Hill Farm"))).startswith(
        "This is Hill Farm."
    )


def test_the_reading_that_raised_the_urgency_is_told_not_a_later_one(guide: Guide) -> None:
    """A lamb that has warmed since was phoned about for its chill; both readings are said."""
    told = handover_of(Situation(answered(guide, "none", 36.2, 3.0, None, 37.8, apart=10), NOW))

    assert "Why now: temperature 36.2 °C at 02:20." in told.spoken[0].text
    assert told.spoken[1].text == "Found: temperature 37.8 °C at 02:50, before that 36.2 °C at 02:20."


def test_not_sure_can_be_why(guide: Guide) -> None:
    """Not knowing whether there is a danger sign is itself the reason."""
    assert "Why now: danger sign at 02:10: not sure. The guide says: phone the vet now." in opening(
        Situation(answered(guide, UNSURE), NOW)
    )


def test_the_answer_that_raised_it_is_told_with_its_own_time(tmp_path: Path) -> None:
    """Where a finding was answered twice and the second answer raised the urgency, that one is why."""
    guide = small_guide(
        tmp_path,
        (
            "topics/first.yaml",
            "go: warm-it, at_least: vet-now}\n      - {otherwise",
            "go: warm-it}\n      - {otherwise",
        ),
        ("topics/first.yaml", "{unsure: true, go: feel}", "{unsure: true, go: feel, at_least: vet-now}"),
    )
    walk = answered(guide, "none", 36.0, None, UNSURE, apart=10)

    assert "Why now: temperature at 02:40: not sure." in opening(Situation(walk, NOW))


def test_an_end_that_raised_the_urgency_is_why(guide: Guide) -> None:
    """Where no single answer raised it, what was found is the title of the end."""
    walk = answered(guide, "none", UNSURE, "cool", "sucks", "scours")
    assert walk.finished
    assert not [rise for rise in walk.state.rises if rise.finding and rise.urgency == walk.state.urgency]

    assert "Why now: Chilled and scouring. The guide says: phone the vet now." in opening(
        Situation(walk, NOW)
    )


def test_before_any_urgency_the_worst_finding_or_the_reason_is_why(guide: Guide) -> None:
    """On the way, what worries most is said; with nothing found, why the guide was opened."""
    assert "Why now: temperature 38.2 °C at 02:11." in opening(Situation(answered(guide, "none", 38.2), NOW))
    assert "Why now: reason at 02:13: It refuses the bottle." in opening(
        Situation(answered(guide, "none", 39.5, "sucks", "refusing"), NOW)
    )


def test_an_age_that_was_answered_grows_with_the_night(guide: Guide) -> None:
    """Three hours old at 02:12 is four hours old an hour later."""
    walk = answered(guide, "none", 36.2, 3.0)

    assert "I have a lamb: 3 hours old." in opening(Situation(walk, Now(minutes(2), NOW.zone)))
    assert "I have a lamb: 4 hours old." in opening(Situation(walk, Now(minutes(62), NOW.zone)))


def test_a_known_birth_is_not_called_a_guess(guide: Guide) -> None:
    """Only an age that was reckoned is said with `about`."""
    card = lamb(born_guessed=False, born=AT - timedelta(hours=2), sex="", birth_type="")

    assert "I have a lamb: Bramble, 2.8 hours old." in opening(Situation(Walk(guide), NOW, lamb=card))


def test_times_are_those_of_the_place(guide: Guide) -> None:
    """The zone of now rules, and the day is named when it is another one."""
    walk = answered(guide, "none", 36.2)
    night = Now(minutes(50), timezone(timedelta(hours=-3)))
    later = Now(minutes(60 * 24 * 3), ZoneInfo("UTC"))

    assert "36.2 °C at 23:11 yesterday." in opening(Situation(walk, night))
    assert "36.2 °C at 23:11." in opening(Situation(walk, Now(minutes(20), night.zone)))
    assert "36.2 °C at 02:11 on 11 Feb." in opening(Situation(walk, later))


def test_us_units(guide: Guide) -> None:
    """The same line in the other unit system."""
    seen = (noted("weight", -200, weight=3.4),)
    first = opening(Situation(answered(guide, "none", 36.2), NOW, "us", lamb(), seen))

    assert "7 lb 8 oz" in first
    assert "97.2 °F at 02:11" in first


def test_hostile_names_stay_on_one_plain_line(guide: Guide) -> None:
    """Markup is shown as typed, and what would steer the screen is gone."""
    first = opening(full(answered(guide, "none", 36.2), HOSTILE))

    assert first.isprintable()
    assert "\u202e" not in first
    assert first.startswith("This is <script>alert(1)</scri.. at <script>alert(1)</script> &")
