"""Looking up what rules and pages say of a lamb: kinds of conditions, choices and units."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Protocol

from triage.guide import model, model_practice, model_rearing, model_rules
from triage.guide.shapes import Reading
from triage.problems import Place, nearest
from triage.units import same_dimension

BANDS = ("above", "from_", "below", "up_to")


class Parts(Protocol):
    """The named pieces that conditions speak of."""

    nodes: dict[str, model.Node]
    numbers: dict[str, model.Number]
    rules: dict[str, model_rules.Rule]
    duties: dict[str, model_rearing.Duty]
    laws: dict[str, model_rearing.Law]
    farms: dict[str, model_practice.Farm]


def look_up_rules(parts: Parts, findings: Mapping[str, model.Finding], reading: Reading) -> None:
    """Add a mistake for each rule or `for` that no lamb could be held to."""
    for rule in parts.rules.values():
        _rule(rule, reading)
        _lamb(rule.when, findings, parts.numbers, reading)
    for finding in findings.values():
        for condition in (finding.normal, finding.given):
            if condition:
                _condition(condition, finding, parts.numbers, reading)
    for node in parts.nodes.values():
        if not isinstance(node, model.Ask):
            _lamb(node.for_, findings, parts.numbers, reading)
    for duty in parts.duties.values():
        _lamb(duty.for_, findings, parts.numbers, reading)
        _ages(duty, parts.numbers, reading)
    for law in parts.laws.values():
        _age(law.ring_until, law.place, parts.numbers, reading)


def look_up_farms(parts: Parts, findings: Mapping[str, model.Finding], reading: Reading) -> None:
    """Add a mistake for each pair of choices that practice could never meet."""
    for farm in parts.farms.values():
        for lamb in (*farm.clashes, *farm.odd_together):
            _lamb(lamb, findings, parts.numbers, reading)
        for name, choices in farm.leads_on.items():
            if name in findings:
                look_up_choices(choices, findings[name], farm.place, reading)


def _ages(duty: model_rearing.Duty, numbers: Mapping[str, model.Number], reading: Reading) -> None:
    for name in (duty.from_, duty.until, duty.every):
        _age(name, duty.place, numbers, reading)
    begins, ends = numbers.get(duty.from_), numbers.get(duty.until)
    if not begins or not ends or not same_dimension(begins.unit, ends.unit):
        return
    if same_dimension(ends.unit, "h") and ends.quantity.to("h").value <= begins.quantity.to("h").value:
        what = f"duty '{duty.name}' ends at '{ends.name}', which is no later than it begins"
        reading.wrong(duty.place, what, "range")


def _age(name: str, place: Place, numbers: Mapping[str, model.Number], reading: Reading) -> None:
    number = numbers.get(name)
    if number and not same_dimension(number.unit, "h"):
        what = f"'{name}' is in {number.unit}; an age or a time between needs a number of time"
        reading.wrong(place, what, "unit")


def _rule(rule: model_rules.Rule, reading: Reading) -> None:
    if (rule.never is None) == (rule.always is None):
        reading.wrong(rule.place, f"rule '{rule.name}' needs either 'never' or 'always', and not both")
    for trait in (rule.never, rule.always):
        if trait and sum(map(bool, (trait.tag, trait.shows, trait.says, trait.urgency))) != 1:
            reading.wrong(trait.place, "write exactly one of tag, shows, says, urgency here")
    if rule.never and rule.never.urgency:
        reading.wrong(rule.never.place, "an urgency is for 'always': it means this one or a more urgent one")
    if rule.always and rule.where_asked:
        what = "'where_asked' is for 'never'; an 'always' rule speaks only of what was answered"
        reading.wrong(rule.place, what)
    if rule.where_asked and not rule.when:
        reading.wrong(rule.place, "'where_asked' needs a 'when' that it softens")


def _lamb(
    lamb: model.Lamb,
    findings: Mapping[str, model.Finding],
    numbers: Mapping[str, model.Number],
    reading: Reading,
) -> None:
    for name, conditions in lamb.items():
        if name in findings:
            for condition in conditions:
                _condition(condition, findings[name], numbers, reading)


def _condition(
    condition: model.Condition,
    finding: model.Finding,
    numbers: Mapping[str, model.Number],
    reading: Reading,
) -> None:
    bands = [number for band in BANDS if (number := getattr(condition, band))]
    if sum(map(bool, (condition.is_, bands, condition.unsure, condition.unasked))) != 1:
        what = "a condition has one of: 'is', a band (above or from, below or up_to), 'unsure', 'unasked'"
        reading.wrong(condition.place, what)
    elif (condition.above and condition.from_) or (condition.below and condition.up_to):
        reading.wrong(condition.place, "a band has one lower and one upper side; keep one of each")
    elif condition.unsure and finding.never_unsure:
        reading.wrong(condition.place, f"'{finding.name}' says it is never unsure; delete this")
    elif condition.is_ and finding.measure:
        what = f"'{finding.name}' is measured; use below, up_to, from or above with the name of a number"
        reading.wrong(condition.place, what)
    elif bands and finding.choices:
        reading.wrong(condition.place, f"'{finding.name}' is chosen, not measured; use 'is'")
    else:
        look_up_choices(condition.is_, finding, condition.place, reading)
        for number in bands:
            look_up_unit(numbers.get(number), finding, condition.place, reading)


def look_up_choices(choices: tuple[str, ...], finding: model.Finding, place: Place, reading: Reading) -> None:
    """Add a mistake for each choice that a finding does not have."""
    for choice in choices:
        if finding.choices and choice not in finding.choices:
            hint = nearest(choice, finding.choices) or f"; it has {', '.join(finding.choices)}"
            what = f"finding '{finding.name}' has no choice '{choice}'{hint}"
            reading.wrong(place, what, "no-such-name")


def look_up_unit(number: model.Number | None, finding: model.Finding, place: Place, reading: Reading) -> None:
    """Add a mistake where a measurement is held to a number of another kind."""
    if number and finding.measure and not same_dimension(number.unit, finding.measure):
        what = f"'{number.name}' is in {number.unit}; '{finding.name}' is measured in {finding.measure}"
        reading.wrong(place, what, "unit")
