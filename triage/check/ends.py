"""Every end is complete: something to do, a caution, when to call, when to look, sources, certainty."""

from __future__ import annotations

import re
from collections.abc import Iterator

from triage.guide.model import COMMON_PRACTICE, FROM_MEMORY, NOT_PUBLISHED, Act, Ask, End, Guide
from triage.guide.texts import texts_of
from triage.problems import Place, Problem

SENTENCE_END = re.compile(r"(?<=[.?!])\s")


def complete(guide: Guide) -> Iterator[Problem]:
    """Acts and ends say what stands behind them, and ends say when to look again."""
    for name, node in guide.nodes.items():
        if isinstance(node, End):
            for field, value in (
                ("likely", node.likely),
                ("sources", node.sources),
                ("certainty", node.certainty),
                ("call_vet", node.call_vet),
            ):
                if not value:
                    yield Problem(node.place, f"end '{name}' lacks '{field}'; add it", "incomplete-end")
            if not node.look_again and node.urgency != guide.top:
                what = f"end '{name}' lacks 'look_again'; only a '{guide.top}' end may leave it out"
                yield Problem(node.place, what, "incomplete-end")
        if isinstance(node, End | Act):
            yield from sure(guide, name, node.place, node.sources, node.certainty)


def calls_as_it_says(guide: Guide) -> Iterator[Problem]:
    """The line about the vet opens with the call of the end's urgency, and with no other."""
    opening = {each.name: each.opens for each in guide.front.urgencies}
    for node in guide.nodes.values():
        if not isinstance(node, End):
            continue
        wanted, first = opening[node.urgency], SENTENCE_END.split(node.call_vet, maxsplit=1)[0]
        if wanted and not node.call_vet.startswith(wanted):
            what = f"'{node.name}' is a '{node.urgency}' end, so its call_vet should open with '{wanted}'"
            yield Problem(node.place, what, "call-line")
        other = next((each for each in opening.values() if each and first.startswith(each)), "")
        if not wanted and other and " if " not in f"{first} ":
            what = f"'{node.name}' opens its call_vet with '{other}', but is a '{node.urgency}' end; say when"
            yield Problem(node.place, what, "call-line")


def must_say(guide: Guide) -> Iterator[Problem]:
    """The words that a vet would never let a page lose stand on it, and every page has some."""
    for node in guide.nodes.values():
        if isinstance(node, Ask):
            continue
        said = " ".join(text.text for text in texts_of(node)).lower()
        for words in node.must_say:
            if words.lower() not in said:
                what = f"'{node.name}' must say '{words}', and no text of it does; put it back"
                yield Problem(node.place, what, "must-say")


def sure(
    guide: Guide, name: str, place: Place, sources: tuple[str, ...], certainty: str
) -> Iterator[Problem]:
    """What rests on no publication says so, and what rests on weak pages is not called sure."""
    published = [source for source in sources if source not in NOT_PUBLISHED]
    grades = {guide.sources[source].grade if source in guide.sources else "" for source in published}
    if sources and not published and certainty not in (COMMON_PRACTICE, FROM_MEMORY, "low"):
        what = f"'{name}' has no published source; its certainty can't be '{certainty}'"
        yield Problem(place, what, "certainty")
    if grades == {"D"} and certainty in ("high", "moderate"):
        what = f"'{name}' rests on grade D alone; its certainty can't be '{certainty}'"
        yield Problem(place, what, "certainty")
