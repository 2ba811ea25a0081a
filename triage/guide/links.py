"""Looking up every name that the files mention, once all of them have been read."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Protocol

from triage.amounts import AMOUNTS
from triage.amounts.expects import FINDING_CHOICES, FINDING_UNITS, NUMBER_UNITS, RAISING_UNITS
from triage.guide import model, model_practice, model_rearing, model_rules
from triage.guide.items import Item
from triage.guide.rule_links import look_up_choices, look_up_farms, look_up_rules, look_up_unit
from triage.guide.shapes import Mention, Reading
from triage.guide.way_links import look_up_ways_in
from triage.problems import Place, nearest
from triage.units import same_dimension


class Parts(Protocol):
    """The named pieces of a guide as far as they could be read."""

    nodes: dict[str, model.Node]
    findings: dict[str, model.Finding]
    numbers: dict[str, model.Number]
    fronts: dict[str, model.Front]
    rules: dict[str, model_rules.Rule]
    duties: dict[str, model_rearing.Duty]
    laws: dict[str, model_rearing.Law]
    cupboard: dict[str, Item]
    farms: dict[str, model_practice.Farm]


def look_up(reading: Reading, names: Mapping[str, Iterable[str]], parts: Parts) -> None:
    """Add a mistake for each name that does not exist, with the nearest one that does."""
    known = {kind: set(each) for kind, each in names.items()}
    _mentions(reading, known)
    numbers = parts.numbers
    for finding in parts.findings.values():
        _finding(finding, reading)
    findings = {
        name: each for name, each in parts.findings.items() if bool(each.choices) != bool(each.measure)
    }
    for number in numbers.values():
        _number(number, reading)
    for node in parts.nodes.values():
        if not isinstance(node, model.Ask):
            _time(node, numbers, reading)
        if isinstance(node, model.Ask) and node.finding in findings:
            _branches(node, findings[node.finding], numbers, reading)
        elif isinstance(node, model.Act) and bool(node.at_most) != bool(node.else_):
            reading.wrong(node.place, f"act '{node.name}' needs both 'at_most' and 'else', or neither")
    look_up_rules(parts, findings, reading)
    look_up_farms(parts, findings, reading)
    if parts.cupboard:  # a walk reads none, and is spared the loading
        from triage.guide.item_links import look_up_items

        look_up_items(parts.cupboard, numbers, reading)
    for front in parts.fronts.values():
        _danger_choices(front, findings, reading)
        look_up_ways_in(front, findings, parts.nodes, reading)
    _amounts(reading, known["finding"], known["number"])
    _raising(parts, reading)


def _mentions(reading: Reading, known: Mapping[str, set[str]]) -> None:
    allowed_for: dict[tuple[str, ...], set[str]] = {}
    for mention in reading.mentions:
        if mention.kinds not in allowed_for:
            allowed_for[mention.kinds] = set[str]().union(*(known[kind] for kind in mention.kinds))
        allowed = allowed_for[mention.kinds]
        if (
            mention.name not in allowed
            and mention.name not in reading.broken
            and not reading.unread & set(mention.kinds)
        ):
            _unknown(reading, mention, allowed)


def _unknown(reading: Reading, mention: Mention, allowed: set[str]) -> None:
    if not mention.kinds:
        what = f"nothing like {{{mention.name}}} can stand in this text; write plain words"
    else:
        kinds = " or ".join(mention.kinds)
        what = f"there is no {kinds} '{mention.name}'{nearest(mention.name, allowed)}"
    reading.wrong(mention.place, what, "no-such-name")


def _number(number: model.Number, reading: Reading) -> None:
    wanted = NUMBER_UNITS.get(number.name, number.unit)
    if number.unit != wanted:
        what = f"the sums take '{number.name}' in {wanted}, not in {number.unit}; write it so"
        reading.wrong(number.place, what, "unit")
    if number.name in NUMBER_UNITS and number.value <= 0:
        reading.wrong(
            number.place, f"the sums need '{number.name}' above zero, not {number.value:g}", "range"
        )


def _raising(parts: Parts, reading: Reading) -> None:
    """Hold a guide with duties to what the plan of a lamb stands on."""
    if not parts.duties or "number" in reading.unread:
        return
    for name, unit in RAISING_UNITS.items():
        number = parts.numbers.get(name)
        if number is None and name not in reading.broken:
            reading.wrong(
                Place("rearing.yaml"), f"a raising plan needs the number '{name}'; add it", "no-such-name"
            )
        elif number and number.unit != unit:
            what = f"a raising plan takes '{name}' in {unit}, not in {number.unit}; write it so"
            reading.wrong(number.place, what, "unit")


def _time(node: model.Act | model.End, numbers: Mapping[str, model.Number], reading: Reading) -> None:
    number = numbers.get(node.wait if isinstance(node, model.Act) else node.look_again)
    if number and not same_dimension(number.unit, "min"):
        what = f"'{number.name}' is in {number.unit}; a wait or a look needs a number of time"
        reading.wrong(node.place, what, "unit")


def _finding(finding: model.Finding, reading: Reading) -> None:
    if bool(finding.choices) == bool(finding.measure):
        what = f"finding '{finding.name}' needs either 'choices' or 'measure', and not both"
        reading.wrong(finding.place, what)
    if finding.measure and finding.plausible == (0.0, 0.0):
        what = f"finding '{finding.name}' is measured, so it needs 'plausible', like [25, 43]"
        reading.wrong(finding.place, what, "missing-field")
    wanted = FINDING_UNITS.get(finding.name, finding.measure)
    if finding.measure != wanted:
        what = f"the sums take '{finding.name}' as a measurement in {wanted}; write it so"
        reading.wrong(finding.place, what, "unit")
    lacking = set(FINDING_CHOICES.get(finding.name, ())) - set(finding.choices)
    if lacking:
        what = f"the sums know '{finding.name}' by {', '.join(sorted(lacking))}, which it lacks; add it"
        reading.wrong(finding.place, what, "no-such-name")
    if finding.choices and (finding.plausible != (0.0, 0.0) or finding.usual):
        reading.wrong(finding.place, f"finding '{finding.name}' has choices; it takes no range")


def _branches(
    node: model.Ask, finding: model.Finding, numbers: Mapping[str, model.Number], reading: Reading
) -> None:
    for branch in node.branches:
        tests = [
            name
            for name, used in {
                "is": branch.is_,
                "below": branch.below,
                "up_to": branch.up_to,
                "otherwise": branch.otherwise,
                "unsure": branch.unsure,
            }.items()
            if used
        ]
        if len(tests) != 1:
            said = " and ".join(f"'{each}'" for each in tests) or "none"
            what = f"a branch has exactly one of is, below, up_to, otherwise, unsure; this has {said}"
            reading.wrong(branch.place, what)
        elif finding.choices and tests[0] in {"below", "up_to"}:
            what = f"'{finding.name}' is chosen, not measured; use 'is' with one of its choices"
            reading.wrong(branch.place, what)
        elif not finding.choices and tests[0] == "is":
            what = f"'{finding.name}' is measured; use 'below' or 'up_to' with the name of a number"
            reading.wrong(branch.place, what)
        look_up_unit(numbers.get(branch.below or branch.up_to), finding, branch.place, reading)
        look_up_choices(branch.is_, finding, branch.place, reading)


def _danger_choices(front: model.Front, findings: Mapping[str, model.Finding], reading: Reading) -> None:
    for name, signs in front.danger_signs.items():
        finding = findings.get(name)
        for sign in signs if finding else ():
            if finding and sign not in finding.choices:
                what = f"danger sign '{sign}' is not a choice of '{name}'{nearest(sign, finding.choices)}"
                reading.wrong(front.place, what, "no-such-name")


def _amounts(reading: Reading, findings: set[str], numbers: set[str]) -> None:
    """Hold the guide to what the sums in its texts stand on, so that no sum can fail at night."""
    for name in AMOUNTS.keys() & numbers:
        what = f"'{name}' is the name of a sum; give the number another name"
        reading.wrong(Place("numbers.yaml"), what, "duplicate-name")
    used = {mention.name: mention for mention in reading.mentions if "amount" in mention.kinds}
    for name in sorted(used.keys() & AMOUNTS.keys()):
        amount = AMOUNTS[name]
        for kind, needed, there in (
            ("number", amount.numbers, numbers),
            ("finding", (*amount.needs, *amount.uses), findings),
        ):
            for each in sorted(set(needed) - there - reading.broken):
                what = f"the sum '{name}' needs the {kind} '{each}'{nearest(each, there)}"
                reading.wrong(used[name].place, what, "no-such-name")
