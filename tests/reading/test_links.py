"""Where pages lead: what leans on what, both ways, with nothing lost however long a list is."""

from __future__ import annotations

from collections.abc import Iterator

from triage.page.wall import Wall
from triage.reading.kinds import title_of
from triage.reading.library import Library
from triage.reading.shelves import MOST, Choosable, Shelf, choices_on, contents, leading_on


def under(library: Library, choice: Choosable, depth: int = 1) -> Iterator[tuple[str, int]]:
    """Yield each statement that a choice leads to, with how many choices it takes."""
    if not isinstance(choice, Shelf):
        yield choice, depth
        return
    offered = choices_on(library, choice, Wall(library.guide))
    assert 1 <= len(offered) <= MOST, choice.title
    for _, each in offered:
        yield from under(library, each, depth + 1)


def test_each_leaning_is_told_on_both_pages(library: Library) -> None:
    """What a page leans on has that page among those that use it, and the other way round."""
    leans = {(key, to) for key in library.statements for to in keys(library, key, "Leans on")}
    used = {(by, key) for key in library.statements for by in keys(library, key, "Used by")}

    assert leans == used
    assert len(leans) > 5_000


def keys(library: Library, key: str, says: str) -> tuple[str, ...]:
    """The keys of one group of a page."""
    return next((group.keys for group in library.groups(key) if group.says == says), ())


def test_ways_are_told_at_both_ends(library: Library) -> None:
    """Where a question leads to a page, that page tells that it comes from the question."""
    leads = {(key, to) for key in library.of_kind["node"] for to in keys(library, key, "Leads to")}
    comes = {(by, key) for key in library.of_kind["node"] for by in keys(library, key, "Comes from")}

    assert leads == comes


def test_no_list_loses_anything(library: Library) -> None:
    """The choices at the foot of each page, and all lists behind them, hold every statement of its groups once."""
    wall = Wall(library.guide)
    for key in library.statements:
        groups = library.groups(key)
        offered = leading_on(library, wall, key)
        assert len(offered) <= MOST, key
        found = [each for _, choice in offered for each, _ in under(library, choice)]
        assert sorted(found) == sorted(each for group in groups for each in group.keys), key


def test_everything_is_a_few_choices_from_the_contents(library: Library) -> None:
    """Every statement that is no page of a walk within five choices, invented cases within six; findings in three."""
    wall = Wall(library.guide)
    steps = dict(under(library, contents(library, wall), 0))

    assert set(steps) == {key for key in library.statements if not key.startswith("node/")}
    most = {kind: max(steps[key] for key in keys) for kind, keys in library.of_kind.items() if kind != "node"}
    assert most.pop("case") <= 6
    assert max(most.values()) <= 5
    assert {most["topic"], most["finding"], most["how-to"]} <= {2, 3}
    assert most["rule"] <= 4


def test_every_page_of_a_walk_is_in_its_topic(library: Library) -> None:
    """Four choices at most lead from a topic to each of its places, and one to its map."""
    wall = Wall(library.guide)
    seen = set()
    for topic in library.of_kind["topic"]:
        offered = leading_on(library, wall, topic)
        steps = dict(step for _, choice in offered for step in under(library, choice))
        assert f"map/{topic.removeprefix('topic/')}" in [choice for _, choice in offered]
        assert max(steps.values()) <= 4
        seen |= set(steps)

    assert set(library.of_kind["node"]) <= seen


def test_a_part_of_a_list_is_called_by_its_first_and_last(library: Library) -> None:
    """So that a reader finds a title in the right part, as in a dictionary."""
    wall = Wall(library.guide)
    finding = next(each for each in contents(library, wall).shelves if "measured" in each.title)
    for words, part in choices_on(library, finding, wall):
        assert isinstance(part, Shelf)
        first, last = (title_of(wall, key) for key in (part.keys[0], part.keys[-1]))
        assert words == f"{first} to {last}"
    titles = [title_of(wall, key).casefold() for key in finding.keys]
    assert titles == sorted(titles)


def test_the_places_of_a_topic_stand_in_the_order_of_its_map(library: Library) -> None:
    """So that a number read on the map is found in the list, and each line of the list tells it."""
    held = keys(library, "topic/cold", "Holds")
    wall = Wall(library.guide)

    assert [library.number(key.removeprefix("node/")) for key in held] == list(range(1, len(held) + 1))
    listed = next(each for _, each in leading_on(library, wall, "topic/cold") if isinstance(each, Shelf))
    words, part = choices_on(library, listed, wall)[1]
    assert isinstance(part, Shelf)
    assert words.startswith(f"{len(choices_on(library, listed, wall)[0][1].keys) + 1} to ")  # type: ignore[union-attr]
    assert all("in Cold, limp or flat out)" in line for line, _ in choices_on(library, part, wall))


def test_the_contents_know_every_statement(library: Library) -> None:
    """The lists by kind, which are made without a digest, hold the statements of the review in the same order."""
    by_kind: dict[str, list[str]] = {}
    for key in library.statements:
        by_kind.setdefault(key.partition("/")[0], []).append(key)

    assert {kind: list(keys) for kind, keys in library.of_kind.items()} == by_kind
