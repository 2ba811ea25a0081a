"""What is done in raising a lamb, and what laws say of it, in short."""

from __future__ import annotations

from triage.book.lambs import lamb_words
from triage.book.marks import labelled, listed, para, part, tag
from triage.book.words import Words
from triage.guide.model_rearing import Duty
from triage.page.page import CERTAINTY_WORDS
from triage.paper.html import safe

EVENTS = {"weaned": "it is weaned", "weighed": "it is weighed"}
LEAD = (
    "This is for a lamb that is well. For one that is not, begin at the danger signs. "
    "The program dates all of this for one lamb."
)
CHECK = "Laws move. Check your own before you act, and ask your vet."


def raising_part(words: Words) -> str:
    """Return the duties, in the guide's own order."""
    duties = "".join(_duty(words, duty) for duty in words.guide.duties.values())
    return part("raising", words.places.number("raising"), "Raising a lamb", para(LEAD) + duties)


def _duty(words: Words, duty: Duty) -> str:
    behind = f"{CERTAINTY_WORDS.get(duty.certainty, '')} Sources: {words.sources(duty.sources)}."
    inner = (
        tag("h3", words.plain(duty.title))
        + labelled("When:", _when(words, duty))
        + labelled("For:", lamb_words(words, duty.for_))
        + listed(map(words.fill, duty.do))
        + (listed(map(words.fill, duty.cautions), "care") if duty.cautions else "")
        + labelled("Why:", words.fill(duty.why) if duty.why else "")
        + (para("The law of your place limits this.") if duty.law else "")
        + para(behind, "behind")
        + words.standing(f"duty/{duty.name}")
    )
    return f'<section id="duty-{duty.name}" class="short">{inner}</section>\n'


def _when(words: Words, duty: Duty) -> str:
    if duty.from_event:
        begin = f"Once {EVENTS[duty.from_event]}"
    else:
        begin = f"From {words.number(duty.from_)} old" if duty.from_ else "From birth"
    every = f", every {words.number(duty.every)}" if duty.every else ""
    until = f", until {words.number(duty.until)} old" if duty.until else ""
    event = f", until {EVENTS[duty.until_event]}" if duty.until_event else ""
    return f"{begin}{every}{until}{event}."


def law_part(words: Words) -> str:
    """Return what laws say, with the day on which each was read."""
    laws = "".join(
        f'<section id="law-{law.name}" class="short">'
        + tag("h3", words.plain(law.where))
        + listed(map(words.fill, law.says))
        + para(f"As read on {safe(law.read)}. Sources: {words.sources(law.sources)}.", "behind")
        + words.standing(f"law/{law.name}")
        + "</section>\n"
        for law in words.guide.laws.values()
    )
    return part("laws", words.places.number("laws"), "Rings and docking: what laws say", para(CHECK) + laws)
