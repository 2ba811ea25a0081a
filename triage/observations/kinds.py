"""What can be written down of a lamb between walks: each kind, and the short questions it is made of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from triage.guide.model import Guide


@dataclass(frozen=True)
class PartOf:
    """One question of a kind: a measurement, a choice, or words."""

    name: str
    ask: str
    measure: str = ""
    """The unit it is kept in."""
    finding: str = ""
    """The finding of the guide whose range a measurement must be in, or whose choices come first."""
    plausible: tuple[float, float] = (0.0, 0.0)
    """The range of a measurement that no finding is about."""
    choices: Mapping[str, str] = field(default_factory=dict)
    looks_at: str = ""
    """The finding of the guide that was looked at by answering this."""

    @property
    def words(self) -> bool:
        """Whether free words are taken."""
        return not self.measure and not self.choices

    def under(self, guide: Guide) -> PartOf:
        """Return this part with what its finding says; a guide without the finding takes words."""
        if not self.finding:
            return self
        finding = guide.findings.get(self.finding)
        if finding is None or bool(finding.measure) != bool(self.measure):
            return replace(self, measure="", choices={})
        if finding.measure:
            return replace(self, measure=finding.measure)
        return replace(self, choices={**finding.choices, **self.choices})


@dataclass(frozen=True)
class KindOf:
    """One kind of observation; `digit` is its key on a lamb's page, empty where another page leads to it."""

    name: str
    label: str
    digit: str
    line: str
    """How it reads in a line, each part by its name."""
    parts: tuple[PartOf, ...]


UNDECIDED = "undecided"
"""The answer that is none, to what a raising plan asks."""

_FED = {
    "first-milk": "First milk",
    "ewes-milk": "Ewe's milk",
    "milk": "Milk replacer",
    "electrolytes": "Electrolyte drink",
    "glucose": "Glucose by mouth, as a vet ordered",
    "other": "Something else",
}
_HOW_FED = {
    "all": "Sucked it all",
    "some": "Sucked some",
    "refused": "Refused it",
    "tubed": "By stomach tube",
}
_NO_DUNG = {"none": "None seen"}
"""Added behind the guide's own choices, so that these keep the keys that they have in a walk."""

_URINE = {"seen": "Seen", "not-seen": "None seen"}
_MANNER = {
    "bright": "Bright, up and about",
    "keen": "Sucks and asks for more",
    "quiet": "Quiet, but gets up",
    "dull": "Dull, gets up only when lifted",
    "limp": "Limp, or can't stand",
    "crying": "Cries and does not settle",
    "other": "Something else, told in a note",
}

_WEANED = {"at-once": "All milk stopped at once", "slowly": "Feed by feed"}
_NOT_YET = {UNDECIDED: "Not decided yet"}
_UNKNOWN = {UNDECIDED: "Not known"}

_TREATED = "Treatment: {what}, {amount}, ordered by {ordered}"

_ALL = (
    KindOf("temperature", "Temperature", "1", "Temperature: {temperature}", (
        PartOf("temperature", "What is its temperature?", "degC", "temperature"),
    )),
    KindOf("weight", "Weight", "2", "Weight: {weight}", (
        PartOf("weight", "What does it weigh?", "kg", "weight"),
    )),
    KindOf("feed", "A feed", "3", "Feed: {amount} {what}, {how}", (
        PartOf("what", "What was it offered?", choices=_FED),
        PartOf("amount", "How much did it get? Type 0 if nothing.", "ml", plausible=(0.0, 2000.0)),
        PartOf("how", "How did it go down?", choices=_HOW_FED),
    )),
    # Urine stands first in the line: the words for dung are long, and a short line cuts its end.
    KindOf("passed", "Dung and urine", "4", "Urine: {urine}. Dung: {dung}", (
        PartOf("dung", "What is its dung like?", finding="dung", choices=_NO_DUNG, looks_at="dung"),
        PartOf("urine", "And urine?", choices=_URINE, looks_at="passing"),
    )),
    KindOf("manner", "How it is", "5", "How it is: {manner}", (
        PartOf("manner", "How is it?", choices=_MANNER, looks_at="manner"),
    )),
    KindOf("treatment", "A treatment a vet ordered", "6", _TREATED, (
        PartOf("what", "What was it given, and how?"),
        PartOf("amount", "How much?"),
        PartOf("ordered", "Which vet ordered it?"),
    )),
    KindOf("note", "A note", "7", "Note: {note}", (
        PartOf("note", "What do you want to remember?"),
    )),
    KindOf("eaten", "Dry feed eaten", "8", "Dry feed eaten in a day: {eaten}", (
        PartOf("eaten", "How much dry feed did it eat in the last day?", "g", plausible=(0.0, 3000.0)),
    )),
    KindOf("raising", "How it is to be raised", "9", "To be kept as: {kept}. Tail: {tail}. Mother: {dam}", (
        PartOf("kept", "What do you mean to keep it as?", finding="keep-as", choices=_NOT_YET),
        PartOf("tail", "Do you mean to dock its tail?", finding="tail", choices=_NOT_YET),
        PartOf("dam", "Was its mother vaccinated before lambing?", finding="dam-vaccine", choices=_UNKNOWN),
    )),
    KindOf("weaned", "Weaned", "", "Weaned: {how}", (
        PartOf("how", "It has had its last milk. How was it done?", choices=_WEANED),
    )),
    KindOf("vet-said", "The vet said", "", "The vet said: {who}, {said}", (
        PartOf("who", "Who spoke for the practice?"),
        PartOf("said", "What did they say? Read it back to them first."),
    )),
)  # fmt: skip

KINDS: Mapping[str, KindOf] = {kind.name: kind for kind in _ALL}
"""Every kind by its name, in the order of their keys."""

DIGITS: Mapping[str, KindOf] = {kind.digit: kind for kind in _ALL if kind.digit}
"""The kinds that have a key on a lamb's page."""
