"""Amounts by weight, each worked out by the sum that a walk uses, for weights that one lies between."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from triage.amounts import AMOUNTS
from triage.book.marks import labelled, para, section, table
from triage.book.places import table_anchor
from triage.book.words import Words
from triage.facts import UNSURE, Facts, Value
from triage.guide.model import Guide
from triage.paper.tables import ages
from triage.units import KG_PER_LB, System, show

NEWBORN = tuple(half / 2 for half in range(2, 15))
GROWING = (*NEWBORN, *(float(kg) for kg in range(8, 26)))
POUNDS_NEWBORN = tuple(range(2, 16))
POUNDS_GROWING = (*POUNDS_NEWBORN, *range(16, 56, 2))
"""Weights of the rows: 1 to 7 or 25 kg, or 2 to 15 or 54 lb."""

LIGHTER = (
    "Weigh it. Between two rows take the lighter one. Lighter than the first row: ask the vet how much. "
    "No scale: take a low guess of its weight"
)
OURS = "Your vet and the label come first."
VET_ONLY = "Only a vet, or a hand that a vet has taught and that the vet asks now, gives this."
DRY = ("dry-signs", (("no sign of drying", "none"), ("some sign", "some"), ("a bad sign", "bad")))


@dataclass(frozen=True)
class Column:
    """What stands over a column, and what is known of each lamb in it."""

    title: str
    known: Mapping[str, Value]


@dataclass(frozen=True)
class Grown:
    """A table of a sum: whether its lambs are newborn or growing, its columns, and what to say of it."""

    columns: tuple[Column, ...]
    newborn: bool = False
    note: str = ""


def tables_of(guide: Guide) -> tuple[str, ...]:
    """Return the sums that have a table in this guide: all whose numbers it has, and some facts to go by."""
    return tuple(
        name
        for name, amount in AMOUNTS.items()
        if name in _MADE and all(number in guide.numbers for number in amount.numbers)
    )


def table_sections(words: Words) -> Iterator[str]:
    """Yield a section for each sum."""
    for name in tables_of(words.guide):
        amount, anchor = AMOUNTS[name], table_anchor(name)
        inner = _MADE[name](words, name) + _rests(words, name) + words.standing(f"sum/{name}")
        yield section(anchor, words.places.number(anchor), words.plain(amount.title), inner, "table")


def worked(words: Words, name: str, known: Mapping[str, Value]) -> str:
    """Return what a sum comes to, in the units that the book is written in."""
    made = AMOUNTS[name].work_out(Facts(words.guide.values(), known), words.making.system)
    return made.words(words.making.system).replace(" ", "\u00a0", 1)


def weights(system: System, newborn: bool) -> tuple[float, ...]:
    """Return the weights of the rows, in kg."""
    if system == "us":
        return tuple(pounds * KG_PER_LB for pounds in (POUNDS_NEWBORN if newborn else POUNDS_GROWING))
    return NEWBORN if newborn else GROWING


def _by_weight(words: Words, name: str) -> str:
    grown = _grown(words, name)
    guess = table_anchor("weight-guess")
    linked = words.places.link(guess, "from this table") if guess in words.places.numbers else "low"
    rows = (
        (
            show(kg, "kg", words.making.system).replace(" ", "\u00a0", 1),
            *(worked(words, name, {"weight": kg, **column.known}) for column in grown.columns),
        )
        for kg in weights(words.making.system, grown.newborn)
    )
    note = para(grown.note, "again") if grown.note else ""
    heads = ("It weighs", *(column.title for column in grown.columns))
    return note + para(f"{LIGHTER}, {linked}. {OURS}") + _table(words, name, heads, rows)


def _table(words: Words, name: str, heads: Sequence[str], rows: Iterator[tuple[str, ...]]) -> str:
    return table(words.plain(AMOUNTS[name].title), heads, rows)


def _grown(words: Words, name: str) -> Grown:
    once = (Column("It gets", {}),)
    if name.startswith("milk"):
        return Grown(tuple(Column(said, {"age": hours}) for said, hours in ages(words.guide)))
    if name == "fluid-day":
        finding, signs = DRY
        return Grown(tuple(Column(f"With {said}", {finding: choice}) for said, choice in signs))
    note = VET_ONLY if name == "glucose-dose" else ""
    return Grown(once, newborn=name != "electrolyte-dose", note=note)


def _feeds(words: Words, name: str) -> str:
    rows = (
        (said, worked(words, name, {"weather": weather} if weather else {}))
        for said, weather in (("Indoors, or in fair weather", ""), ("Out in cold wet wind", "cold-wet-wind"))
    )
    return _table(words, name, ("Where it is", "Feeds"), rows)


HOURS = (0.0, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 24.0)


def _time_left(words: Words, name: str) -> str:
    rows = ((show(hours, "h"), worked(words, name, {"age": hours})) for hours in HOURS)
    return _table(words, name, ("It is so old", "Time left"), rows)


def _guess(words: Words, name: str) -> str:
    """Return low guesses of the weight by how many were born together, and the age."""
    days = (0.0, 1.0, 2.0, 3.0, 5.0, 7.0, 10.0, 14.0, 21.0, 28.0, 42.0)
    born = ("single", "twin", "triplet")
    rows = (
        (
            f"{show(day, 'day')} old" if day else "Just born",
            *(worked(words, name, {"birth-type": each, "age": day * 24}) for each in (*born, UNSURE)),
        )
        for day in days
    )
    heads = ("It is so old", "Born alone", "A twin", "One of three or more", "Not known")
    said = "A guess is low on purpose. Weigh it when you can. Age not known: take it as just born."
    return para(said) + _table(words, name, heads, rows)


RATES = (100.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0)
"""Grams of powder for a litre, as bags say it."""


def _batch(words: Words, name: str) -> str:
    wanted = (500.0, 1000.0, 2000.0)
    ways = (("added to the water", "added-to"), ("made up to", "made-up-to"))
    rows = (
        (
            f"{words.one(grams, 'g')} {said} {words.one(1000, 'ml')}",
            *(worked(words, name, _bag(batch, grams, way)) for batch in wanted),
        )
        for said, way in ways
        for grams in RATES
    )
    heads = ("The bag says", *(f"For {words.one(batch, 'ml')} of milk" for batch in wanted))
    said = "Only the bag in your hand tells how much. Find its line. Another rate: ask the seller or the vet."
    return para(said) + _table(words, name, heads, rows)


def _bag(batch: float, grams: float, way: str) -> dict[str, Value]:
    return {"batch": batch, "bag-powder": grams, "bag-water": 1000.0, "bag-way": way}


def _rests(words: Words, name: str) -> str:
    """Return the numbers that a sum rests on, with links to what is published."""
    numbers = [words.guide.numbers[number] for number in AMOUNTS[name].numbers]
    said = "; ".join(
        f'<a href="#number-{each.name}">{words.plain(each.title)}</a>: {words.number(each.name)}'
        for each in numbers
    )
    return labelled("It rests on:", f"{said}." if said else "", "behind")


_MADE = {
    **dict.fromkeys(
        (
            *("first-milk", "first-milk-day", "first-milk-day-cold", "small-first-feed"),
            *("milk-feed", "milk-day", "milk-count", "electrolyte-dose", "fluid-day", "glucose-dose"),
        ),
        _by_weight,
    ),
    "first-milk-count": _feeds,
    "first-milk-good-time": _time_left,
    "first-milk-window": _time_left,
    "milk-batch": _batch,
    "weight-guess": _guess,
}
"""How the table of each sum is made."""
