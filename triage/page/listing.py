"""Lists for the command line: findings, sums, and one sum worked out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from triage.amounts import AMOUNTS
from triage.clock import Now
from triage.entry import KEEP_IT, AnswerReader, AskAgain
from triage.facts import UNSURE, Facts, Value
from triage.guide.model import Guide
from triage.page.words import Reader
from triage.page.working import sum_blocks
from triage.problems import nearest
from triage.units import System, show


def finding_lines(guide: Guide, system: System) -> Iterator[str]:
    """Yield every finding with its question and its choices or its unit and range."""
    for finding in guide.findings.values():
        reader = Reader(guide, Facts(guide.values(), {}), system)
        yield f"{finding.name}: {reader.fill(finding.ask)}"
        if finding.measure:
            low, high = (show(each, finding.measure, system) for each in finding.plausible)
            yield f"  a measurement, {low} to {high}"
        for name in finding.choices:
            yield f"  {name}: {reader.choice(finding, name)}"
        if not finding.never_unsure:
            yield f"  unsure: {finding.unsure or 'Not sure'}"


def amount_lines(guide: Guide) -> Iterator[str]:
    """Yield every sum with what it needs."""
    for amount in AMOUNTS.values():
        needs = " ".join(f"{name}=..." for name in amount.needs)
        uses = f" (and if known: {', '.join(amount.uses)})" if amount.uses else ""
        yield f"{amount.name}: {amount.title}"
        yield f"  triage amounts {amount.name} {needs}{uses}".rstrip()


def work_out(guide: Guide, name: str, given: Sequence[str], system: System) -> list[str] | str:
    """Return a sum with its working and sources as lines, or a sentence that says what is wrong."""
    if name not in AMOUNTS:
        return f"There is no sum '{name}'{nearest(name, AMOUNTS)}. 'triage amounts' lists them."
    amount = AMOUNTS[name]
    known: dict[str, Value] = {}
    notes: list[str] = []
    order = {finding: place for place, finding in enumerate(guide.findings)}
    # A weight is judged by the age, so findings are taken in the guide's own order.
    for pair in sorted(given, key=lambda each: order.get(each.partition("=")[0], 0)):
        wrong = take_pair(guide, pair, known, notes, system)
        if wrong:
            return wrong
    missing = [need for need in amount.needs if need not in known]
    if missing == ["weight"] and "birth-type" in known:
        known["weight"], missing = UNSURE, []
    if missing:
        return f"'{name}' needs {' and '.join(missing)}: add {' '.join(f'{each}=...' for each in missing)}."
    lacking = [each for each in amount.numbers if each not in guide.numbers]
    if lacking:
        return f"This guide lacks the numbers that '{name}' stands on: {', '.join(lacking)}."
    try:
        result = amount.work_out(Facts(guide.values(), known), system)
    except LookupError as error:
        return f"'{name}' needs {error.args[0]} as a measurement, not as 'not sure'."
    reader = Reader(guide, Facts(guide.values(), known), system)
    blocks = sum_blocks(reader, {name: result})
    lines = [f"{block.mark} {block.text}".strip() for block in blocks if block.text]
    return [lines[0], *notes, *lines[1:], "First aid and care only. Your vet and the label come first."]


def take_pair(
    guide: Guide, pair: str, known: dict[str, Value], notes: list[str], system: System
) -> str | None:
    """Take one `finding=value`; return a sentence when it can't be taken."""
    name, equals, text = pair.partition("=")
    if not equals:
        return f"'{pair}' should be written finding=value, like weight=4.2kg."
    if name not in guide.findings:
        return f"There is no finding '{name}'{nearest(name, guide.findings)}. 'triage findings' lists them."
    read = AnswerReader(guide, system, Now.read()).read(guide.findings[name], text, known)
    if isinstance(read, AskAgain):
        if read.insisted is None:
            return f"{name}: {read.why}"
        notes.append(f"{name}: {read.why.replace(KEEP_IT, '').strip()}")
        read = read.insisted
    if read.note:
        notes.append(f"{name}: {read.note}")
    known[name] = read.value
    return None
