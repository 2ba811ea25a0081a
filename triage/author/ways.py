"""What a new topic asks for in the other files of its guide: to be listed, and answers that lead there."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from triage.author.cases import cases_text
from triage.author.pastes import Paste
from triage.author.topic import nodes_of
from triage.check.screens import MOST_CHOICES
from triage.guide.files import CHANGES
from triage.guide.find import Folder
from triage.guide.model import Ask, Finding, Guide
from triage.guide.read import read_file
from triage.guide.shapes import Reading
from triage.guide.text import Fields, Items, Text
from triage.guide.texts import UNWRITTEN
from triage.review.editions import read_cut

LISTS = ("more-trouble", "trouble", "reason")
"""The findings whose choices lead to the topics, the last one first: it holds what is met least."""

FRONT = "guide.yaml"


@dataclass(frozen=True)
class Ways:
    """What is pasted for a new topic, and what is open after that."""

    pastes: tuple[Paste, ...]
    open: tuple[str, ...]


def ways_to(folder: Folder, guide: Guide, name: str) -> Ways:
    """Return what the guide in a folder has to be given so that its keepers come to a new topic."""
    finding = _list_of(guide)
    asking = _asking(guide, finding) if finding else ()
    entered = tuple(_entered(folder, guide, name))
    led = tuple(_led(folder, finding, asking, name)) if finding else ()
    practised = cases_text(guide, name, finding.name) if finding else ""
    case = [Paste(f"practice/{name}.yaml", "new", tuple(practised.splitlines()))] if practised else []
    keys = (
        "guide/front",
        f"topic/{name}",
        *(f"node/{each}" for each in nodes_of(name)),
        *([f"finding/{finding.name}"] if finding else []),
        *(f"node/{each.name}" for each in asking),
        *re.findall(r"^([a-z0-9-]+):$", practised, re.MULTILINE),
    )
    told = tuple(_explained(folder, guide, tuple(_as_key(key) for key in keys)))
    return Ways((*entered, *led, *case, *told), tuple(_open(guide, finding, practised, told, name)))


def _as_key(key: str) -> str:
    return key if "/" in key else f"case/{key}"


def _list_of(guide: Guide) -> Finding | None:
    """Return the finding that gets a choice for the topic: one that has room, or else the last of them."""
    lists = [guide.findings[name] for name in LISTS if name in guide.findings]
    roomy = (each for each in lists if each.choices and _shown(each) < MOST_CHOICES)
    return next(roomy, next(iter(lists), None))


def _shown(finding: Finding) -> int:
    return len(finding.choices) + (0 if finding.never_unsure else 1)


def _asking(guide: Guide, finding: Finding) -> tuple[Ask, ...]:
    return tuple(
        node for node in guide.nodes.values() if isinstance(node, Ask) and node.finding == finding.name
    )


def _entered(folder: Folder, guide: Guide, name: str) -> Iterator[Paste]:
    """Yield the list of topics with the new one at its end."""
    text = (folder / FRONT).read_text(encoding="utf-8").splitlines()
    written = read_file(FRONT, folder / FRONT, Reading())
    topics = written.fields.get("topics") if written else None
    if not isinstance(topics, Items) or not isinstance(topics.items[-1], Text):
        return
    last = topics.items[-1]
    line = text[last.place.line - 1]
    if line.lstrip().startswith("- "):
        yield Paste(FRONT, "below", (f"{line.partition('-')[0]}- {name}",), last.place.line)
        return
    at = last.place.column - 1
    end = at + len(last.text) + 2 * (line[at] in "\"'")
    yield Paste(FRONT, "instead", (f"{line[:end]}, {name}{line[end:]}",), last.place.line)


def _led(folder: Folder, finding: Finding, asking: tuple[Ask, ...], name: str) -> Iterator[Paste]:
    """Yield a choice of the list, above its last one, and the branch for it wherever the list is asked."""
    file = finding.place.file
    written = read_file(file, folder / file, Reading())
    entry = written.fields.get(finding.name) if written else None
    choices = entry.fields.get("choices") if isinstance(entry, Fields) else None
    if not isinstance(choices, Fields):
        return
    last = list(choices.keys.values())[-1]
    yield Paste(file, "above", (f'{" " * (last.column - 1)}{name}: "{UNWRITTEN}: {name}"',), last.line)
    for node in asking:
        branch = node.branches[-1].place
        line = f"{' ' * (branch.column - 3)}- {{is: {name}, go: {name}, at_least: vet-today}}"
        yield Paste(branch.file, "above", (line,), branch.line)


def _explained(folder: Folder, guide: Guide, keys: tuple[str, ...]) -> Iterator[Paste]:
    """Yield the next edition's name, and the place for why it changed, where an edition was cut before."""
    cut = read_cut(folder)
    if cut is None:
        return
    edition = guide.front.edition
    if edition == cut.edition:
        edition = next_edition(edition)
        yield from _named(folder, edition)
    lines = (f"  - of: [{', '.join(keys)}]", '    why: ""')
    place = _place_of(folder, edition)
    if place:
        yield Paste(CHANGES, "below", lines, place)
    else:
        there = (folder / CHANGES).is_file()
        yield Paste(CHANGES, "end" if there else "new", (f'"{edition}":', *lines))


def _named(folder: Folder, edition: str) -> Iterator[Paste]:
    written = read_file(FRONT, folder / FRONT, Reading())
    if written:
        yield Paste(FRONT, "instead", (f'edition: "{edition}"',), written.keys["edition"].line)


def _place_of(folder: Folder, edition: str) -> int:
    written = read_file(CHANGES, folder / CHANGES, Reading())
    return written.keys[edition].line if written and edition in written.keys else 0


def next_edition(edition: str) -> str:
    """Return what may follow an edition: its last number and one, or the first number behind its name."""
    found = re.fullmatch(r"(.*?)(\d+)", edition)
    return f"{found[1]}{int(found[2]) + 1}" if found else f"{edition}.1"


def _open(
    guide: Guide, finding: Finding | None, practised: str, told: tuple[Paste, ...], name: str
) -> Iterator[str]:
    """Yield what nobody but the author can decide."""
    if finding is None:
        yield f"No answer leads to it yet. Give one a branch, such as {{is: ANSWER, go: {name}}}."
    elif _shown(finding) >= MOST_CHOICES:
        yield (
            f"'{finding.name}' then shows {_shown(finding) + 1} answers, and {MOST_CHOICES} at most are read "
            "at night. Make one of two that belong together, or lead here from a page of its kind instead."
        )
    yield f"Write each text with {UNWRITTEN}. The check names each of them, until there is none."
    if practised:
        yield "Write the stories and what to remember in the practice cases."
    if told:
        yield f"Say in {CHANGES} why the guide needs this topic: the 'why' is empty."
