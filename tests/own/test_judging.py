"""What an own folder may do to the shipped guide, and what it may not."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.own.made import base_folder, judged_of, laid, own_folder, sign
from triage.check import prove
from triage.guide.find import knowledge_root
from triage.guide.model import Guide
from triage.guide.read import read_guide
from triage.own.closing import grave
from triage.review.statements import seals_of, statements_of

URGENCIES = "urgencies: [{urgency: vet-now, say: Phone the vet now, means: At once.}, {urgency: care-here, say: Care for it here, means: No vet now.}]"

REFUSED: dict[str, tuple[str, str, str]] = {
    # what is done: file, its text, the kind of the problem
    "a number off the safer side": ("numbers.yaml", "chill: {value: 36.5}", "own-number"),
    "a number beyond what is published": ("numbers.yaml", "chill: {value: 38}", "own-number"),
    "a number beyond it, with a source of one's own": (
        "numbers.yaml",
        "chill: {value: 42, published: {mine: 42}}",
        "own-number",
    ),
    "what is published, altered": ("numbers.yaml", "chill: {published: {a-paper: [20, 40]}}", "own-frame"),
    "the safer side turned": ("numbers.yaml", "chill: {safer: lower}", "own-frame"),
    "another unit": ("numbers.yaml", "chill: {unit: degF, value: 98.6}", "own-frame"),
    "a number's title": ("numbers.yaml", "chill: {title: Cold at or above}", "own-frame"),
    "a longer wait by its number": ("numbers.yaml", "pause: {value: 60}", "own-number"),
    "an end made milder": ("topics/second.yaml", "nodes: {leg-bad: {end: care-here}}", "own-less-urgent"),
    "an end made milder that walks call urgent anyway": (
        "topics/first.yaml",
        "nodes: {still-cold: {end: care-here}}",
        "own-page",
    ),
    "a branch sent to a milder end": (
        "topics/second.yaml",
        "nodes: {leg: {branches: [{is: bad, go: well}, {is: stiff, go: leg-stiff}, {is: fine, go: well}, {unsure: true, go: leg-bad}]}}",
        "own-less-urgent",
    ),
    "a branch sent to a page as urgent that says less": (
        "topics/second.yaml",
        "nodes: {leg: {branches: [{is: bad, go: leg-stiff}, {is: stiff, go: leg-stiff}, {is: fine, go: well}, {unsure: true, go: leg-bad}]}}",
        "own-page",
    ),
    "an act that is passed by": (
        "topics/first.yaml",
        "nodes: {feel: {branches: [{is: warm, go: well}, {is: cold, go: still-cold, at_least: vet-now}, {unsure: true, go: warm-it, at_least: vet-now}]}}",
        "own-page",
    ),
    "at_least taken away": (
        "topics/first.yaml",
        "nodes: {danger: {branches: [{is: limp, go: warmth}, {is: none, go: warmth}, {unsure: true, go: warmth, at_least: vet-now}]}}",
        "own-less-urgent",
    ),
    "an answer that no branch takes": (
        "topics/second.yaml",
        "nodes: {leg: {branches: [{is: bad, go: leg-bad}, {is: stiff, go: leg-stiff}, {unsure: true, go: leg-bad}]}}",
        "own-less-urgent",
    ),
    "a caution of a page": (
        "topics/second.yaml",
        "nodes: {leg-bad: {cautions: [Pull the leg.]}}",
        "own-page",
    ),
    "a caution of a how-to": ("how-to/measure-it.yaml", "cautions: [Be quick.]", "own-caution"),
    "a step of a how-to": ("how-to/measure-it.yaml", "steps: [Guess.]", "own-caution"),
    "a how-to by another name": ("how-to/measure-it.yaml", "how-to: measure-her", "reading"),
    "a law that allows more": ("laws.yaml", "here: {ring_until: long}", "own-caution"),
    "what a law says": ("laws.yaml", "here: {says: [Rings at any age.]}", "own-caution"),
    "a caution of the cupboard": ("cupboard.yaml", "towel: {cautions: [Any will do.]}", "own-caution"),
    "what a word means": ("glossary.yaml", "limp: {means: Bright and lively.}", "own-caution"),
    "a rule that never fires": (
        "rules.yaml",
        "no-feed-when-cold: {when: {temperature: {up_to: chill}, leg: {is: fine, }}}",
        "own-rule",
    ),
    "a rule narrowed": (
        "rules.yaml",
        "no-feed-when-cold: {when: {temperature: [{below: chill}]}}",
        "own-rule",
    ),
    "a rule about something else": ("rules.yaml", "no-feed-when-cold: {never: {tag: phone}}", "own-rule"),
    "must_say shortened": ("topics/second.yaml", "nodes: {leg-bad: {must_say: [pull]}}", "own-page"),
    "for narrowed": ("topics/second.yaml", "nodes: {leg-bad: {for: {leg: {is: bad}}}}", "own-page"),
    "a tag dropped": (
        "topics/first.yaml",
        "nodes: {well: {do: [{do: Feed it., tag: warm}]}}",
        "own-page",
    ),
    "a step dropped": (
        "topics/second.yaml",
        "nodes: {leg-bad: {do: [{do: Phone., tag: phone}]}}",
        "own-page",
    ),
    "the call put last": (
        "topics/second.yaml",
        "nodes: {leg-bad: {do: [{do: Hold the leg still., tag: warm}, {do: Phone., tag: phone}]}}",
        "own-page",
    ),
    "when to call": ("topics/first.yaml", "nodes: {well: {call_vet: Never.}}", "own-page"),
    "the title of a page": ("topics/second.yaml", "nodes: {leg-bad: {title: All is well}}", "own-page"),
    "a later look": ("topics/first.yaml", "nodes: {well: {look_again: long}}", "own-page"),
    "a longer wait": ("topics/first.yaml", "nodes: {warm-it: {wait: long}}", "own-page"),
    "more rounds": ("topics/first.yaml", "nodes: {warm-it: {at_most: 9}}", "own-page"),
    "what is asked again": ("topics/first.yaml", "nodes: {warm-it: {forget: [mouth]}}", "own-page"),
    "a page called surer": ("topics/first.yaml", "nodes: {well: {certainty: low}}", "own-page"),
    "answers that change places": (
        "findings/all.yaml",
        "danger: {choices: {limp: Not limp, none: Limp}}",
        "own-page",
    ),
    "another question": ("findings/all.yaml", "danger: {ask: Is it bright?}", "own-page"),
    "a narrower measurement": ("findings/all.yaml", "temperature: {plausible: [38, 43]}", "own-page"),
    "not sure is no answer": ("findings/all.yaml", "mouth: {never_unsure: Anybody can tell.}", "own-page"),
    "a danger sign lost": ("guide.yaml", "danger_signs: {danger: [none]}", "own-frame"),
    "urgencies in another order": (
        "guide.yaml",
        "urgencies: [{urgency: care-here, say: Care for it here, means: No vet now.}, {urgency: vet-now, say: Phone the vet now, means: At once.}]",
        "own-frame",
    ),
    "urgencies that say something else": (
        "guide.yaml",
        URGENCIES.replace("Phone the vet now", "No hurry"),
        "own-frame",
    ),
    "another way in": ("guide.yaml", "way_in: warmth", "own-frame"),
    "what is taken as known": ("guide.yaml", "unless_told: {danger: none}", "reading"),
    "a tag of another meaning": ("guide.yaml", "act_tags: {feed-by-mouth: A pat}", "own-frame"),
    "another edition": ("guide.yaml", "edition: '2099.1'", "own-frame"),
    "a later day of review": ("guide.yaml", "review_by: 2099-01-01", "own-frame"),
    "what is not covered": ("guide.yaml", "not_covered: [nothing]", "own-frame"),
    "what it is for": ("guide.yaml", "intended_use: For everything.", "own-frame"),
    "a topic left out": ("guide.yaml", "topics: [first]", "own-frame"),
    "answers that read alike": (
        "words.yaml",
        "words: [{shipped: Limp, here: Not limp}]",
        "own-frame",
    ),
    "answers that change words": (
        "words.yaml",
        "words: [{shipped: Limp, here: Not limp}, {shipped: Not limp, here: Limp}]",
        "own-frame",
    ),
    "urgencies that change words, in another language": (
        "words.yaml",
        "language: xx\nwords: [{shipped: Phone the vet now, here: Care for it here}]",
        "own-frame",
    ),
}

LONG = (
    "long: {title: A long time, value: 9, unit: h, published: {a-paper: 9}, safer: lower, certainty: high}\n"
)
MINE = "mine: {title: A farm diary, grade: D}\n"


@pytest.mark.parametrize("what", REFUSED)
def test_what_must_be_refused(tmp_path: Path, what: str) -> None:
    """Each way to make the shipped guide milder is refused by its kind, at a place in the own folder."""
    file, text, kind = REFUSED[what]
    more = {"sources.yaml": MINE} if "mine" in text else {"numbers.yaml": LONG} if "long}" in text else {}
    root, own = base_folder(tmp_path / "root"), own_folder(tmp_path / "own", {**more, file: f"{text}\n"})

    if kind == "reading":
        assert read_guide(root, own=own).guide is None
        return
    found = [each for each in judged_of(root, own) if each.rule == kind]

    assert found, judged_of(root, own)
    assert all(each.place.file.startswith("own/") for each in found)
    assert any(each.place.file == f"own/{file}" for each in found), found


def test_nothing_is_refused_that_is_not_there(tmp_path: Path) -> None:
    """An empty own folder changes nothing: the guide is equal, with the same seals, and nothing is wrong."""
    root, own = base_folder(tmp_path / "root"), own_folder(tmp_path / "own", {})

    base, whole = laid(root, own)

    assert base == whole
    assert seals_of(statements_of(base)) == seals_of(statements_of(whole))
    assert judged_of(root, own) == []
    assert grave(prove(base).problems) == []


ALLOWED: dict[str, dict[str, str]] = {
    "a caution more": {"topics/second.yaml": "nodes: {leg-bad: {cautions+: [Keep dogs away.]}}"},
    "a caution more of a how-to": {"how-to/measure-it.yaml": "cautions+: [Wash it.]"},
    "a step more": {"topics/second.yaml": "nodes: {leg-bad: {do+: [{do: Phone Ann too., tag: phone}]}}"},
    "an end made more urgent": {"topics/first.yaml": "nodes: {well: {end: vet-now}}"},
    "a branch made more urgent": {
        "topics/second.yaml": "nodes: {leg: {branches: [{is: bad, go: leg-bad}, {is: stiff, go: leg-stiff}, {is: fine, go: leg-bad}, {unsure: true, go: leg-bad}]}}"
    },
    "a branch that calls": {
        "topics/second.yaml": "nodes: {leg: {branches: [{is: bad, go: leg-bad}, {is: stiff, go: leg-stiff}, {is: fine, go: well, at_least: vet-now}, {unsure: true, go: leg-bad}]}}"
    },
    "a shorter wait": {"numbers.yaml": "pause: {value: 10, note: Nearer., published: {mine: [10, 20]}}"},
    "a sooner look": {
        "numbers.yaml": "soon: {title: Soon, value: 5, unit: min, published: {a-paper: 5}, safer: lower, certainty: high}",
        "topics/first.yaml": "nodes: {well: {look_again: soon}}",
    },
    "more that must be said": {"topics/second.yaml": "nodes: {leg-bad: {must_say+: [the leg]}}"},
    "another rule": {
        "rules.yaml": "no-feed-limp: {never: {tag: feed-by-mouth}, when: {temperature: {below: chill}}, because: It chokes., sources: [a-paper]}"
    },
    "more danger signs": {"guide.yaml": "danger_signs: {danger+: [none]}"},
    "an earlier day of review": {"guide.yaml": "review_by: 2027-01-01"},
    "a law of another place": {
        "laws.yaml": "there: {where: There, says: [No rings.], read: '2026-01-01', no_ring: true, sources: [a-paper], certainty: high}"
    },
    "how many towels": {"cupboard.yaml": "towel: {how_many: {least: 9}}"},
    "other words": {"words.yaml": "words: [{shipped: Warm it., here: Get some heat into it.}]"},
    "another language": {"words.yaml": "language: xx\nwords: [{shipped: Limp, here: Slapp}]"},
}


@pytest.mark.parametrize("what", ALLOWED)
def test_what_may_be_done(tmp_path: Path, what: str) -> None:
    """What is added or made safer is nobody's affair but the holding's."""
    files = {name: f"{text}\n" for name, text in ALLOWED[what].items()}
    if "mine" in str(files):
        files["sources.yaml"] = MINE
    if what == "a shorter wait":  # inside what the shipped guide names as published
        root = base_folder(tmp_path / "root", ("numbers.yaml", "published: {a-paper: 20}", "published: {a-paper: [5, 20]}"))  # fmt: skip
    else:
        root = base_folder(tmp_path / "root")

    assert judged_of(root, own_folder(tmp_path / "own", files)) == []


def test_a_topic_more(tmp_path: Path) -> None:
    """An own topic is reached by a choice more of a shipped question; shipped answers lead where they led."""
    root = base_folder(tmp_path / "root")
    files = {
        "guide.yaml": "topics+: [third]\n",
        "findings/second.yaml": "leg: {choices: {odd: Odd}}\n",
        "topics/second.yaml": "nodes: {leg: {branches+: [{is: odd, go: odd-leg}]}}\n",
        "topics/third.yaml": """\
topic: third
title: Odd legs
about: Ours.
nodes:
  odd-leg:
    end: vet-now
    title: An odd leg
    likely: It is odd.
    do: [{do: Phone., tag: phone}]
    cautions: [Do not pull it.]
    call_vet: Now.
    sources: [a-paper]
    certainty: high
""",
    }
    own = own_folder(tmp_path / "own", files)

    base, whole = laid(root, own)

    assert judged_of(root, own) == []
    assert grave(prove(whole).problems) == []
    assert tuple(whole.topics) == (*base.topics, "third")


SIGNED: dict[str, tuple[str, str, tuple[str, ...]]] = {
    "a number": ("numbers.yaml", "chill: {value: 36.5, note: Ours.}", ("number/chill",)),
    "a rule": ("rules.yaml", "no-feed-when-cold: {when: {temperature: [{below: chill}]}}", ("rule/no-feed-when-cold",)),
    "a caution": ("topics/second.yaml", "nodes: {leg-bad: {cautions: [Hold it.]}}", ("node/leg-bad",)),
    "an end": ("topics/second.yaml", "nodes: {leg-bad: {end: care-here}}", ("node/leg-bad", "node/leg")),
    "a how-to": ("how-to/measure-it.yaml", "cautions: [Be quick.]", ("how-to/measure-it",)),
}  # fmt: skip


@pytest.mark.parametrize("what", SIGNED)
def test_a_vet_lets_just_that_change_pass(tmp_path: Path, what: str) -> None:
    """A vet's signature over the changed statement lets it pass; another's does not, and a later byte voids it."""
    file, text, keys = SIGNED[what]
    root, own = base_folder(tmp_path / "root"), own_folder(tmp_path / "own", {file: f"{text}\n"})
    assert judged_of(root, own)

    sign(root, own, *keys, role="shepherd")
    assert judged_of(root, own)
    sitting = sign(root, own, *keys)
    assert judged_of(root, own) == []

    # Something else beside it is not covered.
    (own / "guide.yaml").write_text("edition: '2099'\n")
    (own / "laws.yaml").write_text("here: {says: [Rings at any age.]}\n")
    assert {each.rule for each in judged_of(root, own)} == {"own-frame", "own-caution"}
    (own / "guide.yaml").unlink()
    (own / "laws.yaml").unlink()

    # One letter more in what was signed.
    before = (own / file).read_text()
    later = {"36.5": "36.4", "below: chill": "unsure: true", "Hold it": "Hold it so", "care-here}": "care-here, title: Fine}", "quick": "quicker"}  # fmt: skip
    for old, new in later.items():
        (own / file).write_text(before.replace(old, new))
        if (own / file).read_text() != before:
            assert judged_of(root, own), new
    (own / file).write_text(before)
    assert judged_of(root, own) == []

    # A sitting changed by hand counts for nothing.
    sitting.write_text(sitting.read_text().replace("A. Name", "B. Name"))
    assert judged_of(root, own)


def test_a_signature_over_another_statement_is_none(tmp_path: Path) -> None:
    """Who signed something else has not signed this."""
    root = base_folder(tmp_path / "root")
    own = own_folder(tmp_path / "own", {"topics/second.yaml": "nodes: {leg-bad: {end: care-here}}\n"})

    sign(root, own, "node/leg", "node/leg-stiff", "number/chill", "guide/front")

    assert {each.rule for each in judged_of(root, own)} == {"own-less-urgent", "own-page"}


def test_nobody_can_sign_the_frame(tmp_path: Path) -> None:
    """What the proof goes by is not a vet's to sign away either."""
    root = base_folder(tmp_path / "root")
    own = own_folder(tmp_path / "own", {"guide.yaml": "danger_signs: {danger: [none]}\n"})

    sign(root, own, *statements_of(laid(root, own)[1]))

    assert [each.rule for each in judged_of(root, own)] == ["own-frame"]


def test_words_keep_what_a_page_must_say(tmp_path: Path) -> None:
    """Other words that turn a caution round fail the proof where the page has words that it must say."""
    from triage.guide.rewording import read_words, reworded

    root = base_folder(tmp_path / "root")
    own = own_folder(tmp_path / "own", {"words.yaml": "words: [{shipped: Do not pull the leg., here: Pull the leg.}]\n"})  # fmt: skip
    _, whole = laid(root, own)

    problems = grave(prove(reworded(whole, read_words(own)[0])).problems)

    assert [each.rule for each in problems] == ["must-say"]


def test_one_signed_way_covers_no_other(tmp_path: Path) -> None:
    """Two changes lead lambs from the same page to the same milder one: one is signed, and the other refused."""
    more = ("topics/first.yaml", "      - {is: warm, go: well}", "      - {is: warm, go: leg-bad}")
    root = base_folder(tmp_path / "root", more)
    leg = "leg: {branches: [{is: bad, go: well}, {is: stiff, go: leg-stiff}, {is: fine, go: well}, {unsure: true, go: leg-bad}]}"  # fmt: skip
    feel = "feel: {branches: [{is: warm, go: well}, {is: cold, go: warm-it, at_least: vet-now}, {unsure: true, go: warm-it, at_least: vet-now}]}"  # fmt: skip
    own = own_folder(tmp_path / "own", {"topics/second.yaml": f"nodes: {{{leg}}}\n"})
    sign(root, own, "node/leg")
    assert judged_of(root, own) == []

    own_folder(own, {"topics/first.yaml": f"nodes: {{{feel}}}\n"})

    found = judged_of(root, own)
    assert found
    assert {each.place.file for each in found} == {"own/topics/first.yaml"}


def test_the_shipped_guide_holds_its_plan_and_cupboard(guide: Guide, tmp_path: Path) -> None:
    """In the shipped guide too a caution, a line or a date of raising, a law and the cupboard may not be lost."""
    root = knowledge_root()
    assert isinstance(root, Path)
    duty = next(name for name, each in guide.duties.items() if each.cautions and each.until)
    law, item = next(iter(guide.laws)), next(n for n, each in guide.cupboard.items() if each.cautions)
    own = own_folder(
        tmp_path / "own",
        {
            "rearing.yaml": f"{duty}: {{cautions: [None.], do: [Nothing.], until: {guide.duties[duty].from_ or 'wean-age'}}}\n",
            "laws.yaml": f"{law}: {{says: [All is fine.]}}\n",
            "cupboard.yaml": f"{item}: {{cautions: [None.]}}\n",
        },
    )

    told = {each.place.file for each in judged_of(root, own) if each.rule == "own-caution"}

    assert told == {"own/rearing.yaml", "own/laws.yaml", "own/cupboard.yaml"}
