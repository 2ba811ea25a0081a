"""One plain sentence for each field and each kind of file, which an editor shows beside them."""

from __future__ import annotations

from collections.abc import Mapping

_SOURCES = "Names from sources.yaml; common-practice and from-memory say that there is no publication."
_CERTAINTY = "How sure we are: high, moderate, low, common-practice or from-memory."
_CAUTIONS = "What not to do, each with its reason in a few words."
_FOR = "Which lambs it is for: for each finding, what its answer may be. Anybody else never sees it."
_MUST_SAY = "A few words each that stand in the texts of this page, and that no later edit may lose."
_IS = "A choice of the finding, or a list of them."
_BELOW = "The name of a number; the number itself does not belong here."
_UP_TO = "The name of a number; the number itself belongs here."
_TAG = "What it does to the lamb: one of the act tags of guide.yaml, or a list of them."
_SHOWS = "A number or a sum that the page shows, or a list of them."

NOTES: Mapping[str, Mapping[str, str]] = {
    "guide": {
        "edition": "The edition of the guidance, such as 2026.1.",
        "date": "The day of this edition, year first.",
        "title": "The title of the whole guide.",
        "intended_use": "Who and what the guide is for, and what it does not do.",
        "not_covered": "What a reader may look for in vain, one line each.",
        "way_in": "The node where every walk begins.",
        "unless_told": "What the way in asks, and the answer taken as known unless a walk begins otherwise.",
        "danger_signs": "For each finding that can show danger, the choices that are danger signs.",
        "urgencies": "How soon a vet is needed, most urgent first.",
        "topics": "The topics, in the order in which people meet them.",
        "act_tags": "What a step can do to a lamb, each tag with its meaning.",
        "tag_words": "Words that give a step away, and the tags of which it then needs one.",
        "vet_asks": "Findings that a vet asks about for any such lamb; what was not looked at is told.",
        "tag_changes": "For a tag, the findings that it changes: an act with the tag must forget them.",
    },
    "entry of tag words": {
        "says": "Words that a step's text may hold; a number or sum is written {its-name}.",
        "tag": "The tags of which such a step has at least one.",
    },
    "urgency": {
        "urgency": "Its name, which ends and branches write.",
        "say": "The line that people see at the top.",
        "means": "What to do about it, in a sentence or two.",
        "opens": "How the call line of such an end opens; only for urgencies that call a vet.",
        "asks": "What is asked of the vet at this urgency, in the caller's words.",
    },
    "finding": {
        "label": "One or two words, for lists and for the phone.",
        "ask": "The question, as one would ask it in the shed.",
        "why": "Why it is asked, shown on one key.",
        "choices": "The answers: a name for each, and the words shown. At most seven, 'not sure' among them.",
        "measure": "The unit, where it is measured and not chosen.",
        "plausible": "The lowest and highest value that is possible at all, like [25, 43].",
        "usual": "A range outside which the number is asked once more.",
        "usual_rises": "How the top of the usual range rises with another measurement.",
        "look": "How to look, shown with the question.",
        "how": "The how-to that shows the technique.",
        "stand_ins": "Findings that serve when this one is 'not sure'.",
        "unsure": "Other words for 'Not sure'.",
        "normal": "Which answers are normal, told to the vet as looked at; leave it out for circumstances.",
        "given": "Which answers say that something went in by mouth or needle; a vet is always told of it.",
        "never_unsure": "Why this question needs no 'not sure': its choices hold a way on for every case.",
    },
    "usual-rises": {
        "with": "The measurement it rises with, such as age.",
        "each": "The unit of that measurement, such as day.",
        "by": "The number by which the top rises for each unit.",
    },
    "condition": {
        "is": _IS,
        "above": _BELOW,
        "from": _UP_TO,
        "below": _BELOW,
        "up_to": _UP_TO,
        "unsure": "Write true: the answer was 'not sure'.",
        "unasked": "Write true: it was never asked on this walk.",
    },
    "topic": {
        "topic": "Its own name, as guide.yaml lists it.",
        "title": "The title that people choose by.",
        "about": "One sentence on what the topic holds.",
        "nodes": "The questions, acts and ends of this topic, each under its name.",
    },
    "ask node": {
        "ask": "The finding to ask; it is passed in silence when it is known.",
        "branches": "Where each answer leads; bands lowest first.",
    },
    "branch": {
        "go": "The node this answer leads to.",
        "is": _IS,
        "below": _BELOW,
        "up_to": _UP_TO,
        "otherwise": "Write true: every measurement that no line above took.",
        "unsure": "Write true: the answer was 'not sure'.",
        "at_least": "Raises the urgency to this; it never falls again on the walk.",
    },
    "act node": {
        "act": "What to do now, step by step.",
        "title": "What these steps do, in a few words.",
        "then": "The node that comes after it.",
        "sources": _SOURCES,
        "certainty": _CERTAINTY,
        "cautions": _CAUTIONS,
        "wait": "A number of time to wait before going on.",
        "forget": "Findings that are asked again after it.",
        "at_most": "How often it may come on one walk; every loop needs one. It goes with else.",
        "else": "Where the walk goes once at_most is used up.",
        "for": _FOR,
        "must_say": _MUST_SAY,
    },
    "step": {
        "do": "One thing to do, told to the reader.",
        "tag": _TAG,
        "how": "The how-to that shows the technique.",
    },
    "end node": {
        "end": "The urgency of this outcome.",
        "title": "What has been found, in a few words.",
        "do": "What to do, step by step: at most 7, and 5 when the vet is called now.",
        "cautions": _CAUTIONS,
        "call_vet": "When to phone now, and when today.",
        "likely": "What this may be, and never a diagnosis.",
        "look_again": "A number of time to the next look; needed unless the vet is called now.",
        "sources": _SOURCES,
        "certainty": _CERTAINTY,
        "for": _FOR,
        "must_say": _MUST_SAY,
    },
    "how-to": {
        "how-to": "Its own name, which findings and steps write under 'how'.",
        "title": "What it shows, beginning with a verb.",
        "steps": "The technique, one thing to do in each line.",
        "cautions": _CAUTIONS,
        "sources": _SOURCES,
        "certainty": _CERTAINTY,
        "why": "What it is good for, in a sentence or two.",
        "need": "What to have at hand before the first step.",
        "right": "What it looks like when it goes well.",
        "stop": "When to stop, and what to do then.",
        "note": "What else to know, shown last and in a quiet colour.",
    },
    "number": {
        "title": "What the number is, in a few words.",
        "value": "The number itself, with a point and no unit, like 37.0.",
        "unit": "The unit of the value and of all that is published.",
        "published": "What each source says; a range is written [low, high].",
        "safer": "Which side is safer for the lamb: higher or lower.",
        "certainty": _CERTAINTY,
        "note": "Why, where the value is not the safest published one.",
    },
    "term": {
        "means": "What the word means, in plain words.",
        "also": "Other ways in which the word is written or said.",
    },
    "source": {
        "title": "The title of the publication.",
        "grade": "A paper, B practice or extension, C trade press, D company or blog.",
        "by": "Who wrote it.",
        "in": "The journal or paper it stands in.",
        "year": "The year it came out.",
        "where": "Where it can be read.",
        "note": "What was read of it, and what to know before trusting it.",
    },
    "rule": {
        "because": "The reason, told when the rule is broken.",
        "sources": _SOURCES,
        "never": "What such a lamb must never be told or given.",
        "always": "What such a lamb must always be told or given.",
        "on": "Which pages the rule is about; all of them if left out.",
        "when": "Which lambs the rule is about; all of them if left out.",
        "where_asked": "Write true: a lamb of whom it was never asked is let through.",
    },
    "target of a rule": {
        "tag": _TAG,
        "shows": _SHOWS,
        "says": "Words that stand in a text, or a list of them.",
        "urgency": "An urgency: this one or a more urgent one.",
    },
    "choice of pages": {
        "tag": _TAG,
        "shows": _SHOWS,
        "end": "An urgency of an end, or a list of them.",
    },
}
"""By the words a record has for itself, and the field."""

FILE_NOTES: Mapping[str, str] = {
    "guide": "The guide's first page",
    "findings": "What can be asked",
    "topic": "One topic, with its nodes",
    "how-to": "One technique, step by step",
    "numbers": "Every threshold and rate",
    "glossary": "Trade words in plain words",
    "sources": "The publications",
    "rules": "What must always and never hold",
}
