"""What a guide is made of. Everything here is frozen, and knows where it was written."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from triage.problems import Place, Problem
from triage.units import Quantity

if TYPE_CHECKING:
    from triage.guide.items import Item
    from triage.guide.known import Known
    from triage.guide.model_practice import Deed, Farm, WrittenCase
    from triage.guide.model_rearing import Duty, Law
    from triage.guide.model_rules import Rule

COMMON_PRACTICE = "common-practice"
FROM_MEMORY = "from-memory"
PLACEHOLDER = re.compile(r"\{([^{}]*)\}")
"""A number or a sum named in a text, as {severe-chill}."""

NOT_PUBLISHED = (COMMON_PRACTICE, FROM_MEMORY)
"""Words that stand where a source is asked for, and say that there is none."""

_SOMEWHERE = Place("")


@dataclass(frozen=True)
class Urgency:
    """How soon a vet is needed; the guide lists them most urgent first."""

    name: str
    say: str
    means: str
    opens: str = ""
    """How the call line of such an end opens; only urgencies that call a vet have it."""
    asks: str = ""
    """What is asked of the vet at this urgency."""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Rises:
    """The usual top of a measurement rises with another one: `by` (a number) for `each` unit of it."""

    with_: str
    each: str
    by: str
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Condition:
    """What an answer may be: a choice, a band between named numbers, "not sure", or not asked at all."""

    is_: tuple[str, ...] = ()
    above: str = ""
    from_: str = ""
    below: str = ""
    up_to: str = ""
    unsure: bool = False
    unasked: bool = False
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Finding:
    """One thing that can be seen or measured; it has either choices or a unit."""

    name: str
    label: str
    ask: str
    why: str
    choices: Mapping[str, str] = field(default_factory=dict)
    measure: str = ""
    plausible: tuple[float, float] = (0.0, 0.0)
    usual: tuple[float, float] | None = None
    usual_rises: Rises | None = None
    look: str = ""
    how: str = ""
    stand_ins: tuple[str, ...] = ()
    unsure: str = ""
    never_unsure: str = ""
    normal: Condition | None = None
    """Which answers are normal; without it none is, and none is a worry by itself."""
    given: Condition | None = None
    """Which answers say that something was given by mouth or needle."""
    place: Place = field(default=_SOMEWHERE, compare=False)


Lamb = Mapping[str, tuple[Condition, ...]]
"""Which lambs are meant: for each finding named, its answer meets one of the conditions."""


@dataclass(frozen=True)
class Branch:
    """One way out of an ask node: exactly one of the tests is set."""

    go: str
    is_: tuple[str, ...] = ()
    below: str = ""
    up_to: str = ""
    otherwise: bool = False
    unsure: bool = False
    at_least: str = ""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Ask:
    """A node that asks one finding, and where each answer leads."""

    name: str
    topic: str
    finding: str
    branches: tuple[Branch, ...]
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Step:
    """One thing to do, what it does to the lamb (its tags), and the technique it needs."""

    do: str
    tag: tuple[str, ...]
    how: str = ""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Act:
    """A node of things to do now; after it, `forget` findings are asked again."""

    name: str
    topic: str
    title: str
    steps: tuple[Step, ...]
    then: str
    cautions: tuple[str, ...] = ()
    wait: str = ""
    forget: tuple[str, ...] = ()
    at_most: int = 0
    else_: str = ""
    sources: tuple[str, ...] = ()
    certainty: str = ""
    for_: Lamb = field(default_factory=dict)
    must_say: tuple[str, ...] = ()
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class End:
    """An outcome: what to do, what not to do, when to call, when to look again."""

    name: str
    topic: str
    urgency: str
    title: str
    do: tuple[Step, ...]
    cautions: tuple[str, ...]
    call_vet: str
    likely: str = ""
    look_again: str = ""
    sources: tuple[str, ...] = ()
    certainty: str = ""
    for_: Lamb = field(default_factory=dict)
    must_say: tuple[str, ...] = ()
    place: Place = field(default=_SOMEWHERE, compare=False)


Node = Ask | Act | End


@dataclass(frozen=True)
class Topic:
    """One reason people open the guide."""

    name: str
    title: str
    about: str
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Number:
    """A threshold or rate: one value, what each source says, and which side is safer."""

    name: str
    title: str
    value: float
    unit: str
    published: Mapping[str, tuple[float, float]]
    safer: str
    certainty: str
    note: str = ""
    place: Place = field(default=_SOMEWHERE, compare=False)

    @property
    def quantity(self) -> Quantity:
        """Return the value with its unit."""
        return Quantity(self.value, self.unit)


@dataclass(frozen=True)
class HowTo:
    """A technique, step by step."""

    name: str
    title: str
    steps: tuple[str, ...]
    cautions: tuple[str, ...]
    sources: tuple[str, ...]
    certainty: str
    why: str = ""
    need: tuple[str, ...] = ()
    right: str = ""
    stop: str = ""
    note: str = ""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Term:
    """A trade word in plain words, with the other ways it is written."""

    word: str
    means: str
    also: tuple[str, ...] = ()
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Source:
    """A publication and its grade: A paper, B practice or extension, C trade press, D other."""

    name: str
    title: str
    grade: str
    by: str = ""
    in_: str = ""
    year: str = ""
    where: str = ""
    note: str = ""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class TagWords:
    """Words that give a step away: where a text says them, the step has one of these tags."""

    says: tuple[str, ...]
    tag: tuple[str, ...]
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Front:
    """The guide's first page: `guide.yaml`."""

    edition: str
    date: str
    title: str
    intended_use: str
    not_covered: tuple[str, ...]
    way_in: str
    danger_signs: Mapping[str, tuple[str, ...]]
    urgencies: tuple[Urgency, ...]
    topics: tuple[str, ...]
    act_tags: Mapping[str, str]
    tag_words: tuple[TagWords, ...] = ()
    tag_changes: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """What a step of this tag changes in a lamb: an act that has it makes these findings forgotten."""
    bare_tags: tuple[str, ...] = ()
    """Tags whose steps need nothing from the cupboard by themselves."""
    vet_asks: tuple[str, ...] = ()
    """Findings that a vet asks about for any such lamb; what was not looked at is told."""
    unless_told: Mapping[str, str] = field(default_factory=dict)
    """What the way in asks, and the answer that is taken as known unless a walk begins by answering it."""
    review_by: str = ""
    """The day by which the guidance is to be read again, year first."""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Read:
    """What came of reading a folder: the guide when it is sound, and every problem found."""

    guide: Guide | None
    problems: tuple[Problem, ...]
    unreadable: str = ""
    """Why the folder itself could not be read; then there are no problems with places."""
    part: Guide | None = None
    """Of a guide with mistakes, the parts that are whole in themselves; never to be walked."""


@dataclass(frozen=True)
class Guide:
    """All the guidance as one whole, every name in it resolved."""

    front: Front
    topics: Mapping[str, Topic]
    findings: Mapping[str, Finding]
    nodes: Mapping[str, Node]
    numbers: Mapping[str, Number]
    how_tos: Mapping[str, HowTo]
    glossary: Mapping[str, Term]
    sources: Mapping[str, Source]
    rules: Mapping[str, Rule] = field(default_factory=dict)
    duties: Mapping[str, Duty] = field(default_factory=dict)
    laws: Mapping[str, Law] = field(default_factory=dict)
    cupboard: Mapping[str, Item] = field(default_factory=dict)
    """Read for the check and for `triage cupboard`; a walk leaves it out, as it does the rules."""
    cases: Mapping[str, WrittenCase] = field(default_factory=dict)
    deeds: Mapping[str, Deed] = field(default_factory=dict)
    farm: Farm | None = None
    """Read for the check and for practice."""
    known: Known | None = field(default=None, compare=False)
    """Where it comes from, and what is known of it."""

    @cached_property
    def by_topic(self) -> Mapping[str, tuple[Node, ...]]:
        """The nodes of each topic, in the order in which they are written."""
        found: dict[str, list[Node]] = {}
        for node in self.nodes.values():
            found.setdefault(node.topic, []).append(node)
        return {topic: tuple(nodes) for topic, nodes in found.items()}

    @cached_property
    def _ranks(self) -> Mapping[str, int]:
        return {each.name: at for at, each in enumerate(self.front.urgencies)}

    def values(self) -> dict[str, float]:
        """Return every number's value by name, for the sums."""
        return {name: number.value for name, number in self.numbers.items()}

    def rank(self, urgency: str) -> int:
        """Return how urgent: 0 is the most; no urgency ranks after all others."""
        return self._ranks.get(urgency, len(self.front.urgencies))

    def urgency(self, name: str) -> Urgency:
        """Return an urgency by name."""
        return self.front.urgencies[self.rank(name)]

    @property
    def top(self) -> str:
        """Return the name of the most urgent urgency."""
        return self.front.urgencies[0].name
