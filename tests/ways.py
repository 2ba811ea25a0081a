"""The small guide with other ways in: a ewe in trouble, and an invented flock."""

from __future__ import annotations

WAYS_IN: tuple[tuple[str, str, str], ...] = (
    ("guide.yaml", "way_in: danger\n", "way_in: about\nunless_told: {about: lamb}\n"),
    ("guide.yaml", "{danger: [limp]}", "{danger: [limp], ewe-danger: [down], flock-danger: [several]}"),
    (
        "glossary.yaml",
        "limp:",
        "ewe: {means: A mother.}\nflock: {means: All of them.}\ndrench: {means: A drink.}\nlimp:",
    ),
    ("guide.yaml", "topics: [first]", "topics: [first, others]"),
    (
        "findings/all.yaml",
        "danger:\n",
        """\
about:
  label: About
  ask: What is it about?
  why: A ewe is no lamb.
  look: A ewe ill, or one found dead?
  never_unsure: Whoever opens the guide knows what is in trouble.
  choices: {lamb: One lamb, ewe: A ewe in trouble, flock: 'One found dead, or several ill'}
ewe-danger:
  label: Ewe danger
  ask: Is the ewe down?
  why: She can die.
  choices: {down: Down, none: On her feet}
flock-danger:
  label: How many
  ask: Are several ill?
  why: It may spread.
  choices: {several: Several, none: No more}
danger:
""",
    ),
    (
        "topics/first.yaml",
        "nodes:\n",
        """\
nodes:
  about:
    ask: about
    branches:
      - {is: lamb, go: danger}
      - {is: ewe, go: ewe}
      - {is: flock, go: flock}
""",
    ),
    (
        "topics/others.yaml",
        "",
        """\
topic: others
title: A ewe, or the flock
about: What is no lamb.
nodes:
  ewe:
    ask: ewe-danger
    branches:
      - {is: down, go: ewe-now, at_least: vet-now}
      - {is: none, go: ewe-here}
      - {unsure: true, go: ewe-now, at_least: vet-now}
  ewe-now:
    end: vet-now
    title: A ewe that is down
    likely: She is ill.
    do: [{do: Phone., tag: phone}]
    cautions: [No drench.]
    call_vet: Now.
    sources: [a-paper]
    certainty: high
  ewe-here:
    end: care-here
    title: A ewe on her feet
    likely: She is well.
    do: [{do: Warm her., tag: warm}]
    cautions: [No drench.]
    call_vet: Phone if she lies down.
    look_again: pause
    sources: [a-paper]
    certainty: high
  flock:
    ask: flock-danger
    branches:
      - {is: several, go: flock-now, at_least: vet-now}
      - {is: none, go: danger}
      - {unsure: true, go: flock-now, at_least: vet-now}
  flock-now:
    end: vet-now
    title: Several that are ill
    likely: It may spread.
    do: [{do: Phone., tag: phone}]
    cautions: [Wash.]
    call_vet: Now.
    sources: [a-paper]
    certainty: high
""",
    ),
)
"""What is changed in the small guide; the flock's way leads on to the lamb's danger signs."""
