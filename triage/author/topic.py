"""A topic to begin with: small and whole. It calls the vet for every lamb, until its author knows better."""

from __future__ import annotations

from collections.abc import Mapping

from triage.guide.texts import UNWRITTEN

BORROWED: Mapping[str, tuple[str, ...]] = {
    "finding": ("manner",),
    "number": ("mild-check",),
    "how-to": ("phone-the-vet-well",),
    "urgency": ("vet-now", "vet-today"),
    "act tag": ("phone", "dry", "check"),
}
"""Names of the shipped guide that the topic uses, by their kind; a guide without them needs others there."""


def file_of(name: str) -> str:
    """Return the path of a topic inside its knowledge folder."""
    return f"topics/{name}.yaml"


def nodes_of(name: str) -> tuple[str, ...]:
    """Return the names of a new topic's nodes: a question, an act, and two ends."""
    return (name, *(f"{name}-{each}" for each in PAGES))


PAGES: Mapping[str, str] = {"wait": "missed", "today": "bright", "now": "dull"}
"""The last part of the name of each page, and the answer to `manner` that leads there."""


def topic_text(name: str) -> str:
    """Return a new topic as its file holds it."""
    return _TOPIC.replace("NAME", name).replace("MARK", UNWRITTEN)


_TOPIC = """\
# yaml-language-server: $schema=../.schema/topic.json
# A topic to begin with. What stands behind a # is for you, and may be taken out.
# The texts with MARK are yours to write. As laid down it calls the vet for every lamb.

# Its own name: lower-case letters, with single hyphens.
topic: NAME
# The title, as a keeper would say it.
title: "MARK: NAME"
# One sentence: what is told apart here.
about: "MARK: what is told apart here."
# Its places, each under a name that no other place of the guide has.
nodes:
  # A question. The first place has the name by which others lead here.
  NAME:
    # What is asked: a finding, from the folder findings.
    ask: manner
    # Where each answer leads. 'at_least' says how soon a vet is needed from here on.
    branches:
      # One answer, by the name of its choice.
      - {is: bright, go: NAME-today}
      # This one is looked at again first.
      - {is: missed, go: NAME-wait}
      # Two answers that lead to the same place.
      - {is: [dull, sore], go: NAME-now, at_least: vet-now}
      # 'Not sure' is taken as seriously as the worst of the others.
      - {unsure: true, go: NAME-now, at_least: vet-now}

  # Something to do now, before the question comes again.
  NAME-wait:
    # What to do, one thing in each line. The tag says what it does; act_tags in guide.yaml lists them.
    act:
      - {do: "MARK: the one thing to do, such as to put it on dry straw.", tag: dry}
    # The line at the top of the page.
    title: "MARK: what is done first"
    # For whom this page is right; the check holds every walk to it.
    for: {manner: {is: missed}}
    # What never to do here: one line or more.
    cautions:
      - "MARK: what must not be done."
    # How long to wait: a number of time, from numbers.yaml.
    wait: mild-check
    # What has to be looked at again after it.
    forget: [manner]
    # How often this may come before it goes on to 'else'.
    at_most: 2
    # Where it leads after the wait.
    then: NAME
    # Where it leads once it has come that often.
    else: NAME-now
    # Where this is from: names in sources.yaml, or from-memory.
    sources: [from-memory]
    # How sure it is: high, moderate, low, common-practice or from-memory.
    certainty: from-memory

  # An outcome. Its first line says how soon a vet is needed; guide.yaml lists the urgencies.
  NAME-today:
    end: vet-today
    # The line at the top of the page.
    title: "MARK: bright, and what is seen"
    # For whom this page is right; the check holds every walk to it.
    for: {manner: {is: bright}}
    # What this may be. Never a diagnosis.
    likely: "MARK: what this may be."
    # What to do: seven steps at most. 'how' names a file of the folder how-to.
    do:
      - {do: "Phone the vet. Say what you see.", tag: phone, how: phone-the-vet-well}
      - {do: "MARK: what to look at.", tag: check}
    # What never to do: one line or more.
    cautions:
      - "MARK: what must not be done."
    # Words that no later edit may lose, once you know them: take the # away.
    # must_say: [phone the vet]
    # When to phone now, and when today. It opens with the call of its urgency.
    call_vet: "Phone today. Phone now if it goes limp, gasps or fits."
    # When to look at the lamb again: a number of time, from numbers.yaml.
    look_again: mild-check
    # Where this is from, and how sure it is, as above.
    sources: [from-memory]
    certainty: from-memory

  # The outcome for the worst: five steps at most, and no 'look_again', as the vet is called now.
  NAME-now:
    end: vet-now
    # The line at the top of the page.
    title: "MARK: dull or sore, and what is seen"
    # What this may be. Never a diagnosis.
    likely: "MARK: what this may be."
    # What to do until the vet comes, the call first.
    do:
      - {do: "Phone the vet now.", tag: phone, how: phone-the-vet-well}
      - {do: "Keep it dry and out of the wind.", tag: dry}
    # What never to do: one line or more.
    cautions:
      - "Give nothing by mouth before a vet has told you to."
    # When to phone. It opens with the call of its urgency.
    call_vet: "Phone now."
    # Where this is from, and how sure it is, as above.
    sources: [from-memory]
    certainty: from-memory
"""
