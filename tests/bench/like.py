"""Sound guides of any size, of like shape to the shipped one: `write_like(folder, nodes, seed)`.

Invented throughout. Danger, warmth, swallow and age are asked once and used everywhere; then a few
questions choose a topic. Each topic has questions of its own, passes the central ones in silence where
they decide something there, has a loop of warming in some, and ends of every urgency.
"""

from __future__ import annotations

import random
from pathlib import Path

WAYS = 7
"""How many ways a question about the topic offers."""

FRONT = """\
edition: "test"
date: "2026-01-01"
title: A made-up guide
intended_use: For measuring. Nothing in it is about a real lamb.
not_covered: [everything else]
way_in: danger
danger_signs: {danger: [limp, fitting]}
urgencies:
  - {urgency: vet-now, say: Phone the vet now, means: At once., opens: Phone now}
  - {urgency: vet-today, say: Phone the vet today, means: By day., opens: Phone today}
  - {urgency: watch, say: Watch it, means: Look again.}
act_tags: {phone: Phone, warm: Add heat, feed: A drink, check: Look}
"""
FINDINGS = """\
danger: {label: Danger, ask: Do you see one of these?, why: It can die., choices: {limp: Weak, fitting: Stiff, none: None}}
temperature: {label: Warmth, ask: How warm is it?, why: Cold kills., measure: degC, plausible: [25, 43], stand_ins: [mouth]}
mouth: {label: Mouth, ask: Is its mouth warm?, why: Cold kills., choices: {warm: Warm, cold: Cold}}
swallows: {label: Drink, ask: Can it drink?, why: Milk can go wrong., choices: {well: Well, badly: Badly}}
age: {label: Age, ask: How old is it?, why: Age decides., measure: h, plausible: [0, 4000]}
"""
NUMBERS = """\
severe: {title: Too cold, value: 37, unit: degC, published: {a-paper: 37}, safer: higher, certainty: high}
chilled: {title: Cold, value: 39, unit: degC, published: {a-paper: 39}, safer: higher, certainty: high}
newborn: {title: New, value: 24, unit: h, published: {a-paper: 24}, safer: lower, certainty: high}
young: {title: Young, value: 336, unit: h, published: {a-paper: 336}, safer: lower, certainty: high}
pause: {title: Wait, value: 20, unit: min, published: {a-paper: 20}, safer: lower, certainty: high}
"""
RULES = """\
no-feed-when-cold: {never: {tag: feed}, when: {temperature: {up_to: severe}}, because: It chokes., sources: [a-paper]}
no-feed-with-a-cold-mouth: {never: {tag: feed}, when: {temperature: {unsure: true}, mouth: [{is: cold}, {unsure: true}]}, because: It chokes., sources: [a-paper]}
no-feed-without-a-swallow: {never: {tag: feed}, when: {swallows: [{is: badly}, {unsure: true}]}, because: It chokes., sources: [a-paper]}
danger-calls: {always: {urgency: vet-now}, when: {danger: [{is: [limp, fitting]}, {unsure: true}]}, because: It dies., sources: [a-paper]}
cold-calls: {always: {urgency: vet-now}, when: {temperature: {up_to: severe}}, because: It dies., sources: [a-paper]}
call-says-phone: {always: {tag: phone}, on: {end: vet-now}, because: It is read., sources: [a-paper]}
"""
FIRST = """\
topic: first
title: First
about: The way in.
nodes:
  danger:
    ask: danger
    branches:
      - {is: [limp, fitting], go: warmth, at_least: vet-now}
      - {is: none, go: warmth}
      - {unsure: true, go: warmth, at_least: vet-now}
  warmth:
    ask: temperature
    branches:
      - {up_to: severe, go: very-cold, at_least: vet-now}
      - {otherwise: true, go: suck}
      - {unsure: true, go: mouth}
  mouth:
    ask: mouth
    branches:
      - {is: warm, go: suck}
      - {is: cold, go: very-cold, at_least: vet-now}
      - {unsure: true, go: very-cold, at_least: vet-now}
  suck:
    ask: swallows
    branches:
      - {is: well, go: old}
      - {is: badly, go: no-swallow, at_least: vet-now}
      - {unsure: true, go: no-swallow, at_least: vet-now}
  old:
    ask: age
    branches:
      - {otherwise: true, go: where-0}
      - {unsure: true, go: where-0, at_least: vet-today}
"""


def write_like(folder: Path, nodes: int, seed: int = 1) -> Path:
    """Write a sound guide of about so many nodes into a folder, and return the folder."""
    depth = 1 + sum(nodes > size for size in (100, 500, 2500))  # of the questions that choose a topic
    made = _Maker(random.Random(seed), [each for each in (1, 2, 3) if each <= 5 - depth][-2:])
    made.end("very-cold", "vet-now")
    made.end("no-swallow", "vet-now", "swallows: [{is: badly}, {unsure: true}]")
    first = made.lines
    topics: dict[str, list[str]] = {}
    while made.count < nodes - nodes // 50:
        name = f"part-{len(topics)}"
        made.lines = []
        made.topic(name)
        topics[name] = made.lines
    made.lines = first
    made.ways([f"{name}-a" for name in topics], "where-0")
    _write(folder, "guide.yaml", FRONT + f"topics: [first, {', '.join(topics)}]\n")
    _write(folder, "findings/all.yaml", FINDINGS + "".join(made.findings))
    _write(folder, "numbers.yaml", NUMBERS)
    _write(folder, "rules.yaml", RULES)
    _write(folder, "sources.yaml", "a-paper: {title: An invented paper, grade: A}\n")
    _write(folder, "topics/first.yaml", FIRST + "".join(made.lines))
    for name, lines in topics.items():
        head = f"topic: {name}\ntitle: A part\nabout: One part of it.\nnodes:\n"
        _write(folder, f"topics/{name}.yaml", head + "".join(lines))
    return folder


def _write(folder: Path, name: str, text: str) -> None:
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


class _Maker:
    """Collects the nodes and findings of one guide."""

    def __init__(self, chance: random.Random, gates: list[int]) -> None:
        self.chance, self.gates = chance, gates
        self.lines: list[str] = []
        self.findings: list[str] = []
        self.count = 5

    def ask(self, name: str, finding: str, branches: list[str]) -> None:
        """Add a question."""
        self.count += 1
        ways = "".join(f"      - {{{branch}}}\n" for branch in branches)
        self.lines.append(f"  {name}:\n    ask: {finding}\n    branches:\n{ways}")

    def end(self, name: str, urgency: str, meant_for: str = "", feed: bool = False) -> None:
        """Add an end; one that feeds must come after everything that makes a feed dangerous."""
        self.count += 1
        opens = {"vet-now": "Phone now.", "vet-today": "Phone today."}.get(
            urgency, "Phone now if it is weak."
        )
        step = "Give it milk., tag: feed" if feed else "Phone the vet., tag: phone"
        again = "" if urgency == "vet-now" else "    look_again: pause\n"
        whom = f"    for: {{{meant_for}}}\n" if meant_for else ""
        self.lines.append(
            f"  {name}:\n    end: {urgency}\n    title: An end\n{whom}    likely: It is ill.\n"
            f"    do: [{{do: {step}}}]\n    cautions: [Be kind.]\n    call_vet: {opens}\n{again}"
            f"    sources: [a-paper]\n    certainty: high\n"
        )

    def own(self, name: str) -> str:
        """Add a finding of a topic's own, and return its name."""
        self.findings.append(
            f"{name}: {{label: Sign, ask: How is it?, why: It tells., "
            f"choices: {{good: Good, fair: Fair, bad: Bad}}}}\n"
        )
        return name

    def topic(self, name: str) -> None:
        """Add one topic: two or three questions of its own, with central ones passed between them."""
        gates = self.chance.choice(self.gates)
        self.end(f"{name}-call", "vet-now")
        self.end(f"{name}-today", "vet-today")
        line, worse = self.chance.choice(["newborn", "young"]), self.chance.choice(["young", "old"])
        for gate in range(gates):
            at, on = f"{name}-{'abc'[gate]}", f"{name}-{'abc'[gate]}-age"
            after = f"{name}-{'abc'[gate + 1]}" if gate + 1 < gates else f"{name}-cold"
            sign = self.own(f"{name}-sign-{gate}")
            fair = f"is: fair, go: {self.chance.choice([on, f'{name}-today'])}, at_least: vet-today"
            worst = f"go: {name}-call, at_least: vet-now"
            self.ask(at, sign, [f"is: good, go: {on}", fair, f"is: bad, {worst}", f"unsure: true, {worst}"])
            self._age(on, line, worse, [after, after] if gate + 1 < gates else [after, f"{name}-today"])
        self._close(name)

    def _age(self, name: str, line: str, worse: str, to: list[str]) -> None:
        """Add a question passed in silence, which parts the lambs by age; one side is worse off."""
        well, ill = f"go: {to[0]}", f"go: {to[1]}, at_least: vet-today"
        young, old = (ill, well) if worse == "young" else (well, ill)
        self.ask(name, "age", [f"up_to: {line}, {young}", f"otherwise: true, {old}", f"unsure: true, {ill}"])

    def _close(self, name: str) -> None:
        """Add what every topic ends with: warmth once more, a loop of warming in some, and a feed."""
        warms = self.chance.random() < 0.3
        cold = f"{name}-warm" if warms else f"{name}-today"
        self.ask(
            f"{name}-cold",
            "temperature",
            [f"below: chilled, go: {cold}, at_least: vet-today", f"otherwise: true, go: {name}-end",
             f"unsure: true, go: {name}-end"],
        )  # fmt: skip
        self.end(f"{name}-end", "watch", "swallows: {is: well}", feed=True)
        if not warms:
            return
        self.count += 1
        self.lines.append(
            f"  {name}-warm:\n    act: [{{do: Warm it., tag: warm}}]\n    title: Warm it\n    wait: pause\n"
            f"    forget: [temperature]\n    at_most: 2\n    then: {name}-again\n    else: {name}-call\n"
            f"    sources: [a-paper]\n    certainty: high\n"
        )
        self.ask(
            f"{name}-again",
            "temperature",
            [f"up_to: severe, go: {name}-call, at_least: vet-now", f"below: chilled, go: {name}-warm",
             f"otherwise: true, go: {name}-end", f"unsure: true, go: {name}-call, at_least: vet-now"],
        )  # fmt: skip

    def ways(self, targets: list[str], name: str) -> None:
        """Add the questions that choose a topic, seven ways at each, as deep as it takes."""
        finding = f"{name}-reason"
        groups = [targets[at::WAYS] for at in range(min(WAYS, len(targets)))]
        choices = ", ".join(f"way-{at}: Part" for at in range(len(groups)))
        self.findings.append(
            f"{finding}: {{label: Reason, ask: Which part?, why: It leads on., choices: {{{choices}}}, "
            f"never_unsure: One is right.}}\n"
        )
        ways = []
        for at, group in enumerate(groups):
            to = group[0] if len(group) == 1 else f"{name}-{at}"
            ways.append(f"is: way-{at}, go: {to}")
            if len(group) > 1:
                self.ways(group, to)
        self.ask(name, finding, ways)
