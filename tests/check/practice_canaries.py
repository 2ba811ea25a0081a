"""A small guide with a sound practice, and what spoils it: one fault for each thing that the check holds."""

from __future__ import annotations

from tests.ways import WAYS_IN

Change = tuple[str, str, str]

PRACTICE: list[Change] = [
    ("rules.yaml", "", "no-milk: {never: {tag: feed-by-mouth}, when: {temperature: {up_to: chill}}, because: It dies., sources: [a-paper]}\n"),
    ("farm.yaml", "", "farm: Nowhere, which is invented.\nnames: [Nell]\ntold: [weight]\nopenings: {lamb: [Nell comes in.]}\nfirst: [cold-one]\n"),
    ("deeds.yaml", "", "bottle: {do: Give it milk., tag: feed-by-mouth}\n"),
    ("practice/first.yaml", "", """\
cold-one:
  story: Nell has found it.
  findings: {danger: limp, temperature: 36 C}
  remember: Warm it first.
still-one:
  story: Nell has warmed it.
  findings: {danger: none, temperature: [36 C, 36 C, 36 C]}
  remember: Phone for it.
well-one:
  story: Nell is not sure.
  findings: {danger: none, temperature: 39 C}
  remember: It is well.
"""),
]  # fmt: skip
"""What makes a practice of the small guide."""

CASES, FARM, DEEDS = "practice/first.yaml", "farm.yaml", "deeds.yaml"
EASY = "".join(
    f"well-{at}:\n  story: Nell is here.\n  findings: {{danger: none, temperature: 39 C}}\n  remember: It is well.\n"
    for at in range(61)
)

_SPOILT: list[tuple[str, str, list[Change]]] = [
    ("case-answer", "which asks 'temperature'; add it", [
        (CASES, "{danger: limp, temperature: 36 C}", "{danger: limp}"),
    ]),
    ("case-answer", "'weight' is not asked on this case's way", [
        (CASES, "{danger: limp, temperature: 36 C}", "{danger: limp, temperature: 36 C, weight: 4 kg}"),
    ]),
    ("case-answer", "'temperature' can't be this", [(CASES, "limp, temperature: 36 C", "limp, temperature: warm")]),
    ("case-answer", "leads to no page by itself", [
        (CASES, "  remember: Warm it first.\n", "  remember: Warm it first.\n  vet_if: {mouth: warm}\n"),
    ]),
    ("case-told", "danger signs are looked for, and never told", [
        (CASES, "  remember: Warm it first.\n", "  remember: Warm it first.\n  told: [danger]\n"),
    ]),
    ("case-told", "tells 'weight', which it has no answer for", [
        (CASES, "  remember: Warm it first.\n", "  remember: Warm it first.\n  told: [weight]\n"),
    ]),
    ("case-told", "names {temperature}, which is not among what is told", [
        (CASES, "Nell has found it.", "Nell has found it at {temperature}."),
    ]),
    ("case-clash", "is danger and temperature at once as no lamb is", [
        (FARM, "first:", "clashes: [{danger: {is: limp}, temperature: {up_to: chill}}]\nfirst:"),
    ]),
    ("page-without-case", "no practice case comes to 'still-cold'", [(CASES, "[36 C, 36 C, 36 C]", "36 C")]),
    ("easy-cases", "2 of 64 practice cases have danger or a trap", [(CASES, "cold-one:\n", f"{EASY}cold-one:\n")]),
    ("first-cases", "61 cases come first", [
        (CASES, "cold-one:\n", f"{EASY}cold-one:\n"),
        (FARM, "first: [cold-one]", f"first: [{', '.join(f'well-{at}' for at in range(60))}, cold-one]"),
    ]),
    ("rule-without-case", "no case of 'first' in farm.yaml puts rule 'no-milk' to the test", [
        (FARM, "first: [cold-one]", "first: [well-one]"),
    ]),
    ("idle-deed", "no rule is ever broken by 'heat'", [
        (DEEDS, "bottle:", "heat: {do: Warm it., tag: warm}\nbottle:"),
    ]),
    ("rule-without-deed", "no deed breaks rule 'no-milk'", [(DEEDS, "tag: feed-by-mouth", "tag: warm")]),
    ("no-opening", "no drawn case about 'ewe' can begin", [*WAYS_IN]),
]  # fmt: skip

CANARIES: list[tuple[str, str, list[Change]]] = [
    (rule, said, [*PRACTICE, *changes]) for rule, said, changes in _SPOILT
]
