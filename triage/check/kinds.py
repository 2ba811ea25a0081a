"""Every kind of problem, by the word in brackets behind its message, and what holds where it does not occur.

A guide may have rules of its own besides: they are in its `rules.yaml`, each with its reason. A new kind gets
its line here; `tests/check/report/test_kinds.py` reads the sources and misses none.
"""

from __future__ import annotations

from collections.abc import Mapping

READING: Mapping[str, str] = {
    "alias": "Nothing is written once and repeated by a YAML alias.",
    "anchor": "No YAML anchor marks a part for repeating.",
    "cut-text": "No text is cut short by a ' #' that YAML takes for a comment.",
    "documents": "A file holds one YAML document.",
    "duplicate-key": "A name stands once in a map.",
    "duplicate-name": "A name is defined once in the whole guide.",
    "empty": "A file holds a map of names.",
    "encoding": "A file is UTF-8 text.",
    "key": "A name is plain text.",
    "merge-key": "No map is merged into another one.",
    "missing-field": "Every field that must be there is there.",
    "name": "A name has lower-case letters, digits and single hyphens only.",
    "no-such-field": "Every field is one that is known.",
    "no-such-name": "Every name that is mentioned is defined.",
    "range": "A number that a sum needs can be used in it.",
    "shape": "What is written has the shape that its field takes.",
    "stray-file": "Every file is in a place where it is read.",
    "syntax": "A file is YAML.",
    "tag": "No YAML tag says of what type a value is.",
    "too-big": "A file is no longer than a knowledge file can be.",
    "too-deep": "Nothing is nested deeper than people can follow.",
    "unit": "A measurement, a number and a sum that meet are of one dimension.",
    "unreadable": "Every file can be read.",
}
"""Of each file and of the names in them; held while a guide is read."""

PARTS: Mapping[str, str] = {
    "certainty": "Nothing is called surer than its sources are.",
    "danger-first": "The danger signs are asked before anything is done.",
    "danger-keys": "The danger signs are asked within three keys of the way in.",
    "dead-end": "An end can be reached from everywhere.",
    "endless-loop": "Every way round passes an act that is done a limited number of times.",
    "figure-in-prose": "A figure stands in numbers.yaml under a name, and not in a text.",
    "gap": "Every answer has a way on.",
    "incomplete-end": "An end says everything that an end must say.",
    "off-the-safer-side": "A number is the safest published one, or a note says why not.",
    "outside-published": "A number lies inside what its sources publish.",
    "overlap": "No answer has two ways on.",
    "case-answer": "A practice case has just the answers that its way asks for.",
    "case-clash": "A practice case is about a lamb that there can be.",
    "case-told": "A practice story tells what is told, and no danger sign.",
    "easy-cases": "Half the practice cases have danger or a trap.",
    "first-cases": "The first practice cases are no more than sixty.",
    "idle-deed": "What people may be tempted to do breaks some rule.",
    "no-opening": "A drawn practice case of each matter has a way to begin.",
    "page-without-case": "Every page has a practice case.",
    "rule-without-case": "Every rule is put to the test by the first practice cases.",
    "rule-without-deed": "Each rule can be broken in practice, and that is found out.",
    "need-without-item": "What a how-to needs is in the cupboard.",
    "tag-without-item": "An act tag has a thing in the cupboard, or is said to need none.",
    "too-many-items": "A list is short enough to be read to its end.",
    "unneeded-item": "A thing in the cupboard is needed by some page or how-to.",
    "unreachable": "Some answer leads to every page.",
    "unwritten": "No text is left for its author to write.",
    "unused": "Everything that is defined is used.",
    "weak-source": "No number rests on the weakest sources alone.",
    "word-of-two-items": "A word stands for one thing in the cupboard.",
}
"""Of single parts of a guide, and of the ways between them."""

WALKS: Mapping[str, str] = {
    "danger-top": "A danger sign gives the top urgency at once.",
    "dead-branch": "Every branch is taken by some lamb.",
    "late-call": "A call for the vet is told as soon as it is certain.",
    "no-lamb-comes": "Some lamb comes to every page.",
    "no-unsure": "Every question has a way on for 'not sure'.",
    "not-for-this-lamb": "A page that says for which lambs it is meets no other.",
    "rule-never-fires": "Every rule of the guide is about some lamb.",
    "rules-contradict": "No two rules of the guide forbid and ask for the same.",
    "call-line": "The line about the vet opens with the call of its end's urgency.",
    "must-say": "The words that a page must never lose stand on it.",
    "danger-unlisted": "What calls for the top urgency in a danger finding is listed as a danger sign.",
    "hidden-tag": "A step whose words give away what it does has the tag for it.",
    "stale-finding": "An act that changes something in a lamb makes what was known of it forgotten.",
    "too-many-rounds": "An act is done a few times at most.",
    "too-many-screens": "At most twelve screens lead to any end.",
    "too-many-situations": "A guide has few enough situations to prove each of them.",
    "understated": "An end is as urgent as every walk to it.",
    "unknown-finding": "What a sum needs has been asked before the sum is shown.",
    "unsure-too-easy": "'Not sure' is as urgent as the most worrying answer could be.",
}
"""Of every walk that answers can take."""

WORDING: Mapping[str, str] = {
    "long-on-average": "The sentences of a topic are short on average.",
    "long-sentence": "No sentence is too long to be read at night.",
    "no-glossary-entry": "Every word is a plain one, or the glossary explains it.",
    "reading-grade": "The texts can be read without much schooling.",
    "vague-order": "An order says when, how much, or what to go by.",
}
"""Of the texts."""

EDITION: Mapping[str, str] = {
    "overdue": "The guidance has been read again by the day that was set for it.",
    "same-edition": "An edition stays as it was cut; what changes is the next one.",
    "unexplained-change": "Each change since the last edition has its reason.",
    "reason-for-nothing": "Each reason is for something that changed.",
    "sitting-changed": "What somebody signed is as they left it.",
}
"""Of what was cut as an edition, and signed."""

OWN: Mapping[str, str] = {
    "own-frame": "An own folder takes nothing from what the check goes by, and swaps no answers.",
    "own-rule": "An own folder changes no rule of the shipped guide, unless a vet signed that.",
    "own-number": "An own folder moves no number to less safe, unless a vet signed that.",
    "own-page": "An own folder takes nothing from a page or a question, unless a vet signed that.",
    "own-caution": "An own folder takes nothing from how-tos or laws, unless a vet signed that.",
    "own-less-urgent": "An own folder makes no lamb less urgent, unless a vet signed that.",
    "own-too-much": "Each situation of an own folder can be compared with the shipped guide.",
    "no-such-text": "Other words stand for a text that the guide has.",
    "other-figures": "Other words keep the figures of the text that they stand for.",
}
"""Of an own folder, held against the shipped guide."""

UPKEEP: frozenset[str] = frozenset(WORDING) | {
    "unused",
    "unneeded-item",
    "need-without-item",
    "tag-without-item",
    "word-of-two-items",
    "too-many-items",
    "unreachable",
    "dead-branch",
    "no-lamb-comes",
    "rule-never-fires",
    "idle-deed",
    "no-opening",
    "first-cases",
    "easy-cases",
    "page-without-case",
    "rule-without-case",
    "rule-without-deed",
    "case-answer",
    "case-clash",
    "case-told",
}
"""What an edition is refused for, and no lamb can come to harm by: no page is closed for it at night."""

KINDS: Mapping[str, str] = {**READING, **PARTS, **WALKS, **WORDING, **EDITION, **OWN}
