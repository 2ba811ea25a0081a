"""What can be written down of a lamb between walks: each kind, and the short questions it is made of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class PartOf:
    """One question of a kind: a measurement, a choice, or words. Exactly one of the last three is set."""

    name: str
    ask: str
    measure: str = ""
    """The unit it is kept in."""
    finding: str = ""
    """The finding of the guide whose range a measurement must be in; without one, `plausible` holds."""
    plausible: tuple[float, float] = (0.0, 0.0)
    choices: Mapping[str, str] = field(default_factory=dict)
    shown: str = "{}"
    """How the answer stands in a line."""
    looks_at: str = ""
    """The finding of the guide that was looked at by answering this."""

    @property
    def words(self) -> bool:
        """Whether free words are taken."""
        return not self.measure and not self.choices


@dataclass(frozen=True)
class KindOf:
    """One kind of observation; `digit` is its key on a lamb's page, empty where another page leads to it."""

    name: str
    label: str
    digit: str
    parts: tuple[PartOf, ...]


_FED = {
    "first-milk": "First milk",
    "ewes-milk": "Ewe's milk",
    "milk": "Milk replacer",
    "electrolytes": "Electrolyte drink",
    "glucose": "Glucose by mouth, as a vet ordered",
    "other": "Something else",
}
_HOW_FED = {
    "all": "It sucked it all",
    "some": "It sucked some",
    "refused": "It refused",
    "tubed": "By stomach tube",
}
_DUNG = {
    "none": "None seen",
    "black": "Black and sticky, the first dung",
    "normal": "Formed or soft, yellow to brown",
    "loose": "Loose",
    "watery": "Watery",
    "bloody": "With blood",
}
_URINE = {"seen": "It passed urine", "not-seen": "None seen"}
_MANNER = {
    "bright": "Bright, up and about",
    "keen": "Sucks and asks for more",
    "quiet": "Quiet, but gets up",
    "dull": "Dull, gets up only when lifted",
    "limp": "Limp, or can't stand",
    "crying": "Cries and does not settle",
}

_ALL = (
    KindOf("temperature", "Temperature", "1", (
        PartOf("temperature", "What is its temperature?", "degC", "temperature"),
    )),
    KindOf("weight", "Weight", "2", (
        PartOf("weight", "What does it weigh?", "kg", "weight"),
    )),
    KindOf("feed", "A feed", "3", (
        PartOf("what", "What was it offered?", choices=_FED),
        PartOf("amount", "How much did it get? Type 0 if nothing.", "ml", plausible=(0.0, 2000.0)),
        PartOf("how", "How did it go down?", choices=_HOW_FED),
    )),
    KindOf("passed", "Dung and urine", "4", (
        PartOf("dung", "What is its dung like?", choices=_DUNG, shown="dung: {}", looks_at="dung"),
        PartOf("urine", "And urine?", choices=_URINE, shown="urine: {}", looks_at="passing"),
    )),
    KindOf("manner", "How it is", "5", (
        PartOf("manner", "How is it?", choices=_MANNER, looks_at="manner"),
    )),
    KindOf("treatment", "A treatment a vet ordered", "6", (
        PartOf("what", "What was it given, and how?"),
        PartOf("amount", "How much?"),
        PartOf("ordered", "Which vet ordered it?", shown="ordered by {}"),
    )),
    KindOf("note", "A note", "7", (
        PartOf("note", "What do you want to remember?"),
    )),
    KindOf("vet-said", "The vet said", "", (
        PartOf("who", "Who spoke for the practice?"),
        PartOf("said", "What did they say? Read it back to them first."),
    )),
)  # fmt: skip

KINDS: Mapping[str, KindOf] = {kind.name: kind for kind in _ALL}
"""Every kind by its name, in the order of their keys."""

DIGITS: Mapping[str, KindOf] = {kind.digit: kind for kind in _ALL if kind.digit}
"""The kinds that have a key on a lamb's page."""
