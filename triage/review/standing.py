"""How the guidance stands: who has reviewed it, and what has changed since."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from triage.guide.known import NEVER

if TYPE_CHECKING:  # read where there are any: most guides are opened without one
    from triage.review.sittings import Said, Sitting

UNREAD = ("source", "case", "deed")
"""Kinds of statements that are not counted: titles of other people's, and what practice plays with."""

How = Literal["signed", "changed", "never"]


@dataclass(frozen=True)
class Standing:
    """How one statement stands with vets, in a sentence."""

    how: How
    words: str
    objection: str = ""
    """What is objected to it as it now is, and by whom."""
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Review:
    """The seals of a guide as it is, and the sittings over it or over what it was."""

    seals: Mapping[str, str]
    sittings: tuple[Sitting, ...]
    """The oldest first."""

    @cached_property
    def counted(self) -> tuple[str, ...]:
        """The keys of the statements that a review is about."""
        return tuple(key for key in self.seals if key.partition("/")[0] not in UNREAD and key != "guide/farm")

    @cached_property
    def vets(self) -> tuple[Sitting, ...]:
        """The sittings of vets, the newest first."""
        return tuple(each for each in reversed(self.sittings) if each.is_vet)

    def of(self, key: str) -> Standing:
        """Return how a statement stands."""
        how, sitting = self._how(key)
        others = next((each for each in reversed(self.sittings) if self._signs(each, key)), None)
        objection = " ".join(self._told("objects", "objections", key))
        notes = tuple(self._told("notes", "notes", key))
        if sitting and how == "signed":
            words = f"Reviewed by {sitting.who}, on {sitting.on}."
        elif sitting:
            words = f"Changed since {sitting.who}, reviewed it on {sitting.on}."
        elif others:
            words = f"Read by {others.who}, on {others.on}; never reviewed by a vet."
        else:
            words = NEVER
        return Standing(how, words, objection, notes)

    def _signs(self, sitting: Sitting, key: str) -> bool:
        return sitting.signed.get(key) == self.seals[key]

    def _how(self, key: str) -> tuple[How, Sitting | None]:
        signed = next((each for each in self.vets if self._signs(each, key)), None)
        if signed:
            return "signed", signed
        once = next((each for each in self.vets if key in each.signed), None)
        return ("changed", once) if once else ("never", None)

    def _told(self, verb: str, which: Literal["objections", "notes"], key: str) -> Iterator[str]:
        """Yield what was said to a statement, unless who said it has signed it since then.

        What is said to a statement as it now is stands until it is signed as it now is; what was said to
        another wording is settled by a signature under any.
        """
        for at, sitting in enumerate(self.sittings):
            said: Said | None = getattr(sitting, which).get(key)
            if said is None:
                continue
            as_now = said.seal == self.seals[key]
            later = (each for each in self.sittings[at + 1 :] if each.who == sitting.who)
            if any(self._signs(each, key) if as_now else key in each.signed for each in later):
                continue
            before = "" if as_now else ", before it was changed"
            yield f"{sitting.who}, {verb} ({sitting.on}{before}): {said.says}"

    @cached_property
    def how(self) -> Mapping[str, How]:
        """How each statement that counts stands."""
        return {key: self._how(key)[0] for key in self.counted}

    @cached_property
    def words(self) -> str:
        """How the whole guide stands, in one sentence."""
        return self.over(self.counted)

    def over(self, keys: tuple[str, ...]) -> str:
        """Return how some statements stand together, in one sentence."""
        found = [self._how(key) for key in keys]
        sittings = [sitting for _, sitting in found if sitting]
        objected = len(self.objections.intersection(keys))
        parts = [f"{counted(objected)} objected to"] if objected else []
        if not sittings:
            return f"{'; '.join((NEVER.removesuffix('.'), *parts))}."
        last = max(sittings, key=lambda each: each.on)
        changed, never = (sum(how == which for how, _ in found) for which in ("changed", "never"))
        parts.insert(0, f"Reviewed {'in part ' if never else ''}by {last.who}, on {last.on}")
        if changed:
            parts.append(f"{counted(changed)} changed since")
        if never:
            parts.append(f"{counted(never)} never reviewed by a vet")
        return f"{'; '.join(parts)}."

    @cached_property
    def objections(self) -> frozenset[str]:
        """The keys of the statements to which somebody still objects."""
        said = {key for sitting in self.sittings for key in sitting.objections if key in self.seals}
        return frozenset(key for key in said if any(True for _ in self._told("", "objections", key)))


def counted(count: int) -> str:
    """Return so many statements, in words."""
    return f"{count:,} statement{'' if count == 1 else 's'}"
