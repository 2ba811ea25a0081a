"""What replaying every walk finds in a guide, each by its plain definition."""

from __future__ import annotations

from collections.abc import Iterator

from tests.published.naive import NO_BRANCH, Point, Replay, Way, least_sure, next_shown
from tests.published.naive_claims import idle_rules, least_moves
from tests.published.two_engines import Easy, Found, Told, Urgent
from triage.facts import UNSURE
from triage.guide.model import Ask, End, Guide
from triage.problems import Place


def found_by_replay(replay: Replay) -> Found:
    """Return what replaying every walk finds."""
    guide = replay.guide
    met = {point.node.name for point in replay.points}
    taken = {
        (point.node.name, way.branch, way.value is None)
        for point in replay.points
        for way in point.ways
        if way.branch != NO_BRANCH
    }
    branches = {key[:2] for key in taken}
    return Found(
        frozenset(met),
        frozenset(taken),
        frozenset(least_moves(replay)),
        frozenset(point.node.place for point, value in replay.stuck if value is UNSURE),
        frozenset(
            branch.place
            for node in guide.nodes.values()
            for at, branch in enumerate(node.branches if isinstance(node, Ask) else ())
            if node.name in met and (node.name, at) not in branches
        ),
        frozenset(node.place for node in guide.nodes.values() if node.name not in met),
    )


def urgent_by_replay(replay: Replay) -> Urgent:
    """Return what replaying every walk finds of urgency and length."""
    longest: dict[str, int] = {}
    for shown in screens(replay):
        longest[shown[-1]] = max(len(shown), longest.get(shown[-1], 0))
    return Urgent(
        len(replay.finished),
        frozenset(idle_rules(replay)),
        longest,
        frozenset(node for node, _ in easy_by_replay(replay)),
        frozenset(_late(replay)),
        frozenset(_understated(replay)),
        frozenset(slighted(replay)),
    )


def screens(replay: Replay) -> set[tuple[str, ...]]:
    """Return the different screens of each walk to its end, in the order in which they are first met."""
    return {tuple(dict.fromkeys((*walk.state.met, walk.node.name))) for walk in replay.finished}


def untold_at(replay: Replay, urgency: str) -> set[Place]:
    """Return the branches after which some walk shows a page, not an end, with this urgency still untold."""
    sure = replay.guide.rank(urgency)
    return {
        _place(point, way)
        for point in replay.points
        for way in point.ways
        if way.branch != NO_BRANCH and _untold(point, way, sure)
    }


def branches_taken(replay: Replay) -> set[Place]:
    """Return where each branch that is taken, asked or in silence, is written."""
    return {
        _place(point, way) for point in replay.points for way in point.ways if isinstance(point.node, Ask)
    }


def _place(point: Point, way: Way) -> Place:
    assert isinstance(point.node, Ask)
    return point.node.branches[way.branch].place


def _late(replay: Replay) -> set[Told]:
    """A branch is late when all its walks come to a call, and on one of them it is not told by then."""
    urgencies = replay.guide.front.urgencies
    taken: dict[Place, list[tuple[Point, Way]]] = {}
    for point in replay.points:
        for way in point.ways:
            if way.branch != NO_BRANCH:
                taken.setdefault(_place(point, way), []).append((point, way))
    late: set[Told] = set()
    for place, ways in taken.items():
        sure = max(way.to.sure for _, way in ways)
        if sure < replay.nobody and urgencies[sure].opens and any(_untold(*each, sure) for each in ways):
            late.add((place, urgencies[sure].name))
    return late


def _untold(point: Point, way: Way, sure: int) -> bool:
    """Whether a person does not know of an urgency on the next page yet; an end would tell of it itself."""
    return min(point.told, way.raises) > sure and not isinstance(next_shown(way.to).node, End)


def _understated(replay: Replay) -> set[Told]:
    """An end is understated when every walk to it was told of something more urgent."""
    told: dict[str, list[int]] = {}
    for point in replay.points:
        if isinstance(point.node, End):
            told.setdefault(point.node.name, []).append(point.told)
    guide, found = replay.guide, set[Told]()
    for name, ranks in told.items():
        node = guide.nodes[name]
        assert isinstance(node, End)
        if max(ranks) < guide.rank(node.urgency):
            found.add((node.place, guide.front.urgencies[max(ranks)].name))
    return found


def slighted(replay: Replay) -> set[Place]:
    """A danger sign is slighted by a branch not of the top urgency, unless an end says it on the next page."""
    guide, found = replay.guide, set[Place]()
    for point in replay.points:
        node = point.node
        signs = guide.front.danger_signs.get(node.finding, ()) if isinstance(node, Ask) else ()
        for way in point.ways:
            if way.value in signs and way.raises != 0:
                there = next_shown(way.to).node
                if not (isinstance(there, End) and there.urgency == guide.top):
                    found.add(_place(point, way))
    return found


def easy_by_replay(replay: Replay) -> set[tuple[str, Easy]]:
    """Return each question, of every walk, at which "not sure" is sure of less than a known answer."""
    names, found = _names(replay.guide), set()
    for point, unsure, (place, mine) in _not_sure(replay):
        others = [least_sure(way) for way in point.ways if way is not unsure]
        worst = min(others, default=replay.nobody)
        if mine > worst:
            found.add((point.node.name, (place, names[mine], names[worst])))
    return found


def settled(replay: Replay) -> set[tuple[str, Told]]:
    """Return each question answered with "not sure", the branch that settles that, and what it is sure of."""
    names = _names(replay.guide)
    return {(point.node.name, (place, names[mine])) for point, _, (place, mine) in _not_sure(replay)}


def _names(guide: Guide) -> list[str]:
    return [*(each.name for each in guide.front.urgencies), "nothing"]


def _not_sure(replay: Replay) -> Iterator[tuple[Point, Way, tuple[Place, int]]]:
    for point in replay.points:
        for unsure in [way for way in point.ways if way.value is UNSURE]:
            if (last := _settled(replay.guide, point, unsure)) is not None:
                at, way = last
                yield point, unsure, (_place(at, way), min(at.told, least_sure(way)))


def _settled(guide: Guide, point: Point, way: Way) -> tuple[Point, Way] | None:
    """Return where "not sure" is settled: here, or at the last stand-in that is not sure either.

    None when a stand-in is known, or can't be unsure: then it settles the matter by itself.
    """
    assert isinstance(point.node, Ask)
    stand_ins = guide.findings[point.node.finding].stand_ins
    while isinstance(way.to.node, Ask) and way.to.node.finding in stand_ins:
        point = way.to
        assert isinstance(point.node, Ask)
        if not point.shown and point.known[point.node.finding] is not UNSURE:
            return None
        unsure = [each for each in point.ways if not point.shown or each.value is UNSURE]
        if not unsure:
            return None
        way = unsure[0]
    return point, way
