"""First milk: published tables and worked examples, and why ours differ where they do.

The rates held to are 50 ml for each kg in a feed and 200 ml for each kg in the first day: Teagasc, SRUC
(Scotland's Rural College) and AHDB (2019) print both, and Vet Times (17 December 2018) calls the first the
most a single feed may be. Mellor and Murray (1986) put the need of the first 18 hours at 180 ml for each kg
indoors and 210 out of doors.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.published.walks import first_figure, lamb, worked_out
from triage.units import System

FLOZ = 29.5735295625
"""Millilitres in a US fluid ounce: NIST Handbook 44, appendix C."""
LB = 0.45359237
"""Kilograms in a pound: international yard and pound agreement, 1959."""


@pytest.mark.parametrize(("kg", "feed", "day"), [(6.0, 300, 1200), (5.0, 250, 1000), (4.0, 200, 800)])
def test_teagasc_single_twin_and_triplet(kg: float, feed: int, day: int) -> None:
    """Lambs of 6, 5 and 4 kg get 300, 250 and 200 ml in a feed, and 1200, 1000 and 800 ml in a day."""
    # Teagasc, on colostrum and lamb survival.
    assert first_figure("first-milk", lamb({"weight": kg})) == feed
    assert first_figure("first-milk-day", lamb({"weight": kg})) == day


def test_five_kilo_lamb_has_four_feeds_six_hours_apart() -> None:
    """A lamb of 5 kg has 250 ml every six hours, four times: a litre."""
    # Agriland, 10 March 2022; Irish Independent, article 26518112; AHDB, 2019, by ProStock vets.
    facts = lamb({"weight": 5.0})
    count = worked_out("first-milk-count", facts).figures[0]
    assert first_figure("first-milk", facts) == 250
    assert first_figure("first-milk-day", facts) == 1000
    assert count.value == 4
    assert "6 hours" in count.what


def test_vet_handout_matches_at_four_kilos() -> None:
    """A lamb of 4.0 kg has 200 ml in a feed."""
    # Treating hypothermia in lambs, a vet practice handout, author not shown.
    assert first_figure("first-milk", lamb({"weight": 4.0})) == 200


@pytest.mark.parametrize(("kg", "printed", "most"), [(5.5, 250, 275.0), (2.5, 150, 125.0), (3.2, 150, 160.0)])
def test_rounded_tables_are_met_without_passing_the_most(kg: float, printed: int, most: float) -> None:
    """Where a table rounds by birth type, ours follows the weight and stays at 50 ml for each kg or less."""
    # The handout prints 250 ml for 5.5 kg (45 ml/kg) and 150 ml for 2.5 kg, which is 60 ml/kg and above the
    # most that Vet Times (2018) allows; E Rees (ADAS), Farmers Weekly, 8 March 1996, prints 150 for 3.2 kg.
    # `most` is 50 ml for each kg. One bottle mark of 10 ml is what rounding down may cost.
    feed = first_figure("first-milk", lamb({"weight": kg}))
    assert most - 10 < feed <= most
    assert abs(feed - printed) <= 30


@pytest.mark.parametrize(("kg", "printed"), [(3.0, 630), (4.0, 840), (5.0, 1050)])
def test_day_at_210_is_for_the_field(kg: float, printed: int) -> None:
    """The tables at 210 ml for each kg sit above our indoor day and at or below our day for the cold."""
    # sheepandbeef.co.uk and Volac (in Agriland) use the 210 that Mellor and Murray (1986) found for lambs out
    # of doors. Indoors ours is 200, inside their 180 to 210, as Teagasc and AHDB print.
    facts = lamb({"weight": kg})
    assert kg * 180 <= first_figure("first-milk-day", facts) <= printed
    assert first_figure("first-milk-day-cold", facts) >= printed


@pytest.mark.parametrize(("kg", "low", "high"), [(3.0, 630, 780), (4.0, 840, 1040), (5.0, 1050, 1300)])
def test_cold_wet_wind_adds_what_is_published(kg: float, low: int, high: int) -> None:
    """In cold wet wind the day is at least the field need, and at most a third more than the indoor day."""
    # Low: 210 ml/kg, Mellor and Murray, 1986. High: 200 ml/kg and 30 % (260 ml/kg), the vet practice handout.
    assert low <= first_figure("first-milk-day-cold", lamb({"weight": kg})) <= high


@pytest.mark.parametrize(("kg", "printed"), [(5.5, 1000), (4.0, 800), (3.2, 600)])
def test_adas_days_are_rounded_down(kg: float, printed: int) -> None:
    """The ADAS days of 1000, 800 and 600 ml are the 200 ml rule rounded down; ours is never below them."""
    # E Rees (ADAS), Farmers Weekly, 8 March 1996: 182, 200 and 187 ml/kg. Its "1000 litres" is a misprint,
    # and so is its feed of 250 ml at 4 kg, as four of those are not 800.
    day = first_figure("first-milk-day", lamb({"weight": kg}))
    assert printed <= day <= kg * 210
    assert day - printed < 0.11 * day


def test_oregon_ten_pound_lamb() -> None:
    """A lamb of 10 lb at 3 oz a pound has four feeds of 7.5 oz, near 30 oz in all."""
    # Oregon State University, EC 1427 (1993). It wants them in 18 hours; 3 oz a pound is 196 ml/kg, so our
    # 200 is up to an ounce more in the day.
    facts = lamb({"weight": 10 * LB})
    assert first_figure("first-milk", facts, "us") / FLOZ == pytest.approx(7.5)
    assert first_figure("first-milk-count", facts, "us") == 4
    assert 30.0 <= first_figure("first-milk-day", facts, "us") / FLOZ <= 31.0


def test_iowa_least_day_is_never_above_ours() -> None:
    """The least that works in a 10 lb lamb, 16 oz in four feeds of 4 oz, is never above ours."""
    # Morrical, Iowa State Extension: a tenth of body weight is the least that works, not the aim.
    facts = lamb({"weight": 10 * LB})
    assert first_figure("first-milk-day", facts, "us") / FLOZ >= 16
    assert first_figure("first-milk", facts, "us") / FLOZ >= 4


@pytest.mark.parametrize(("kg", "printed"), [(4.0, 200), (5.0, 250), (6.0, 300)])
def test_tube_volumes(kg: float, printed: int) -> None:
    """The tube takes 200, 250 and 300 ml at 4, 5 and 6 kg."""
    # Teagasc; SRUC, rules of colostrum; Agriland, 10 March 2022.
    assert first_figure("first-milk", lamb({"weight": kg})) == printed


def test_warmed_lamb_starts_where_two_sources_meet() -> None:
    """The first feed of a weak lamb just warmed is 2 US fluid ounces or a little less."""
    # Storey's Guide to Raising Sheep (Simmons, Ekarius): 1 to 2 oz. C Bagley, Utah State University, 1997:
    # 2 to 3 oz. They share 2 oz, 59 ml.
    for kg in (2.0, 4.0, 6.0):
        assert 29 <= first_figure("small-first-feed", lamb({"weight": kg})) <= 60


@settings(deadline=None)
@given(st.floats(0.8, 12), st.sampled_from(["metric", "us"]))
def test_no_first_feed_is_above_the_published_most(kg: float, system: System) -> None:
    """No feed of first milk is above 50 ml for each kg, whatever the weight and the units."""
    # Vet Times, 17 December 2018. A thousandth of a millilitre allows for the last bits of a float.
    for amount in ("first-milk", "small-first-feed"):
        assert first_figure(amount, lamb({"weight": kg}), system) <= 50 * kg + 0.001


@settings(deadline=None)
@given(st.floats(0.8, 9), st.sampled_from(["metric", "us"]))
def test_indoor_day_lies_between_the_published_needs(kg: float, system: System) -> None:
    """The indoor day lies between 180 and 210 ml for each kg, whatever the weight and the units."""
    # Mellor and Murray, 1986.
    day = first_figure("first-milk-day", lamb({"weight": kg}), system)
    assert 180 * kg <= day <= 210 * kg


@settings(deadline=None)
@given(st.floats(0.8, 9), st.sampled_from(["metric", "us"]), st.sampled_from(["indoors", "cold-wet-wind"]))
def test_feeds_of_the_day_carry_the_day(kg: float, system: System, weather: str) -> None:
    """The feeds counted for a day hold the day's milk, short of it only by what a bottle can't measure."""
    # AHDB, 2019: four feeds of 50 ml/kg are the 200 ml/kg of the day.
    facts = lamb({"weight": kg, "weather": weather})
    day = first_figure("first-milk-day" if weather == "indoors" else "first-milk-day-cold", facts, system)
    feeds = first_figure("first-milk-count", facts, system)
    feed = first_figure("first-milk", facts, system)
    assert feeds * feed <= 250 * kg + 0.001
    assert feeds * (feed + 10) >= day
