"""Where pages lead: what leans on what, both ways, with nothing lost however long a list is."""

from __future__ import annotations

from collections.abc import Iterator

from triage.page.wall import Wall
from triage.reading.collection import Collection
from triage.reading.kinds import title_of
from triage.reading.shelves import MOST, Choosable, Shelf, choices_on, contents, leading_on


def under(collection: Collection, choice: Choosable, depth: int = 1) -> Iterator[tuple[str, int]]:
    """Yield each statement that a choice leads to, with how many choices it takes."""
    if not isinstance(choice, Shelf):
        yield choice, depth
        return
    offered = choices_on(collection, choice, Wall(collection.guide))
    assert 1 <= len(offered) <= MOST, choice.title
    for _, each in offered:
        yield from under(collection, each, depth + 1)


def test_each_leaning_is_told_on_both_pages(collection: Collection) -> None:
    """What a page leans on has that page among those that use it, and the other way round."""
    leans = {(key, to) for key in collection.statements for to in keys(collection, key, "Leans on")}
    used = {(by, key) for key in collection.statements for by in keys(collection, key, "Used by")}

    assert leans == used
    assert len(leans) > 5_000


def keys(collection: Collection, key: str, says: str) -> tuple[str, ...]:
    """The keys of one group of a page."""
    return next((group.keys for group in collection.groups(key) if group.says == says), ())


def test_ways_are_told_at_both_ends(collection: Collection) -> None:
    """Where a question leads to a page, that page tells that it comes from the question."""
    leads = {(key, to) for key in collection.of_kind["node"] for to in keys(collection, key, "Leads to")}
    comes = {(by, key) for key in collection.of_kind["node"] for by in keys(collection, key, "Comes from")}

    assert leads == comes


def test_no_list_loses_anything(collection: Collection) -> None:
    """The choices at the foot of each page, and all lists behind them, hold every statement of its groups once."""
    wall = Wall(collection.guide)
    for key in collection.statements:
        groups = collection.groups(key)
        offered = leading_on(collection, wall, key)
        assert len(offered) <= MOST, key
        found = [each for _, choice in offered for each, _ in under(collection, choice)]
        assert sorted(found) == sorted(each for group in groups for each in group.keys), key


def test_everything_is_a_few_choices_from_the_contents(collection: Collection) -> None:
    """Every statement that is no page of a walk within five choices, invented cases within six; findings in three."""
    wall = Wall(collection.guide)
    steps = dict(under(collection, contents(collection, wall), 0))

    assert set(steps) == {key for key in collection.statements if not key.startswith("node/")}
    most = {
        kind: max(steps[key] for key in keys) for kind, keys in collection.of_kind.items() if kind != "node"
    }
    assert most.pop("case") <= 6
    assert max(most.values()) <= 5
    assert {most["topic"], most["finding"], most["how-to"]} <= {2, 3}
    assert most["rule"] <= 4


def test_every_page_of_a_walk_is_in_its_topic(collection: Collection) -> None:
    """Four choices at most lead from a topic to each of its places, and one to its map."""
    wall = Wall(collection.guide)
    seen = set()
    for topic in collection.of_kind["topic"]:
        offered = leading_on(collection, wall, topic)
        steps = dict(step for _, choice in offered for step in under(collection, choice))
        assert f"map/{topic.removeprefix('topic/')}" in [choice for _, choice in offered]
        assert max(steps.values()) <= 4
        seen |= set(steps)

    assert set(collection.of_kind["node"]) <= seen


def test_a_part_of_a_list_is_called_by_its_first_and_last(collection: Collection) -> None:
    """So that a reader finds a title in the right part, as in a dictionary."""
    wall = Wall(collection.guide)
    finding = next(each for each in contents(collection, wall).shelves if "measured" in each.title)
    for words, part in choices_on(collection, finding, wall):
        assert isinstance(part, Shelf)
        first, last = (title_of(wall, key) for key in (part.keys[0], part.keys[-1]))
        assert words == f"{first} to {last}"
    titles = [title_of(wall, key).casefold() for key in finding.keys]
    assert titles == sorted(titles)


def test_the_places_of_a_topic_stand_in_the_order_of_its_map(collection: Collection) -> None:
    """So that a number read on the map is found in the list, and each line of the list tells it."""
    held = keys(collection, "topic/cold", "Holds")
    wall = Wall(collection.guide)

    assert [collection.number(key.removeprefix("node/")) for key in held] == list(range(1, len(held) + 1))
    listed = next(each for _, each in leading_on(collection, wall, "topic/cold") if isinstance(each, Shelf))
    words, part = choices_on(collection, listed, wall)[1]
    assert isinstance(part, Shelf)
    assert words.startswith(f"{len(choices_on(collection, listed, wall)[0][1].keys) + 1} to ")  # type: ignore[union-attr]
    assert all("in Cold, limp or flat out)" in line for line, _ in choices_on(collection, part, wall))


def test_the_contents_know_every_statement(collection: Collection) -> None:
    """The lists by kind, which are made without a digest, hold the statements of the review in the same order."""
    by_kind: dict[str, list[str]] = {}
    for key in collection.statements:
        by_kind.setdefault(key.partition("/")[0], []).append(key)

    assert {kind: list(keys) for kind, keys in collection.of_kind.items()} == by_kind
