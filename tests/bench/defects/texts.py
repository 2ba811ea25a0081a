"""Damage to what pages say and do, to their urgency, and to their numbers."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from tests.bench.defects.damage import (
    Damaged,
    ends,
    milder,
    pages,
    put,
    steps,
    with_node,
    with_number,
    with_steps,
)
from triage.amounts import AMOUNTS
from triage.guide.model import PLACEHOLDER, Act, End, Guide, Step
from triage.units import UNITS, Quantity, same_dimension

SENTENCE = re.compile(r"(?<=[.?!])\s+")
NO = re.compile(r"\b(never|no|not|nothing|don't|without)\b ?", re.IGNORECASE)


def soften_an_end(guide: Guide) -> Iterator[Damaged]:
    """An end calls for a vet less urgently."""
    for node in ends(guide):
        if less := milder(guide, node.urgency):
            yield Damaged(f"{node.name}: {less}", with_node(guide, replace(node, urgency=less)))


def drop_a_caution(guide: Guide) -> Iterator[Damaged]:
    """A page loses one of its cautions."""
    for node in pages(guide):
        for at, text in enumerate(node.cautions):
            yield Damaged(
                f"{node.name}: {text}", with_node(guide, replace(node, cautions=put(node.cautions, at)))
            )


def turn_a_caution_round(guide: Guide) -> Iterator[Damaged]:
    """A caution loses its first word of warning: never, no, not."""
    for node in pages(guide):
        for at, text in enumerate(node.cautions):
            if NO.search(text):
                turned = put(node.cautions, at, NO.sub("", text, count=1))
                yield Damaged(f"{node.name}: {text}", with_node(guide, replace(node, cautions=turned)))


def drop_a_vet_line(guide: Guide) -> Iterator[Damaged]:
    """An end no longer says when to call a vet."""
    for node in ends(guide):
        yield Damaged(node.name, with_node(guide, replace(node, call_vet="")))


def drop_the_call_itself(guide: Guide) -> Iterator[Damaged]:
    """The line about the vet loses its first sentence, which says when to phone."""
    for node in ends(guide):
        rest = SENTENCE.split(node.call_vet, maxsplit=1)[1:]
        if rest:
            yield Damaged(node.name, with_node(guide, replace(node, call_vet=rest[0])))


def drop_an_act_tag(guide: Guide) -> Iterator[Damaged]:
    """A page hides from the rules what its only such step does to the lamb; it counts as a mere look."""
    spoken_of = {
        tag
        for rule in guide.rules.values()
        for trait in (rule.never, rule.always, rule.on)
        for tag in (trait.tag if trait else ())
    }
    for node in pages(guide):
        tags = [tag for step in steps(node) for tag in step.tag]
        for at, step in enumerate(steps(node)):
            for tag in step.tag:
                if tag in spoken_of and tags.count(tag) == 1:
                    left = tuple(each for each in step.tag if each != tag) or ("check",)
                    turned = put(steps(node), at, replace(step, tag=left))
                    yield Damaged(f"{node.name}: {tag} of {step.do}", with_steps(guide, node, turned))


def drop_a_step(guide: Guide) -> Iterator[Damaged]:
    """A page loses a step that phones."""
    for node in pages(guide):
        for at, step in enumerate(steps(node)):
            if "phone" in step.tag and isinstance(node, End) and node.urgency == guide.top:
                yield Damaged(f"{node.name}: {step.do}", with_steps(guide, node, put(steps(node), at)))


def feed_where_nothing_goes_in(guide: Guide) -> Iterator[Damaged]:
    """A page that stops all feeds gets a feed."""
    for node in pages(guide):
        if any("no-mouth" in step.tag for step in steps(node)):
            for tag in ("feed-by-mouth", "tube-feed"):
                fed = Step("Give it a little warm milk.", (tag,))
                yield Damaged(f"{node.name}: {tag}", with_steps(guide, node, put(steps(node), 0, fed)))


def feed_or_warm_before_the_vet(guide: Guide) -> Iterator[Damaged]:
    """A page that calls the vet now, and neither feeds nor warms, does one of both."""
    for node in ends(guide):
        tags = {tag for step in node.do for tag in step.tag}
        if node.urgency != guide.top or tags & {"feed-by-mouth", "tube-feed", "warm"}:
            continue
        for tag in ("feed-by-mouth", "tube-feed", "vet-injection"):
            added = Step("Do this while you wait.", (tag,))
            yield Damaged(
                f"{node.name}: {tag}", with_steps(guide, node, put(node.do, len(node.do) - 1, added))
            )


def name_another_sum(guide: Guide) -> Iterator[Damaged]:
    """A page that gives something names another sum: another lamb's milk in this lamb's bottle."""
    given = ("first-milk", "milk-feed", "small-first-feed", "electrolyte-dose", "glucose-dose")
    for node in pages(guide):
        for at, step in enumerate(steps(node)):
            for name in PLACEHOLDER.findall(step.do):
                for other in given if name in given else ():
                    if other != name and name in AMOUNTS:
                        text = step.do.replace(f"{{{name}}}", f"{{{other}}}")
                        turned = put(steps(node), at, replace(step, do=text))
                        yield Damaged(f"{node.name}: {name} as {other}", with_steps(guide, node, turned))


def type_a_figure(guide: Guide) -> Iterator[Damaged]:
    """A number in a text is typed in place of its name."""
    for node in pages(guide):
        for at, step in enumerate(steps(node)):
            for name in PLACEHOLDER.findall(step.do):
                if name in guide.numbers:
                    number = guide.numbers[name]
                    text = step.do.replace(f"{{{name}}}", f"{number.value:g} {number.unit}")
                    turned = put(steps(node), at, replace(step, do=text))
                    yield Damaged(f"{node.name}: {name}", with_steps(guide, node, turned))


def wait_longer(guide: Guide) -> Iterator[Damaged]:
    """An act waits longer, or an end looks again later."""
    times = [each for each in guide.numbers.values() if same_dimension(each.unit, "min")]
    for node in pages(guide):
        name = node.wait if isinstance(node, Act) else node.look_again
        for other in times if name else ():
            now = guide.numbers[name].quantity
            if other.quantity.to("min").value > now.to("min").value:
                later = replace(node, wait=other.name) if isinstance(node, Act) else node
                later = replace(node, look_again=other.name) if isinstance(node, End) else later
                yield Damaged(f"{node.name}: {name} to {other.name}", with_node(guide, later))


def never_look_again(guide: Guide) -> Iterator[Damaged]:
    """An end that keeps the lamb at home does not say when to look again."""
    for node in ends(guide):
        if node.look_again:
            yield Damaged(node.name, with_node(guide, replace(node, look_again="")))


def move_a_number(guide: Guide) -> Iterator[Damaged]:
    """A number is changed by a tenth, by half, or by a slip of the point."""
    for number in guide.numbers.values():
        for by in (0.1, 0.5, 0.9, 1.1, 2.0, 10.0):
            moved = replace(number, value=round(number.value * by, 6))
            if moved.value != number.value:
                yield Damaged(f"{number.name}: {moved.value:g}", with_number(guide, moved))


def change_a_unit(guide: Guide) -> Iterator[Damaged]:
    """A number is in another unit of the same kind, with the same figure."""
    for number in guide.numbers.values():
        for unit in UNITS:
            if unit != number.unit and same_dimension(unit, number.unit):
                as_now = Quantity(number.value, unit).to(number.unit).value
                if abs(as_now - number.value) > 1e-9:
                    yield Damaged(f"{number.name}: {unit}", with_number(guide, replace(number, unit=unit)))


def turn_the_safer_side(guide: Guide) -> Iterator[Damaged]:
    """The other side of a number is called the safer one."""
    for number in guide.numbers.values():
        side = "lower" if number.safer == "higher" else "higher"
        yield Damaged(number.name, with_number(guide, replace(number, safer=side)))


def break_a_source(guide: Guide) -> Iterator[Damaged]:
    """A page names no source any more, or weaker ones are called strong."""
    for node in pages(guide):
        if isinstance(node, End):
            yield Damaged(f"{node.name}: none", with_node(guide, replace(node, sources=())))
        if node.certainty != "high":
            weak = replace(node, sources=("common-practice",), certainty="high")
            yield Damaged(f"{node.name}: called high", with_node(guide, weak))


def weaken_a_number(guide: Guide) -> Iterator[Damaged]:
    """A number rests on memory alone and does not say so."""
    for number in guide.numbers.values():
        if set(number.published) != {"from-memory"}:
            low_high = (number.value, number.value)
            yield Damaged(
                number.name, with_number(guide, replace(number, published={"from-memory": low_high}))
            )


def leave_a_number_unused(guide: Guide) -> Iterator[Damaged]:
    """A number is there twice, and nothing uses the copy."""
    for number in guide.numbers.values():
        copy = replace(number, name=f"{number.name}-copy")
        yield Damaged(number.name, with_number(guide, copy))


def write_long_and_vague(guide: Guide) -> Iterator[Damaged]:
    """A step becomes a long and vague sentence."""
    vague = (
        "Monitor the lamb closely and at regular intervals for any signs of deterioration whatsoever "
        "and intervene as needed according to your own good judgement"
    )
    for node in pages(guide):
        turned = put(steps(node), 0, replace(steps(node)[0], do=vague))
        yield Damaged(node.name, with_steps(guide, node, turned))


def crowd_a_page(guide: Guide) -> Iterator[Damaged]:
    """A page gets more steps than a tired reader can take in."""
    for node in pages(guide):
        more = tuple(Step("Look at it again.", ("check",)) for _ in range(4))
        crowded = (*steps(node), *more, *more[: 7 - len(steps(node))])
        yield Damaged(node.name, with_steps(guide, node, crowded))
