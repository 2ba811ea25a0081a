"""What a helper has shown, in words: for the helper, for the owner, and for paper."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from datetime import datetime

from triage.clock import Now, hhmm
from triage.guide.model import Guide
from triage.page.page import Block
from triage.practice.cards import AMOUNT, PAGE, RULE, SIGN, about, kind_of
from triage.practice.learner import Learner
from triage.practice.readiness import Readiness, Share, per_cent

NOT_A_LICENCE = (
    "Practice is no licence. It does not make anybody a vet or allow needle work. On the night the guide "
    "stays open, and who is in doubt phones."
)

TAKE_TIME = "It takes a hundred cases or so, and three a day are plenty. Old slips drop out of the count."

CALLED = {SIGN: "Danger signs", RULE: "Safety rules", AMOUNT: "Amounts", PAGE: "Pages of the guide"}
MOST_WEAK = 6


def shown_blocks(guide: Guide, learner: Learner, readiness: Readiness, now: Now) -> list[Block]:
    """Return what a helper has shown, when last, and whether the pass mark is met."""
    blocks = [Block("body", verdict(readiness))]
    blocks += [Block("step", line, "-") for line in readiness.wanting]
    blocks += [] if readiness.ready else [Block("quiet", TAKE_TIME)]
    if readiness.rounds:
        blocks += [Block("blank", ""), Block("label", "What counts")]
        blocks += [Block("body", line) for line in _counted(readiness, now)]
    blocks += [Block("blank", ""), Block("label", "What was met"), *_known(learner, guide)]
    weak = weak_spots(guide, learner)
    if weak:
        blocks += [Block("blank", ""), Block("label", "Weak spots")]
        blocks += [Block("step", line, "-") for line in weak]
    return [*blocks, Block("blank", ""), Block("quiet", NOT_A_LICENCE)]


def verdict(readiness: Readiness) -> str:
    """Return whether the pass mark is met, in a sentence."""
    if readiness.ready:
        return "Has met this holding's pass mark."
    return "Has not met this holding's pass mark yet. Still wanting:"


def mark_words(readiness: Readiness) -> str:
    """Return what is asked of a helper here, in a sentence."""
    mark = readiness.mark
    return (
        f"Asked here: {mark.danger} danger cases in a row with no safety miss in any case meanwhile, at most "
        f"{per_cent(mark.under)} of cases called less urgent than the guide calls them, and at most "
        f"{per_cent(mark.over)} more urgent."
    )


def when_last(readiness: Readiness, now: Now) -> str:
    """Return when a helper practised last."""
    return _when(readiness.rounds[-1].at, now) if readiness.rounds else "never"


def _counted(readiness: Readiness, now: Now) -> Iterator[str]:
    last = readiness.rounds[-1].at
    older = sum(each.edition != readiness.guide.front.edition for each in readiness.window)
    yield f"{len(readiness.rounds)} cases done, the last one {_when(last, now)}."
    if older:
        yield f"{older} of those that count were played by another edition of the guidance."
    yield f"Danger cases that count: {len(readiness.dangers)}."
    yield f"Safety misses in those and in all cases between them: {readiness.misses}."
    under, over = per_cent(readiness.mark.under), per_cent(readiness.mark.over)
    yield f"Called less urgent than the guide: {share_words(readiness.under)}, at most {under}."
    yield f"Called more urgent than the guide: {share_words(readiness.over)}, at most {over}."


def _when(at: datetime, now: Now) -> str:
    return f"on {at.astimezone(now.zone):%d %b %Y} at {hhmm(at, now)}"


def share_words(share: Share) -> str:
    """Return a share with the number of cases behind it."""
    return f"{share.some} of {share.of}" + (f" ({share.share:.1%})" if share.of else "")


def _known(learner: Learner, guide: Guide) -> list[Block]:
    met: Counter[str] = Counter(kind_of(card) for card in learner.kept)
    knew: Counter[str] = Counter(kind_of(card) for card, kept in learner.kept.items() if kept.knew)
    there = {SIGN: sum(map(len, guide.front.danger_signs.values())), RULE: len(guide.rules)}
    return [
        Block("body", _met(called, met[kind], knew[kind], there.get(kind))) for kind, called in CALLED.items()
    ]


def _met(called: str, met: int, knew: int, there: int | None) -> str:
    of = f" of {there}" if there else ""
    return f"{called}: {met}{of} met, {knew} of them known when last asked."


def weak_spots(guide: Guide, learner: Learner) -> tuple[str, ...]:
    """Return what was not known when it was last asked, the latest first, a few at most."""
    missed = [each for each in learner.kept.values() if not each.knew]
    weak = sorted(missed, key=lambda each: each.last, reverse=True)
    told = dict.fromkeys(words for each in weak if (words := card_words(guide, each.card)))
    return tuple(told)[:MOST_WEAK]


def card_words(guide: Guide, card: str) -> str:
    """Return what a card is about, in the guide's own words; empty where the guide has it no more."""
    from triage.facts import Facts
    from triage.page.words import Reader

    reader, name = Reader(guide, Facts(guide.values(), {})), about(card)
    kind = kind_of(card)
    if kind == SIGN:
        finding, _, choice = name.partition("/")
        asked = guide.findings.get(finding)
        return f"{asked.label}: {reader.choice(asked, choice)}" if asked and choice in asked.choices else ""
    if kind == RULE and name in guide.rules:
        return reader.fill(guide.rules[name].because)
    if kind == PAGE and name in guide.nodes:
        title = getattr(guide.nodes[name], "title", "")
        return reader.fill(title)
    if kind == AMOUNT:
        from triage.amounts import AMOUNTS

        return AMOUNTS[name].title if name in AMOUNTS else ""
    return ""
