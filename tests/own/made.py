"""A small guide of two topics for own folders to be laid over, and what comes of that."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from tests.conftest import write_small
from triage.guide.model import Guide
from triage.guide.read import read_guide
from triage.own.judging import judged
from triage.problems import Problem, errors
from triage.review.signing import write_sitting
from triage.review.sittings import Sitting, file_of
from triage.review.statements import seals_of, statements_of

Change = tuple[str, str, str]

SECOND = """\
topic: second
title: Second
about: The other topic.
nodes:
  leg:
    ask: leg
    branches:
      - {is: bad, go: leg-bad}
      - {is: stiff, go: leg-stiff}
      - {is: fine, go: well}
      - {unsure: true, go: leg-bad}
  leg-bad:
    end: vet-now
    title: The leg is bad
    likely: It is hurt.
    do: [{do: Phone., tag: phone}, {do: Hold the leg still., tag: warm}]
    cautions: [Do not pull the leg.]
    call_vet: Now.
    must_say: [not pull]
    sources: [a-paper]
    certainty: high
  leg-stiff:
    end: vet-now
    title: The leg is stiff
    likely: It is stiff.
    do: [{do: Phone., tag: phone}]
    cautions: [Do not bend the leg.]
    call_vet: Now.
    sources: [a-paper]
    certainty: high
"""

BASE: tuple[Change, ...] = (
    ("guide.yaml", "topics: [first]", "topics: [first, second]\nreview_by: 2027-06-30"),
    ("topics/second.yaml", "", SECOND),
    (
        "findings/second.yaml",
        "",
        "leg: {label: Leg, ask: How is its leg?, why: It may hurt., choices: {bad: Bad, stiff: Stiff, fine: Fine}}\n",
    ),
    ("topics/first.yaml", "      - {otherwise: true, go: well}", "      - {otherwise: true, go: leg}"),
    (
        "rules.yaml",
        "",
        """\
no-feed-when-cold:
  never: {tag: feed-by-mouth}
  when: {temperature: {up_to: chill}}
  because: A cold gut does not work.
  sources: [a-paper]
""",
    ),
    (
        "laws.yaml",
        "",
        "here: {where: Here, says: [Rings early only.], read: '2026-01-01', ring_until: pause, sources: [a-paper], certainty: high}\n",
    ),
    (
        "cupboard.yaml",
        "",
        "towel: {title: Towel, why: To dry it., first: tonight, how_many: {least: 2}, cautions: [Keep it clean.], sources: [a-paper], certainty: high}\n",
    ),
)


def base_folder(folder: Path, *changes: Change) -> Path:
    """Write the guide of two topics, with changes."""
    return write_small(folder, *BASE, *changes)


def own_folder(folder: Path, files: Mapping[str, str]) -> Path:
    """Write an own folder."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    return folder


def laid(root: Path, own: Path) -> tuple[Guide, Guide]:
    """Return a guide, and it with an own folder laid over it."""
    base, whole = read_guide(root), read_guide(root, own=own)
    assert base.guide is not None, base.problems
    assert whole.guide is not None, "\n".join(map(str, whole.problems))
    return base.guide, whole.guide


def judged_of(root: Path, own: Path) -> list[Problem]:
    """Return what is wrong with what an own folder does."""
    base, whole = laid(root, own)
    return errors(judged(base, whole, own))


def sign(root: Path, own: Path, *keys: str, role: str = "vet") -> Path:
    """Have somebody sign statements as an own folder has them; return the sitting's file."""
    _, whole = laid(root, own)
    seals = seals_of(statements_of(whole))
    sitting = Sitting("A. Name", role, "2026-11-29", "test", {key: seals[key] for key in keys})
    file = file_of(sitting, own)
    assert not write_sitting(sitting, file)
    return file
