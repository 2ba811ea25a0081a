"""Written cases, walked: what is right for one is never typed in, the guide says it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime

from triage.clock import Now
from triage.entry import AnswerReader, AskAgain, Understood
from triage.facts import Facts
from triage.guide.model import PLACEHOLDER, Act, Ask, Guide
from triage.guide.model_practice import Typed, WrittenCase
from triage.page.words import Reader
from triage.practice.case import Case
from triage.practice.questions import supposed_walk
from triage.problems import Place, Problem
from triage.units import System
from triage.walk import Answer, Walk
from triage.ways_in import begin, matter

AT_NO_TIME = Now(datetime(2026, 1, 1, tzinfo=UTC), UTC)
"""A written case tells ages and no clock times, so it is the same at any hour."""


def case_of(guide: Guide, written: WrittenCase) -> Case | Problem:
    """Return a written case with its walk, or the first thing that is wrong with it."""
    reader = AnswerReader(guide, "metric", AT_NO_TIME)
    used: dict[str, int] = {}
    about = matter(guide)
    walk = Walk(guide)
    if about and about.name in written.findings:
        told = written.findings[about.name][0].text
        walk, used[about.name] = begin(guide, told), 1
    while not walk.finished:
        node = walk.node
        if isinstance(node, Act):
            if not _goes_on(guide, node, {name for name, _ in _left(written, used)}):
                break
            walk = walk.done()
            continue
        assert isinstance(node, Ask)
        typed = written.findings.get(node.finding, ())[used.get(node.finding, 0) :]
        if not typed:
            return _wrong(written, f"it comes to '{node.name}', which asks '{node.finding}'; add it")
        used[node.finding] = used.get(node.finding, 0) + 1
        read = _read(reader, node.finding, typed[0], walk)
        if isinstance(read, Problem):
            return read
        walk = walk.answer(read.value, read.said)
    for name, place in _left(written, used):
        what = f"'{name}' is not asked on this case's way to '{walk.node.name}'; take it out"
        return Problem(place, what, "case-answer")
    case = Case(written.name, walk, written.story, written.told, written.remember, written.trap)
    return _supposed(case, written, reader)


def _supposed(case: Case, written: WrittenCase, reader: AnswerReader) -> Case | Problem:
    """Return a case with what its author supposes otherwise."""
    ifs: list[Answer | None] = []
    for supposed in (written.vet_if, written.right_if):
        answer = None
        for name, typed in supposed.items():
            read = _read(reader, name, typed, case.walk)
            if isinstance(read, Problem):
                return read
            answer = Answer(name, read.value)
            if len(supposed) > 1 or supposed_walk(case, answer) is None:
                what = f"'{name}' thought otherwise leads to no page by itself; suppose one other thing"
                return Problem(typed.place, what, "case-answer")
        ifs.append(answer)
    return replace(case, vet_if=ifs[0], right_if=ifs[1])


def _read(reader: AnswerReader, finding: str, typed: Typed, walk: Walk) -> Understood | Problem:
    read = reader.read(reader.guide.findings[finding], typed.text, walk.state.known)
    if isinstance(read, AskAgain) and read.insisted is None:
        return Problem(typed.place, f"'{finding}' can't be this: {read.why}", "case-answer")
    answer = read.insisted if isinstance(read, AskAgain) else read
    assert answer is not None
    return answer


def _goes_on(guide: Guide, act: Act, left: set[str]) -> bool:
    """Whether answers are left that are asked after an act; else the act is the case's page."""
    seen, waiting = set[str](), [act.then, act.else_]
    while waiting:
        name = waiting.pop()
        if name and name not in seen:
            seen.add(name)
            node = guide.nodes[name]
            if isinstance(node, Ask):
                if node.finding in left:
                    return True
                waiting += [branch.go for branch in node.branches]
    return False


def _left(written: WrittenCase, used: dict[str, int]) -> Iterator[tuple[str, Place]]:
    for name, typed in written.findings.items():
        for each in typed[used.get(name, 0) :]:
            yield name, each.place


def _wrong(written: WrittenCase, what: str) -> Problem:
    return Problem(written.place, f"case '{written.name}': {what}", "case-answer")


def told_story(case: Case, system: System) -> str:
    """Return a case's story with its own answers in it."""
    reader = Reader(case.walk.guide, Facts(case.walk.guide.values(), case.now), system)

    def said(name: str) -> str:
        words = reader.answer(case.walk.guide.findings[name], case.now[name])
        return words[:1].lower() + words[1:] if case.walk.guide.findings[name].choices else words

    return PLACEHOLDER.sub(lambda hole: said(hole[1]) if hole[1] in case.now else hole[0], case.story)
