"""A check that has been made, as every report takes it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from triage.problems import Problem, errors

if TYPE_CHECKING:
    from triage.check.tally import Tally
    from triage.guide.model import Guide


@dataclass(frozen=True)
class Checked:
    """What was checked and what came of it; the edition and the rules are known of a readable guide only."""

    folder: str
    problems: tuple[Problem, ...]
    """Of the reading and of the proof together, in the order of their places."""
    tally: Tally | None = None
    edition: str | None = None
    own_rules: Mapping[str, str] = field(default_factory=dict)
    """The guide's own rules, each with its reason."""

    @classmethod
    def of(
        cls, folder: str, problems: Iterable[Problem], guide: Guide | None = None, tally: Tally | None = None
    ) -> Checked:
        """Return what came of checking a folder, whose guide may have been too broken to read."""
        told = tuple(sorted(set(problems)))
        if guide is None:
            return cls(folder, told)
        reasons = {rule.name: rule.because for rule in guide.rules.values()}
        return cls(folder, told, tally, guide.front.edition, reasons)

    @property
    def wrong(self) -> list[Problem]:
        """The problems that make the guide unfit to use."""
        return errors(self.problems)

    @property
    def sound(self) -> bool:
        """Whether the whole guide was proved, with nothing wrong."""
        return self.tally is not None and not self.wrong


def visible(text: str) -> str:
    """Return a text in which what does not print, such as a line's end, is written out as an escape.

    A file name or a text of a guide may hold anything; it must not end a line or steer a terminal.
    """
    return "".join(
        each if each.isprintable() else each.encode("unicode_escape").decode("ascii") for each in text
    )
