"""Milk by weight: tables worked out by the sums that the night uses, and what is published beside them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from triage.amounts import AMOUNTS
from triage.amounts.feed import FEED_COUNTS
from triage.facts import Facts, Value
from triage.guide.model import Guide, Number
from triage.page.wall import FIRST_THE_GUIDE, Wall
from triage.paper.html import safe
from triage.paper.pieces import (
    PAD_EVEN,
    TURN,
    Part,
    Piece,
    Rows,
    blank,
    cell,
    head_of,
    listed,
    row,
    text,
    whole,
)
from triage.paper.setting import BODY, CELL, HEAD, LABEL, NOTE, SMALL, STRONG, TITLE, wide
from triage.rearing.reared import Bag
from triage.units import KG_PER_LB, System, show

NAME = "Milk tables"

KILOS = tuple(half / 2 for half in range(4, 25))
POUNDS = tuple(range(4, 27))
"""Weights of a row: 2 to 12 kg by half kilos, or 4 to 26 lb by pounds."""

NEWBORN = 7.0
"""The table of first milk ends here (kg): no lamb is born much heavier."""

FIRST = ("first-milk", "first-milk-day", "first-milk-day-cold", "small-first-feed")
MILK = ("milk-feed", "milk-day", "milk-count")
SCOUR = "electrolyte-dose"
BATCHES = {"metric": (250.0, 500.0, 1000.0, 2000.0), "us": (236.588, 473.176, 946.353, 1892.706)}
"""Milk mixed at once, in ml: as a jug shows it."""

BETWEEN = "Weigh it. Between two rows take the lighter one. No scale: open the guide, which guesses low."
READ_IT = (
    "One feed, and in small type what that makes in a day. A light lamb has a feed more where it says so. "
    "Electrolyte: label, law and vet first."
)
TOO_WEAK = "So too if it is cold, or does not suck."
GIVEN = "milk-week-"
PUBLISHED = (
    "first-milk-rate",
    "first-milk-day-rate",
    "first-milk-cold-extra",
    "milk-day-rate",
    "feed-ceiling",
    "feed-most",
)


def weights(system: System) -> tuple[float, ...]:
    """Return the weights of the rows, in kg."""
    return tuple(pounds * KG_PER_LB for pounds in POUNDS) if system == "us" else KILOS


def lacking(guide: Guide) -> tuple[str, ...]:
    """Return the numbers that a guide lacks for the tables."""
    asked = [number for name in (*FIRST, *MILK, SCOUR) for number in AMOUNTS[name].numbers]
    return tuple(name for name in dict.fromkeys(asked) if name not in guide.numbers)


def table_parts(wall: Wall, bag: Bag | None = None) -> Iterator[Part]:
    """Yield the tables: first milk, milk by age, mixing, and the small print."""
    yield text("First milk by weight", TITLE, "h1")
    yield from _before(wall)
    yield text(BETWEEN, BODY)
    yield _first(wall)
    yield from _mixing(wall, bag)
    yield TURN
    yield text("Milk by weight and age", TITLE, "h1")
    yield text(BETWEEN, BODY)
    yield _milk(wall)
    yield text(READ_IT, NOTE)
    yield from _small_print(wall)


def _before(wall: Wall) -> Iterator[Piece]:
    """Yield what is looked for before any feed."""
    asked, signs = wall.before_feed()
    if signs:
        yield whole(
            (text(asked, HEAD, "h2"), listed(signs, STRONG), text(f"{FIRST_THE_GUIDE} {TOO_WEAK}", BODY))
        )


def worked(wall: Wall, name: str, known: dict[str, Value]) -> str:
    """Return what a sum comes to, in words."""
    made = AMOUNTS[name].work_out(Facts(wall.guide.values(), known), wall.system)
    return show(made.figures[0].value, made.figures[0].unit, wall.system)


def _counted(wall: Wall, name: str, known: dict[str, Value]) -> str:
    return AMOUNTS[name].work_out(Facts(wall.guide.values(), known), wall.system).words(wall.system)


def _first(wall: Wall) -> Rows:
    columns = (30.0, 36.0, 38.0, 44.0, 36.0)
    heads = (
        "It weighs",
        "One feed",
        f"First day, {_counted(wall, 'first-milk-count', {})}",
        f"Out in cold wet wind, {_counted(wall, 'first-milk-count', {'weather': 'cold-wet-wind'})}",
        "Weak and just warmed: its first feed",
    )
    kilos = [kg for kg in weights(wall.system) if kg <= NEWBORN]
    return _table(wall, columns, heads, kilos, FIRST)


def _table(
    wall: Wall,
    columns: tuple[float, ...],
    heads: tuple[str, ...],
    kilos: Sequence[float],
    sums: tuple[str, ...],
) -> Rows:
    rows = []
    for kg in kilos:
        said = [worked(wall, name, {"weight": kg}) for name in sums]
        cells = [show(kg, "kg", wall.system), *said]
        rows.append(
            row(
                [
                    cell(each, STRONG if at < 2 else CELL, width)
                    for at, (each, width) in enumerate(zip(cells, columns, strict=True))
                ]
            )
        )
    return Rows(columns, head_of(heads, columns, LABEL), tuple(rows), "even")


def ages(guide: Guide) -> tuple[tuple[str, float], ...]:
    """Return the ages at which the number of feeds differs: in words, and one age of each in hours."""
    found, begin = [], 1
    for edge, _ in FEED_COUNTS:
        days = int(guide.numbers[edge].quantity.to("day").value)
        found.append((f"Days {begin} to {days}", days * 24.0))
        begin = days + 1
    return (*found, (f"From day {begin}", begin * 24.0))


AGED = (24.0, 34.0, 34.0, 34.0, 34.0, 24.0)


def _milk(wall: Wall) -> Rows:
    stages = ages(wall.guide)
    heads = (
        "It weighs",
        *(f"{said}: {_counted(wall, 'milk-count', {'age': hours})}" for said, hours in stages),
        "Scours: one dose of electrolyte",
    )
    rows = [
        row(
            [
                cell(show(kg, "kg", wall.system), STRONG, AGED[0]),
                *(_feed(wall, {"weight": kg, "age": hours}) for _, hours in stages),
                cell(worked(wall, SCOUR, {"weight": kg}), CELL, AGED[-1]),
            ]
        )
        for kg in weights(wall.system)
    ]
    return Rows(AGED, head_of(heads, AGED, LABEL), tuple(rows), "even")


def _feed(wall: Wall, known: dict[str, Value]) -> Piece:
    """Return one feed, with what that makes in a day beside it in small type."""
    one = worked(wall, "milk-feed", known)
    day, feeds = worked(wall, "milk-day", known), worked(wall, "milk-count", known)
    if feeds != worked(
        wall, "milk-count", {"age": known["age"]}
    ):  # a light lamb has one more than its age says
        day = f"{day} in {feeds}"
    html = f'<p class="{CELL.name}"><b>{safe(one)}</b> <span class="{SMALL.name}">{safe(day)}</span></p>'
    lines = 1 if wide(one, STRONG) + wide(f" {day}", SMALL) <= AGED[1] - PAD_EVEN else 2
    return Piece(html, lines * CELL.line)


def _mixing(wall: Wall, bag: Bag | None) -> Iterator[Part]:
    """Yield how much powder and water make a batch, or a line to write the bag's rate on."""
    yield text("Mixing milk", HEAD, "h2", leads=True)
    if bag is None:
        yield text("The bag says how much powder goes with how much water. Write it here.", BODY, leads=True)
        yield blank("", BODY, 11)
        return
    columns = (40.0, 72.0, 72.0)
    rows = []
    for batch in BATCHES[wall.system]:
        known: dict[str, Value] = {
            "batch": batch,
            "bag-powder": float(bag.powder),
            "bag-water": float(bag.water),
            "bag-way": bag.way,
        }
        made = AMOUNTS["milk-batch"].work_out(Facts(wall.guide.values(), known), wall.system)
        said = [show(batch, "ml", wall.system), *(figure.words(wall.system) for figure in made.figures)]
        rows.append(row([cell(each, CELL, width) for each, width in zip(said, columns, strict=True)]))
    heads = ("Milk wanted", "Powder, by this holding's bag", "Water")
    yield Rows(columns, head_of(heads, columns, LABEL), tuple(rows), "even")
    yield text("Is it the bag in your hand? Each bag has its own rate.", NOTE)


def _small_print(wall: Wall) -> Iterator[Part]:
    """Yield where the rates come from, and where published tables disagree."""
    numbers = wall.guide.numbers
    named = [*PUBLISHED, *(name for name in numbers if name.startswith(GIVEN))]
    yield TURN
    yield text("Where the tables come from", HEAD, "h2", leads=True)
    for name in named:
        if name in numbers:
            yield text(_published(wall, numbers[name]), SMALL)


def _published(wall: Wall, number: Number) -> str:
    told = "; ".join(
        f"{_span(wall, span, number.unit)} ({_who(wall.guide, name)})"
        for name, span in number.published.items()
    )
    taken = f" Taken: {wall.number(number.name)}." if not number.name.startswith(GIVEN) else ""
    note = number.note.partition(" is taken. ")
    return f"{number.title}. Published: {told}.{taken} {note[2] or note[0]}".rstrip()


def _span(wall: Wall, span: tuple[float, float], unit: str) -> str:
    low, high = (show(each, unit, wall.system) for each in span)
    return low if low == high else f"{low} to {high}"


def _who(guide: Guide, name: str) -> str:
    source = guide.sources.get(name)
    return (source.by or source.title) if source else name
