"""Guides for the tests: the shipped one, and a small sound one that a test may spoil."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from triage.guide.find import knowledge_root
from triage.guide.model import Guide, Read
from triage.guide.read import read_guide

SMALL: dict[str, str] = {
    "guide.yaml": """\
edition: "test"
date: "2026-01-01"
title: A small guide
intended_use: For tests. An invented lamb at Nowhere Farm.
not_covered: [everything else]
way_in: danger
danger_signs: {danger: [limp]}
urgencies:
  - {urgency: vet-now, say: Phone the vet now, means: At once.}
  - {urgency: care-here, say: Care for it here, means: No vet now.}
topics: [first]
act_tags: {warm: Add heat, phone: Phone, feed-by-mouth: A drink}
""",
    "findings/all.yaml": """\
danger:
  label: Danger
  ask: Is it limp?
  why: It can die.
  choices: {limp: Limp, none: Not limp}
temperature:
  label: Temperature
  ask: What is its temperature?
  why: Cold kills.
  measure: degC
  plausible: [25, 43]
  how: measure-it
  stand_ins: [mouth]
mouth:
  label: Mouth
  ask: Is its mouth warm?
  why: Cold kills.
  choices: {warm: Warm, cold: Cold}
weight:
  label: Weight
  ask: What does it weigh?
  why: Amounts go by weight.
  measure: kg
  plausible: [0.5, 60]
""",
    "numbers.yaml": """\
chill:
  title: Cold at or below
  value: 37
  unit: degC
  published: {a-paper: [36, 37]}
  safer: higher
  certainty: high
pause:
  title: Wait
  value: 20
  unit: min
  published: {a-paper: 20}
  safer: lower
  certainty: high
""",
    "sources.yaml": "a-paper: {title: An invented paper, grade: A}\n",
    "glossary.yaml": "limp: {means: 'Soft, with no strength.'}\n",
    "how-to/measure-it.yaml": """\
how-to: measure-it
title: Measure it
steps: [Hold it still.]
cautions: [Be gentle.]
sources: [a-paper]
certainty: high
""",
    "topics/first.yaml": """\
topic: first
title: First
about: The only topic.
nodes:
  danger:
    ask: danger
    branches:
      - {is: limp, go: warmth, at_least: vet-now}
      - {is: none, go: warmth}
      - {unsure: true, go: warmth, at_least: vet-now}
  warmth:
    ask: temperature
    branches:
      - {up_to: chill, go: warm-it, at_least: vet-now}
      - {otherwise: true, go: well}
      - {unsure: true, go: feel}
  feel:
    ask: mouth
    branches:
      - {is: warm, go: well}
      - {is: cold, go: warm-it, at_least: vet-now}
      - {unsure: true, go: warm-it, at_least: vet-now}
  warm-it:
    act: [{do: Warm it., tag: warm}]
    title: Warm it
    wait: pause
    forget: [temperature, mouth]
    at_most: 2
    then: warmth
    else: still-cold
    sources: [a-paper]
    certainty: high
  still-cold:
    end: vet-now
    title: Still cold
    likely: It is ill.
    do: [{do: Phone., tag: phone}]
    cautions: [No milk.]
    call_vet: Now.
    sources: [a-paper]
    certainty: high
  well:
    end: care-here
    title: Warm enough
    likely: It is well.
    do: [{do: Feed it., tag: feed-by-mouth}]
    cautions: [Not too much.]
    call_vet: Phone if it goes limp.
    look_again: pause
    sources: [a-paper]
    certainty: high
""",
}

Write = Callable[..., Path]


def write_small(folder: Path, *changes: tuple[str, str, str]) -> Path:
    """Write the small guide with changes, each (file, old, new); an empty old replaces the file."""
    texts = dict(SMALL)
    for file, old, new in changes:
        before = texts.get(file, "")
        assert old in before, f"{old!r} is not in {file}"
        texts[file] = before.replace(old, new) if old else new
    for file, text in texts.items():
        path = folder / file
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def read_small(folder: Path, *changes: tuple[str, str, str]) -> Read:
    """Read the small guide with changes."""
    return read_guide(write_small(folder, *changes))


def small_guide(folder: Path, *changes: tuple[str, str, str]) -> Guide:
    """Return the small guide with changes that leave it readable."""
    read = read_small(folder, *changes)
    assert read.guide is not None, "\n".join(map(str, read.problems))
    return read.guide


@pytest.fixture(autouse=True)
def own_folders(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Keep every test, and every program that it starts, out of a person's own folders.

    The folder for what can be made again is one for all, so that not each program reads the guide anew.
    """
    home = tmp_path_factory.mktemp("home")
    monkeypatch.setenv("HOME", str(home))
    monkeypatch.setenv("XDG_DATA_HOME", str(home / "data"))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(home / "config"))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.getbasetemp() / "cache"))
    monkeypatch.delenv("TRIAGE_VET", raising=False)
    return home


@pytest.fixture(scope="session")
def guide() -> Guide:
    """The shipped guide."""
    read = read_guide(knowledge_root())
    assert read.guide is not None, "\n".join(map(str, read.problems))
    return read.guide


@pytest.fixture
def small(tmp_path: Path) -> Guide:
    """The small guide, sound."""
    return small_guide(tmp_path)
