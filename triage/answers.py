"""Answers from a file: a YAML or JSON map of finding to value, walked without a person."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from triage.entry import AnswerReader, AskAgain, Understood
from triage.facts import UNSURE
from triage.guide.model import Act, Ask, Finding, Guide
from triage.guide.text import Items, Text, Written, read_text
from triage.problems import Place, Problem, errors, nearest
from triage.walk import Walk
from triage.ways_in import begin, matter


@dataclass(frozen=True)
class Answers:
    """What a file says of each finding: one text for each time it is asked."""

    file: str
    texts: dict[str, tuple[Text, ...]]


def read_answers(text: str, file: str, guide: Guide) -> Answers | list[Problem]:
    """Read an answers file, or return every mistake in it with its place."""
    problems: list[Problem] = []
    written = read_text(text, file, problems)
    texts: dict[str, tuple[Text, ...]] = {}
    for name, value in written.fields.items() if written else ():
        if name not in guide.findings:
            what = (
                f"there is no finding '{name}'{nearest(name, guide.findings)}; 'triage findings' lists them"
            )
            problems.append(Problem(written.keys[name] if written else Place(file), what, "no-such-name"))
            continue
        texts[name] = _texts(value, problems)
    return problems if errors(problems) else Answers(file, texts)


def _texts(value: Written, problems: list[Problem]) -> tuple[Text, ...]:
    items = value.items if isinstance(value, Items) else (value,)
    for item in items:
        if not isinstance(item, Text):
            what = "an answer is one value, or a list of values where it is asked again"
            problems.append(Problem(item.place, what, "shape"))
    return tuple(item for item in items if isinstance(item, Text))


@dataclass(frozen=True)
class Stopped:
    """Why the answers did not reach an end."""

    walk: Walk
    why: str


def follow(
    walk: Walk,
    answers: Answers,
    reader: AnswerReader,
    unsure_rest: bool = False,
    told: Callable[[str], None] = lambda note: None,
) -> Walk | Stopped:
    """Walk by the answers to an end. Acts count as done; a measurement is insisted on.

    Stops at the first finding that is asked and not answered, unless `unsure_rest` answers
    "not sure" for it.
    """
    used: dict[str, int] = {}
    about = matter(walk.guide)
    if about and about.name in answers.texts and not walk.moves:
        first = _first(walk, about, answers.texts[about.name], reader)
        if isinstance(first, Stopped):
            return first
        walk = first
    while not walk.finished:
        node = walk.node
        if isinstance(node, Act):
            walk = walk.done()
            continue
        assert isinstance(node, Ask)
        finding = walk.guide.findings[node.finding]
        texts = answers.texts.get(finding.name, ())
        index = used.get(finding.name, 0)
        if index >= len(texts):
            if unsure_rest and not finding.never_unsure:
                walk = walk.answer(UNSURE)
                continue
            return Stopped(walk, _lacking(answers, finding.name, len(texts)))
        used[finding.name] = index + 1
        text = texts[index]
        read = reader.read(finding, text.text, walk.state.known)
        if isinstance(read, AskAgain):
            if read.insisted is None:
                return Stopped(walk, f"{text.place}: {finding.name}: {read.why}")
            told(f"{text.place}: {finding.name}: {read.why}")
            read = read.insisted
        assert isinstance(read, Understood)
        walk = walk.answer(read.value, read.said)
    return walk


def _first(walk: Walk, about: Finding, texts: tuple[Text, ...], reader: AnswerReader) -> Walk | Stopped:
    """Return the walk begun with what the file says it is about."""
    read = reader.read(about, texts[0].text, {})
    if isinstance(read, AskAgain):
        return Stopped(walk, f"{texts[0].place}: {about.name}: {read.why}")
    return begin(walk.guide, read.value if isinstance(read.value, str) else "")


def _lacking(answers: Answers, finding: str, given: int) -> str:
    if given:
        return (
            f"{answers.file}: '{finding}' is asked again, for the {given + 1}. time; "
            f"write its values as a list, like [36.2, 37.4], or add --unsure-rest"
        )
    return f"{answers.file}: '{finding}' is asked and not answered here; add it, or add --unsure-rest"
