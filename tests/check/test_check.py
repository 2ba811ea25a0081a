"""Canaries: for each rule of the check a small guide that breaks it, and only it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.check.practice_canaries import CANARIES as PRACTICE_CANARIES
from tests.check.practice_canaries import PRACTICE
from tests.check.test_wording import CANARIES as WORDING_CANARIES
from tests.conftest import SMALL, small_guide
from tests.cupboard.made import CHANGES as STOCKED
from triage.check import CHECKS, check, prove
from triage.check.search.searched import search
from triage.guide.model import Guide
from triage.problems import Problem

FIRST = "topics/first.yaml"
Change = tuple[str, str, str]

LONG = "".join(
    f"""\
  ask-{n}:
    ask: more-{n}
    branches:
      - {{is: [one, two], go: ask-{n + 1}}}
      - {{unsure: true, go: ask-{n + 1}}}
"""
    for n in range(12)
)
LONG_FINDINGS = "".join(
    f"more-{n}: {{label: More, ask: And this?, why: To see., choices: {{one: One, two: Two}}}}\n"
    for n in range(12)
)

TWICE = "".join(
    f"""\
  twice-{n}:
    ask: more-{n}
    branches:
      - {{is: one, go: {f"twice-{n + 1}" if n < 11 else "well"}}}
      - {{is: two, go: {f"twice-{n + 1}" if n < 11 else "still-cold"}}}
      - {{unsure: true, go: {f"twice-{n + 1}" if n < 11 else "still-cold"}}}
"""
    for n in range(12)
)
CANARIES: list[tuple[str, str, list[Change]]] = [
    ("unreachable", "no answer leads to 'lost'", [
        (FIRST, "  well:\n", SMALL[FIRST].partition("  still-cold:\n")[2].partition("  well:\n")[0].join(["  lost:\n", "  well:\n"])),
    ]),
    ("dead-end", "no end can be reached from", [
        (FIRST, "{otherwise: true, go: well}", "{otherwise: true, go: round}"),
        (FIRST, "{is: warm, go: well}", "{is: warm, go: round}"),
        (FIRST, "  well:\n    end", "  round:\n    act: [{do: Turn., tag: warm}]\n    title: Turn\n    then: round\n    sources: [a-paper]\n    certainty: high\n  well:\n    end"),
    ]),
    ("endless-loop", "goes round without an end: warmth > warm-it > warmth", [
        (FIRST, "    at_most: 2\n", ""), (FIRST, "    else: still-cold\n", ""),
    ]),
    ("unused", "no finding or step names the how-to", [("findings/all.yaml", "  how: measure-it\n", "")]),
    ("gap", "'feel' has no branch for cold", [
        (FIRST, "      - {is: cold, go: warm-it, at_least: vet-now}\n", ""),
    ]),
    ("overlap", "'warm' already has a branch", [(FIRST, "is: cold, go", "is: [cold, warm], go")]),
    ("gap", "'warmth' has no branch from 37 °C up", [(FIRST, "      - {otherwise: true, go: well}\n", "")]),
    ("overlap", "'cooler' is not above the band before it", [
        (FIRST, "      - {otherwise: true, go: well}\n", "      - {below: cooler, go: well}\n      - {otherwise: true, go: well}\n"),
        ("numbers.yaml", "pause:", "cooler: {title: Cooler, value: 36, unit: degC, published: {a-paper: 36}, safer: higher, certainty: high}\npause:"),
    ]),
    ("overlap", "this band comes after 'otherwise'", [
        (FIRST, "      - {up_to: chill, go: warm-it, at_least: vet-now}\n      - {otherwise: true, go: well}\n", "      - {otherwise: true, go: well}\n      - {up_to: chill, go: warm-it, at_least: vet-now}\n"),
    ]),
    ("gap", "lies outside what is plausible", [("findings/all.yaml", "[25, 43]", "[38, 43]")]),
    ("no-unsure", "'feel' has no way out for \"not sure\"", [
        (FIRST, "      - {unsure: true, go: warm-it, at_least: vet-now}\n", ""),
    ]),
    ("overlap", "says it is never unsure, so this branch can't be taken", [
        ("findings/all.yaml", "choices: {warm: Warm, cold: Cold}", "choices: {warm: Warm, cold: Cold}\n  never_unsure: A mouth can always be felt."),
    ]),
    ("unsure-too-easy", "is sure only of 'care-here', but a known answer at 'feel' of 'vet-now'", [
        (FIRST, "      - {unsure: true, go: warm-it, at_least: vet-now}", "      - {unsure: true, go: well}"),
    ]),
    ("unknown-finding", "{weight-guess} needs 'birth-type'", [
        (FIRST, "Feed it., tag", '"Feed by {weight-guess}.", tag'),
        ("findings/all.yaml", "weight:\n", "birth-type: {label: B, ask: B?, why: B., choices: {single: One, twin: Two, triplet: Three}}\nage: {label: Age, ask: Age?, why: A., measure: h, plausible: [0, 100]}\nweight:\n"),
        ("numbers.yaml", "pause:", "".join(f"{name}: {{title: N, value: 3, unit: kg, published: {{a-paper: 3}}, safer: lower, certainty: high}}\n" for name in ("birth-single", "birth-twin", "birth-triplet")) + "guess-growth: {title: G, value: 0.1, unit: kg/day, published: {a-paper: 0.1}, safer: lower, certainty: high}\npause:"),
    ]),
    ("danger-first", "'well' can be reached without asking 'danger'", [
        ("guide.yaml", "way_in: danger", "way_in: warmth"),
        (FIRST, "{is: warm, go: well}", "{is: warm, go: danger}"),
        (FIRST, "{is: none, go: warmth}", "{is: none, go: well}"),
        (FIRST, "{is: limp, go: warmth, at_least: vet-now}", "{is: limp, go: still-cold, at_least: vet-now}"),
        (FIRST, "{unsure: true, go: warmth, at_least: vet-now}", "{unsure: true, go: still-cold, at_least: vet-now}"),
    ]),
    ("danger-top", "danger sign limp must give 'vet-now' at once", [
        (FIRST, "{is: limp, go: warmth, at_least: vet-now}", "{is: limp, go: warmth}"),
    ]),
    ("danger-top", "danger sign limp must give 'vet-now' at once", [
        ("guide.yaml", "way_in: danger", "way_in: feel"),
        (FIRST, "{is: warm, go: well}", "{is: warm, go: danger}"),
        (FIRST, "{is: cold, go: warm-it, at_least: vet-now}", "{is: cold, go: danger, at_least: vet-now}"),
        (FIRST, "      - {unsure: true, go: warm-it, at_least: vet-now}\n  warm-it", "      - {unsure: true, go: danger, at_least: vet-now}\n  warm-it"),
        (FIRST, "{unsure: true, go: feel}", "{unsure: true, go: warm-it, at_least: vet-now}"),
        (FIRST, "{is: limp, go: warmth, at_least: vet-now}", "{is: limp, go: warmth}"),
    ]),
    ("unknown-finding", "{lamb-age} needs 'age'", [
        (FIRST, "Phone., tag", '"Phone. {lamb-age}.", tag'),
        (FIRST, "forget: [temperature, mouth]", "forget: [temperature, mouth, age]"),
        (FIRST, "  danger:\n    ask: danger\n", "  old:\n    ask: age\n    branches:\n      - {otherwise: true, go: danger}\n      - {unsure: true, go: danger}\n  danger:\n    ask: danger\n"),
        ("guide.yaml", "way_in: danger", "way_in: old"),
        ("findings/all.yaml", "weight:\n", "age: {label: Age, ask: Age?, why: A., measure: h, plausible: [0, 100]}\nweight:\n"),
    ]),
    ("unknown-finding", "{lamb-age} needs 'age'", [
        (FIRST, "Feed it., tag", '"Feed it. {lamb-age}.", tag'),
        (FIRST, "{is: none, go: warmth}", "{is: none, go: old}"),
        (FIRST, "  warmth:\n    ask: temperature\n", "  old:\n    ask: age\n    branches:\n      - {otherwise: true, go: warmth}\n      - {unsure: true, go: warmth}\n  warmth:\n    ask: temperature\n"),
        ("findings/all.yaml", "weight:\n", "age: {label: Age, ask: Age?, why: A., measure: h, plausible: [0, 100]}\nweight:\n"),
    ]),
    ("danger-top", "danger sign limp must give 'vet-now' at once", [
        (FIRST, "      - {is: limp, go: warmth, at_least: vet-now}\n      - {is: none, go: warmth}\n", "      - {is: none, go: warmth}\n      - {otherwise: true, go: warmth}\n"),
    ]),
    ("overlap", "this comes after 'otherwise'", [
        (FIRST, "      - {is: limp, go: warmth, at_least: vet-now}\n      - {is: none, go: warmth}\n", "      - {otherwise: true, go: warmth}\n      - {is: limp, go: warmth, at_least: vet-now}\n"),
    ]),
    ("dead-branch", "no lamb that comes to 'again' can take this branch", [
        (FIRST, "{is: none, go: warmth}", "{is: none, go: again}"),
        (FIRST, "  warm-it:\n", "  again:\n    ask: danger\n    branches:\n      - {is: none, go: warmth}\n      - {is: limp, go: warmth}\n  warm-it:\n"),
    ]),
    ("no-lamb-comes", "branches lead to 'lost', but no real answers do", [
        (FIRST, "  warm-it:\n", "  again:\n    ask: danger\n    branches:\n      - {is: [limp, none], go: well}\n      - {unsure: true, go: lost}\n  warm-it:\n"),
        (FIRST, "{is: none, go: warmth}", "{is: none, go: again}"),
        (FIRST, "  well:\n", SMALL[FIRST].partition("  still-cold:\n")[2].partition("  well:\n")[0].join(["  lost:\n", "  well:\n"])),
    ]),
    ("late-call", "every way on from here comes to 'vet-now'; say it at once", [
        ("guide.yaml", "say: Phone the vet now,", "say: Phone the vet now, opens: Phone now,"),
        (FIRST, "call_vet: Now.", "call_vet: Phone now."),
        (FIRST, "{otherwise: true, go: well}", "{otherwise: true, go: feel}"),
        (FIRST, "{is: warm, go: well}", "{is: warm, go: still-cold}"),
    ]),
    ("understated", "every walk comes to 'well' with 'vet-now' or more; write end: vet-now", [
        (FIRST, "{otherwise: true, go: well}", "{otherwise: true, go: well, at_least: vet-now}"),
        (FIRST, "{is: warm, go: well}", "{is: warm, go: well, at_least: vet-now}"),
    ]),
    ("not-for-this-lamb", "'well' is not for this lamb: see 'for', temperature", [
        (FIRST, "    title: Warm enough\n", "    title: Warm enough\n    for: {temperature: [{above: chill}]}\n"),
    ]),
    ("hidden-tag", "this step says 'feed', so its tag should be feed-by-mouth or warm", [
        ("guide.yaml", "act_tags:", "tag_words: [{says: [Drink, Feed], tag: [feed-by-mouth, warm]}]\nact_tags:"),
        (FIRST, "{do: Feed it., tag: feed-by-mouth}", "{do: Feed it., tag: phone}"),
    ]),
    ("stale-finding", "'warm-it' may change 'mouth', so it should forget it", [
        ("guide.yaml", "act_tags:", "tag_changes: {warm: [temperature, mouth]}\nact_tags:"),
        (FIRST, "forget: [temperature, mouth]", "forget: [temperature]"),
    ]),
    ("danger-unlisted", "'none' of 'danger' calls for 'vet-now'; list it in danger_signs", [
        (FIRST, "{is: none, go: warmth}", "{is: none, go: warmth, at_least: vet-now}"),
    ]),
    ("call-line", "so its call_vet should open with 'Phone now'", [
        ("guide.yaml", "say: Phone the vet now,", "say: Phone the vet now, opens: Phone now,"),
    ]),
    ("call-line", "'well' opens its call_vet with 'Phone now', but is a 'care-here' end", [
        ("guide.yaml", "say: Phone the vet now,", "say: Phone the vet now, opens: Phone now,"),
        (FIRST, "call_vet: Now.", "call_vet: Phone now."),
        (FIRST, "call_vet: Phone if it goes limp.", "call_vet: Phone now."),
    ]),
    ("must-say", "'well' must say 'Little by little', and no text of it does", [
        (FIRST, "    title: Warm enough\n", "    title: Warm enough\n    must_say: [Feed it, Little by little]\n"),
    ]),
    ("no-milk", "'well' has feed-by-mouth, against rules.yaml:1:1", [
        ("rules.yaml", "", "no-milk:\n  never: {tag: feed-by-mouth}\n  when: {danger: {is: limp}}\n  because: It chokes.\n  sources: [a-paper]\n"),
    ]),
    ("say-so", "'well' lacks 'gently'", [
        ("rules.yaml", "", "say-so:\n  always: {says: [feed, gently]}\n  on: {tag: feed-by-mouth}\n  because: It chokes.\n  sources: [a-paper]\n"),
    ]),
    ("call", "'well' lacks 'vet-now' or more urgent", [
        ("rules.yaml", "", "call:\n  always: {urgency: vet-now}\n  when: {temperature: {above: chill}}\n  because: It dies.\n  sources: [a-paper]\n"),
    ]),
    ("weigh-first", "'well' has feed-by-mouth", [
        ("rules.yaml", "", "weigh-first:\n  never: {tag: feed-by-mouth}\n  when: {weight: {unsure: true}}\n  because: Too much chokes it.\n  sources: [a-paper]\n"),
    ]),
    ("rule-never-fires", "rule 'idle' is about no page", [
        ("rules.yaml", "", "idle:\n  never: {tag: warm}\n  on: {shows: pause}\n  because: Nothing.\n  sources: [a-paper]\n"),
    ]),
    ("rule-never-fires", "no walk ever comes under rule 'idle'", [
        ("rules.yaml", "", "idle:\n  never: {tag: warm}\n  when: {weight: {unsure: true}}\n  where_asked: true\n  because: Nothing.\n  sources: [a-paper]\n"),
    ]),
    ("rules-contradict", "rules 'cover' and 'uncover' contradict", [
        ("rules.yaml", "", "cover:\n  always: {tag: warm}\n  when: {danger: {is: limp}}\n  because: One.\n  sources: [a-paper]\nuncover:\n  never: {tag: [warm, phone]}\n  when: {temperature: {up_to: chill}}\n  because: Two.\n  sources: [a-paper]\n"),
    ]),
    ("too-many-situations", "situations, too many to prove", [
        (FIRST, "{otherwise: true, go: well}", "{otherwise: true, go: ask-0}"),
        (FIRST, "  warm-it:\n", LONG.replace("go: ask-12", "go: twice-0") + TWICE + "  warm-it:\n"),
        ("findings/all.yaml", "weight:\n", LONG_FINDINGS + "weight:\n"),
    ]),
    ("too-many-rounds", "'warm-it' may come 13 times", [(FIRST, "at_most: 2", "at_most: 13")]),
    ("outside-published", "'chill' is 38, outside what is published, 36 to 37", [("numbers.yaml", "value: 37", "value: 38")]),
    ("off-the-safer-side", "the note of 'chill' defends another value than 36.5", [
        ("numbers.yaml", "value: 37", "value: 36.5\n  note: 36 is taken from the paper."),
    ]),
    ("overlap", "nothing is left for this 'otherwise'", [(FIRST, "      - {is: cold, go: warm-it, at_least: vet-now}\n", "      - {is: cold, go: warm-it, at_least: vet-now}\n      - {otherwise: true, go: well}\n")]),
    ("overlap", "a second 'unsure' branch", [(FIRST, "      - {is: cold, go: warm-it, at_least: vet-now}\n", "      - {is: cold, go: warm-it, at_least: vet-now}\n      - {unsure: true, go: well}\n")]),
    ("unused", "topic 'other' is not in the list of topics", [("topics/other.yaml", "", "topic: other\ntitle: Other\nabout: Another.\nnodes:\n" + SMALL[FIRST].partition("  still-cold:\n")[2].partition("  well:\n")[0].join(["  lost:\n", ""]))]),
    ("certainty", "'well' rests on grade D alone", [
        ("sources.yaml", "a-paper:", "a-page: {title: An invented page, grade: D}\na-paper:"),
        (FIRST, "    look_again: pause\n    sources: [a-paper]\n", "    look_again: pause\n    sources: [a-page]\n"),
    ]),
    ("danger-top", "danger sign limp must give", [
        (FIRST, "      - {is: limp, go: warmth, at_least: vet-now}\n", "      - {is: limp, go: warmth}\n"),
        ("guide.yaml", "{danger: [limp]}", "{danger: [limp, flat]}"),
        ("findings/all.yaml", "{limp: Limp, none: Not limp}", "{limp: Limp, flat: Flat, none: Not limp}"),
    ]),
    ("unsure-too-easy", "a known answer at 'warmth' of 'vet-now'", [
        (FIRST, "{is: none, go: warmth}", "{is: none, go: first-feel}"),
        (FIRST, "  warm-it:\n", "  first-feel:\n    ask: mouth\n    branches:\n      - {is: [warm, cold], go: warmth}\n      - {unsure: true, go: warmth}\n  warm-it:\n"),
        (FIRST, "      - {unsure: true, go: warm-it, at_least: vet-now}\n", "      - {unsure: true, go: well}\n"),
    ]),
    ("off-the-safer-side", "the higher side is safer and goes to 37", [("numbers.yaml", "value: 37", "value: 36.5")]),
    ("weak-source", "'chill' rests on grade D alone", [
        ("sources.yaml", "a-paper:", "a-page: {title: An invented page, grade: D}\na-paper:"),
        ("numbers.yaml", "[36, 37]}", "[36, 37]}"), ("numbers.yaml", "{a-paper: [36, 37]}", "{a-page: [36, 37]}"),
    ]),
    ("certainty", "its certainty should be from-memory", [("numbers.yaml", "{a-paper: 20}", "{from-memory: 20}")]),
    ("unused", "nothing uses the number 'spare'", [
        ("numbers.yaml", "pause:", "spare: {title: Spare, value: 1, unit: h, published: {a-paper: 1}, safer: lower, certainty: high}\npause:"),
    ]),
    ("figure-in-prose", "'40 ml' is a figure in a text", [(FIRST, "Feed it.", "Feed it 40 ml.")]),
    ("incomplete-end", "end 'well' lacks 'look_again'", [(FIRST, "    look_again: pause\n", "")]),
    ("incomplete-end", "end 'well' lacks 'sources'", [(FIRST, "    look_again: pause\n    sources: [a-paper]\n", "    look_again: pause\n")]),
    ("certainty", "'well' has no published source", [
        (FIRST, "    look_again: pause\n    sources: [a-paper]\n", "    look_again: pause\n    sources: [common-practice]\n"),
    ]),
    ("too-many-items", "'still-cold' has 6 steps; 5 at most", [
        (FIRST, "do: [{do: Phone., tag: phone}]", "do: [" + ", ".join(["{do: Phone., tag: phone}"] * 6) + "]"),
    ]),
    ("too-many-items", "'mouth' shows 8 answers", [
        ("findings/all.yaml", "{warm: Warm, cold: Cold}", "{warm: Warm, cold: Cold, a: A, b: B, c: C, d: D, e: E}"),
        (FIRST, "is: cold, go", "is: [cold, a, b, c, d, e], go"),
    ]),
    ("too-many-screens", "screens lead to 'well', 12 at most", [
        (FIRST, "{otherwise: true, go: well}", "{otherwise: true, go: ask-0}"),
        (FIRST, "  warm-it:\n", LONG.replace("go: ask-12", "go: well") + "  warm-it:\n"),
        ("findings/all.yaml", "weight:\n", LONG_FINDINGS + "weight:\n"),
    ]),
    ("unneeded-item", "no page, how-to or duty needs 'needle'", [*STOCKED, ("cupboard.yaml", "[needle]", "[pin]")]),
    ("need-without-item", "'measure-it' needs 'a long stick', and no item", [
        *STOCKED, ("how-to/measure-it.yaml", "need: [a clean thermometer]", "need: [a clean thermometer, a long stick]"),
    ]),
    ("tag-without-item", "no item of cupboard.yaml is for steps tagged 'warm'", [
        *STOCKED, ("cupboard.yaml", "  tags: warm\n", ""),
    ]),
    ("tag-without-item", "'warm' is in 'bare_tags', and yet 'heater' is for it", [
        *STOCKED, ("guide.yaml", "act_tags:", "bare_tags: [warm]\nact_tags:"),
    ]),
    ("word-of-two-items", "'powder' stands for 'powder' already", [
        *STOCKED, ("cupboard.yaml", "[needle]", "[needle, Powder]"),
    ]),
    ("certainty", "'probe' has no published source", [
        *STOCKED, ("cupboard.yaml", "sources: [a-paper]", "sources: [common-practice]"),
    ]),
    ("figure-in-prose", "'3 hours' is a figure in a text", [*STOCKED, ("cupboard.yaml", "It feeds.", "It feeds for 3 hours.")]),
    ("unused", "nothing uses the number 'times'", [*STOCKED, ("cupboard.yaml", "[rate, sack, times]", "[rate, sack]")]),
    ("too-many-items", "'needle' has 5 cautions", [
        *STOCKED, ("cupboard.yaml", "ask_vet: Ask the vet.", "ask_vet: Ask the vet.\n  cautions: [A., B., C., D., E.]"),
    ]),
    ("danger-keys", "the danger signs are not asked within 3 keys", [
        ("guide.yaml", "way_in: danger", "way_in: ask-0"),
        (FIRST, "  warm-it:\n", LONG.replace("go: ask-12", "go: danger") + "  warm-it:\n"),
        ("findings/all.yaml", "weight:\n", LONG_FINDINGS + "weight:\n"),
    ]),
]  # fmt: skip


def found(folder: Path, *changes: Change) -> list[Problem]:
    return check(small_guide(folder, *changes))


def test_the_small_guide_passes(small: Guide) -> None:
    """The guide that the canaries spoil has no problem of its own."""
    assert check(small) == []


def test_the_small_guide_passes_with_a_cupboard(tmp_path: Path) -> None:
    """The cupboard that the canaries spoil has no problem of its own, and any word may stand in a step."""
    assert found(tmp_path, *STOCKED) == []
    assert found(tmp_path, *STOCKED, (FIRST, "Feed it.", "Feed it from a long boat.")) == []


@pytest.mark.parametrize(("rule", "said", "changes"), [*CANARIES, *PRACTICE_CANARIES])
def test_a_broken_guide_is_caught(tmp_path: Path, rule: str, said: str, changes: list[Change]) -> None:
    """Each rule catches its canary, at a place in a file."""
    problems = found(tmp_path, *changes)

    caught = [problem for problem in problems if problem.rule == rule and said in problem.what]
    assert caught, "\n".join(map(str, problems))
    assert caught[0].place.file


def test_a_sound_practice_has_no_problem(tmp_path: Path) -> None:
    """What the canaries of practice spoil is whole before."""
    assert check(small_guide(tmp_path, *PRACTICE)) == []


def test_no_rule_lacks_a_canary() -> None:
    """Every rule that the checks can raise has a guide here that raises it."""
    source = "".join(
        path.read_text() for path in (Path(__file__).parents[2] / "triage" / "check").rglob("*.py")
    )
    raised = {line.rpartition('"')[0].rpartition('"')[2] for line in source.split("\n") if "Problem(" in line and line.rstrip().endswith('")')}  # fmt: skip
    assert raised
    canaries = [*CANARIES, *WORDING_CANARIES, *PRACTICE_CANARIES]
    assert raised <= {rule for rule, _, _ in canaries}
    assert len(CHECKS) <= len(canaries)


def test_the_shipped_guide_passes(guide: Guide) -> None:
    """The guide that ships has no problem at all, not even a warning."""
    assert check(guide) == []


def test_no_walk_to_any_end_is_longer_than_twelve_screens(guide: Guide) -> None:
    """Over every walk that answers can take, at most twelve screens lead to any end."""
    walks = search(guide).longest()

    assert set(walks) == {name for name, node in guide.nodes.items() if hasattr(node, "urgency")}
    assert max(map(len, walks.values())) <= 12


def test_the_summary_counts_what_is_there(small: Guide) -> None:
    """The summary of the small guide is what one can count by hand."""
    tally = prove(small).tally
    assert tally is not None

    assert (tally.asks, tally.acts, tally.ends) == (3, 1, {"vet-now": 1, "care-here": 1})
    assert sorted(tally.longest)[:2] == ["danger", "feel"]
    assert len(tally.longest) == 5
