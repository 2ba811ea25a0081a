"""The fields of every knowledge file: this table is the format, and the reader obeys it."""

from __future__ import annotations

from triage.guide import model, model_practice, model_rearing, model_rules
from triage.guide.items import HowMany, Item
from triage.guide.leaves import AsTyped, Day, Decimal, OneOf, Plain, Prose, Ref, Span, Whole, Yes
from triage.guide.limits import ExactlyOne, Lacks, Needs, NotBoth
from triage.guide.shapes import ListOf, MapOf, Record, Shape
from triage.units import UNITS

FIRST = ("tonight", "this-week", "season")
"""By when a thing has to be there, the soonest first."""
CERTAINTIES = ("high", "moderate", "low", model.COMMON_PRACTICE, model.FROM_MEMORY)

_NUMBERS_ONLY = Prose(("number",))
_FINDING = Ref(("finding",))
_NODE = Ref(("node",))
_URGENCY = Ref(("urgency",))
_NUMBER = Ref(("number",))
_DURATION = _NUMBER
_TAGS = ListOf(Ref(("act tag",)), or_one=True)
_SOURCES = ListOf(Ref(("source",)))
_CERTAINTY = OneOf(CERTAINTIES)
_UNIT = OneOf(tuple(UNITS))
_PROOF_ONLY = frozenset(("for", "must_say"))

RISES: Record[model.Rises] = Record(
    "usual-rises", model.Rises, {"with": _FINDING, "each": _UNIT, "by": _NUMBER}
)

CONDITION: Record[model.Condition] = Record(
    "condition",
    model.Condition,
    {},
    {
        "is": ListOf(Plain(), or_one=True),
        "above": _NUMBER,
        "from": _NUMBER,
        "below": _NUMBER,
        "up_to": _NUMBER,
        "unsure": Yes(),
        "unasked": Yes(),
    },
    limits=(
        ExactlyOne((("is",), ("above", "from", "below", "up_to"), ("unsure",), ("unasked",))),
        NotBoth("above", "from"),
        NotBoth("below", "up_to"),
    ),
)

FINDING: Record[model.Finding] = Record(
    "finding",
    model.Finding,
    {"label": Plain(), "ask": _NUMBERS_ONLY, "why": _NUMBERS_ONLY},
    {
        "choices": MapOf(_NUMBERS_ONLY),
        "measure": _UNIT,
        "plausible": Span(),
        "usual": Span(),
        "usual_rises": RISES,
        "look": _NUMBERS_ONLY,
        "how": Ref(("how-to",)),
        "stand_ins": ListOf(_FINDING),
        "unsure": Plain(),
        "never_unsure": Prose(()),
        "normal": CONDITION,
        "given": CONDITION,
    },
    limits=(
        ExactlyOne.of("choices", "measure"),
        Needs("measure", "plausible"),
        NotBoth("choices", "plausible"),
        NotBoth("choices", "usual"),
    ),
)

LAMB = MapOf(ListOf(CONDITION, or_one=True), ref=("finding",))

BRANCH: Record[model.Branch] = Record(
    "branch",
    model.Branch,
    {"go": _NODE},
    {
        "is": ListOf(Plain(), or_one=True),
        "below": _NUMBER,
        "up_to": _NUMBER,
        "otherwise": Yes(),
        "unsure": Yes(),
        "at_least": _URGENCY,
    },
    limits=(ExactlyOne.of("is", "below", "up_to", "otherwise", "unsure"),),
)

STEP: Record[model.Step] = Record(
    "step",
    model.Step,
    {"do": Prose(), "tag": _TAGS},
    {"how": Ref(("how-to",))},
)

ASK: Record[model.Ask] = Record(
    "ask node",
    model.Ask,
    {"ask": _FINDING, "branches": ListOf(BRANCH)},
    called={"ask": "finding"},
)

ACT: Record[model.Act] = Record(
    "act node",
    model.Act,
    {
        "act": ListOf(STEP),
        "title": _NUMBERS_ONLY,
        "then": _NODE,
        "sources": _SOURCES,
        "certainty": _CERTAINTY,
    },
    {
        "cautions": ListOf(Prose()),
        "wait": _DURATION,
        "forget": ListOf(_FINDING),
        "at_most": Whole(),
        "else": _NODE,
        "for": LAMB,
        "must_say": ListOf(Plain()),
    },
    called={"act": "steps"},
    limits=(Needs("at_most", "else"), Needs("else", "at_most")),
    proof_only=_PROOF_ONLY,
)

END: Record[model.End] = Record(
    "end node",
    model.End,
    {
        "end": _URGENCY,
        "title": _NUMBERS_ONLY,
        "do": ListOf(STEP),
        "cautions": ListOf(Prose()),
        "call_vet": Prose(),
    },
    {
        "likely": Prose(),
        "look_again": _DURATION,
        "sources": _SOURCES,
        "certainty": _CERTAINTY,
        "for": LAMB,
        "must_say": ListOf(Plain()),
    },
    called={"end": "urgency"},
    proof_only=_PROOF_ONLY,
)

NODES: dict[str, Record[model.Ask] | Record[model.Act] | Record[model.End]] = {
    "ask": ASK,
    "act": ACT,
    "end": END,
}
"""The three kinds of node, told apart by the one of these fields that is present."""

NUMBER: Record[model.Number] = Record(
    "number",
    model.Number,
    {
        "title": Plain(),
        "value": Decimal(),
        "unit": _UNIT,
        "published": MapOf(Span(or_one=True), ref=("source",)),
        "safer": OneOf(("higher", "lower")),
        "certainty": _CERTAINTY,
    },
    {"note": Plain()},
)

HOW_TO: Record[model.HowTo] = Record(
    "how-to",
    model.HowTo,
    {
        "title": Plain(),
        "steps": ListOf(_NUMBERS_ONLY),
        "cautions": ListOf(_NUMBERS_ONLY),
        "sources": _SOURCES,
        "certainty": _CERTAINTY,
    },
    {
        "why": _NUMBERS_ONLY,
        "need": ListOf(_NUMBERS_ONLY),
        "right": _NUMBERS_ONLY,
        "stop": _NUMBERS_ONLY,
        "note": _NUMBERS_ONLY,
    },
)

TERM: Record[model.Term] = Record("term", model.Term, {"means": Plain()}, {"also": ListOf(Plain())})

SOURCE: Record[model.Source] = Record(
    "source",
    model.Source,
    {"title": Plain(), "grade": OneOf(("A", "B", "C", "D"))},
    {"by": Plain(), "in": Plain(), "year": Plain(), "where": Plain(), "note": Plain()},
)

_SHOWN = ListOf(Ref(("number", "amount")), or_one=True)

HOW_MANY: Record[HowMany] = Record(
    "number of things",
    HowMany,
    {},
    {"least": Whole(), "one_for": Whole(), "each_lamb": ListOf(_NUMBER, or_one=True)},
    limits=(ExactlyOne((("least", "one_for"), ("each_lamb",))),),
)

ITEM: Record[Item] = Record(
    "cupboard item",
    Item,
    {"title": Plain(), "why": _NUMBERS_ONLY, "sources": _SOURCES, "certainty": _CERTAINTY},
    {
        "first": OneOf(FIRST),
        "how_many": HOW_MANY,
        "ask_vet": _NUMBERS_ONLY,
        "at_hand": Yes(),
        "words": ListOf(Plain()),
        "tags": _TAGS,
        "shows": _SHOWN,
        "unless": _TAGS,
        "keeps": _NUMBERS_ONLY,
        "dated": Yes(),
        "cautions": ListOf(_NUMBERS_ONLY),
    },
    limits=(ExactlyOne.of("first", "at_hand"), ExactlyOne.of("how_many", "ask_vet", "at_hand")),
)

TRAIT: Record[model_rules.Trait] = Record(
    "target of a rule",
    model_rules.Trait,
    {},
    {"tag": _TAGS, "shows": _SHOWN, "says": ListOf(Plain(), or_one=True), "urgency": _URGENCY},
    limits=(ExactlyOne.of("tag", "shows", "says", "urgency"),),
)

PAGES: Record[model_rules.Pages] = Record(
    "choice of pages",
    model_rules.Pages,
    {},
    {"tag": _TAGS, "shows": _SHOWN, "end": ListOf(_URGENCY, or_one=True)},
)

RULE: Record[model_rules.Rule] = Record(
    "rule",
    model_rules.Rule,
    {"because": _NUMBERS_ONLY, "sources": _SOURCES},
    {"never": TRAIT, "always": TRAIT, "on": PAGES, "when": LAMB, "where_asked": Yes()},
    limits=(
        ExactlyOne.of("never", "always"),
        NotBoth("always", "where_asked"),
        Needs("where_asked", "when"),
        Lacks("never", "urgency"),
    ),
)

ABOUT = ("milk", "shelter", "company", "feed", "health", "marking", "weaning")
"""What the duties of a plan are about, in the order in which a printed plan groups them."""

DUTY: Record[model_rearing.Duty] = Record(
    "duty",
    model_rearing.Duty,
    {
        "about": OneOf(ABOUT),
        "title": _NUMBERS_ONLY,
        "do": ListOf(Prose()),
        "sources": _SOURCES,
        "certainty": _CERTAINTY,
    },
    {
        "from": _DURATION,
        "until": _DURATION,
        "every": _DURATION,
        "for": LAMB,
        "law": Yes(),
        "ring": Yes(),
        "from_event": OneOf(("weaned",)),
        "until_event": OneOf(("weaned", "weighed")),
        "why": _NUMBERS_ONLY,
        "cautions": ListOf(_NUMBERS_ONLY),
    },
)

LAW: Record[model_rearing.Law] = Record(
    "law",
    model_rearing.Law,
    {
        "where": Plain(),
        "says": ListOf(_NUMBERS_ONLY),
        "read": Plain(),
        "sources": _SOURCES,
        "certainty": _CERTAINTY,
    },
    {"ring_until": _DURATION, "no_ring": Yes()},
    limits=(NotBoth("ring_until", "no_ring"),),
)

CASE: Record[model_practice.WrittenCase] = Record(
    "practice case",
    model_practice.WrittenCase,
    {
        "story": Prose(("finding",)),
        "findings": MapOf(ListOf(AsTyped(), or_one=True), ref=("finding",)),
        "remember": _NUMBERS_ONLY,
    },
    {
        "told": ListOf(_FINDING),
        "trap": _NUMBERS_ONLY,
        "vet_if": MapOf(AsTyped(), ref=("finding",)),
        "right_if": MapOf(AsTyped(), ref=("finding",)),
    },
)

DEED: Record[model_practice.Deed] = Record(
    "deed",
    model_practice.Deed,
    {"do": Prose(())},
    {
        "tag": _TAGS,
        "shows": _SHOWN,
        "says": ListOf(Plain(), or_one=True),
        "against": ListOf(Ref(("rule",)), or_one=True),
        "later_than": _URGENCY,
    },
    limits=(ExactlyOne.of("tag", "shows", "says", "against", "later_than"),),
)

FARM: Record[model_practice.Farm] = Record(
    "invented farm",
    model_practice.Farm,
    {
        "farm": Plain(),
        "names": ListOf(Plain()),
        "openings": MapOf(ListOf(Prose(()))),
        "told": ListOf(_FINDING),
    },
    {
        "leads_on": MapOf(ListOf(Plain(), or_one=True), ref=("finding",)),
        "clashes": ListOf(LAMB),
        "odd_together": ListOf(LAMB),
        "first": ListOf(Ref(("case",))),
    },
)

URGENCY: Record[model.Urgency] = Record(
    "urgency",
    model.Urgency,
    {"urgency": Plain(), "say": Plain(), "means": Plain()},
    {"opens": Plain(), "asks": Plain()},
    called={"urgency": "name"},
)

TAG_WORDS: Record[model.TagWords] = Record(
    "entry of tag words", model.TagWords, {"says": ListOf(Plain(), or_one=True), "tag": _TAGS}
)

FRONT: Record[model.Front] = Record(
    "guide",
    model.Front,
    {
        "edition": Plain(),
        "date": Plain(),
        "title": Plain(),
        "intended_use": _NUMBERS_ONLY,
        "not_covered": ListOf(Plain()),
        "way_in": _NODE,
        "danger_signs": MapOf(ListOf(Plain()), ref=("finding",)),
        "urgencies": ListOf(URGENCY),
        "topics": ListOf(Ref(("topic",))),
        "act_tags": MapOf(Plain()),
    },
    {
        "tag_words": ListOf(TAG_WORDS),
        "bare_tags": _TAGS,
        "tag_changes": MapOf(ListOf(_FINDING), ref=("act tag",)),
        "vet_asks": ListOf(_FINDING),
        "unless_told": MapOf(Plain(), ref=("finding",)),
        "review_by": Day(),
    },
    proof_only=frozenset(("tag_words", "tag_changes")),
)

TOPIC_FIELDS: dict[str, Shape[str]] = {"topic": Plain(), "title": Plain(), "about": Plain()}
