"""The statements of two guides by their keys, and which of them were added, removed, renamed or changed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from triage.compare.sides import Sides
from triage.guide.model import Front, Guide
from triage.guide.model_practice import Typed, WrittenCase
from triage.problems import Place


def values_of(guide: Guide) -> dict[str, object]:
    """Return every statement of a guide but its sums, by key, as a value to be compared."""
    return dict(_values(guide))


def _values(guide: Guide) -> Iterator[tuple[str, object]]:
    yield "guide/front", _front(guide.front)
    kinds: tuple[tuple[str, Mapping[str, object]], ...] = (
        ("urgency", {each.name: each for each in guide.front.urgencies}),
        ("topic", guide.topics),
        ("finding", guide.findings),
        ("node", guide.nodes),
        ("number", guide.numbers),
        ("how-to", guide.how_tos),
        ("rule", guide.rules),
        ("term", guide.glossary),
        ("source", guide.sources),
        ("duty", guide.duties),
        ("law", guide.laws),
        ("item", guide.cupboard),
        ("deed", guide.deeds),
        ("case", {name: _case(each) for name, each in guide.cases.items()}),
    )
    for kind, each in kinds:
        for name, value in each.items():
            yield f"{kind}/{name}", value
    if guide.farm:
        yield "guide/farm", guide.farm


def _front(front: Front) -> Front:
    """Return the first page without what is other in each edition, and without what is told by itself."""
    return replace(front, edition="", date="", urgencies=())


def _case(case: WrittenCase) -> WrittenCase:
    """Return a case without the places of what is typed in it."""
    nowhere = Place("")
    return replace(
        case,
        findings={
            name: tuple(Typed(each.text, nowhere) for each in typed) for name, typed in case.findings.items()
        },
        vet_if={name: Typed(each.text, nowhere) for name, each in case.vet_if.items()},
        right_if={name: Typed(each.text, nowhere) for name, each in case.right_if.items()},
    )


@dataclass(frozen=True)
class Statements:
    """What became of the statements, each list in reading order."""

    old: Mapping[str, object]
    new: Mapping[str, object]
    added: tuple[str, ...]
    removed: tuple[str, ...]
    renamed: tuple[tuple[str, str], ...]
    both: tuple[str, ...]
    """Those that both have under one key, and that are not equal."""

    @property
    def changed(self) -> frozenset[str]:
        """Every key, of either guide, of a statement that is not in both as it is."""
        names = (name for pair in self.renamed for name in pair)
        return frozenset((*self.added, *self.removed, *names, *self.both))


def compared_statements(sides: Sides) -> Statements:
    """Return what became of each statement of the old guide, and what is new."""
    before, after = values_of(sides.guides[0]), values_of(sides.guides[1])
    pairs = {f"node/{was}": f"node/{name}" for name, was in sides.twins.old_name.items() if name != was}
    pairs |= {f"finding/{was}": f"finding/{name}" for name, was in sides.asked.renamed.items()}
    renamed = tuple((was, pairs[was]) for was in before if was in pairs and pairs[was] not in before)
    by_name = {name for pair in renamed for name in pair}
    return Statements(
        before,
        after,
        tuple(key for key in after if key not in before and key not in by_name),
        tuple(key for key in before if key not in after and key not in by_name),
        renamed,
        tuple(key for key in before if key in after and before[key] != after[key]),
    )
