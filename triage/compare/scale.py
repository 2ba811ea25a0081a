"""One scale of urgency for two guides, so that what each says of a lamb can be held against the other."""

from __future__ import annotations

from triage.guide.model import Guide


class Scale:
    """The urgencies of two guides in one order, the most urgent first."""

    def __init__(self, old: Guide, new: Guide) -> None:
        before = [each.name for each in old.front.urgencies]
        after = [each.name for each in new.front.urgencies]
        self.agrees = [name for name in before if name in after] == [name for name in after if name in before]
        """Whether both guides put the urgencies that they share in one order."""
        if self.agrees:
            names = _merged(before, after)
            at = {name: rank for rank, name in enumerate(names)}
            self.nobody = len(names)
            self.of = (at, at)
        else:  # then a place in the list is all that they have in common
            self.nobody = max(len(before), len(after))
            self.of = (
                {name: at for at, name in enumerate(before)},
                {name: at for at, name in enumerate(after)},
            )
        self.names = tuple({at: name for name, at in each.items()} for each in self.of)

    def rank(self, side: int, urgency: str) -> int:
        """Return how urgent: 0 is the most; no urgency ranks after all others."""
        return self.of[side].get(urgency, self.nobody)

    def name(self, side: int, rank: int) -> str:
        """Return the name that a guide has for a rank, empty where no urgency was come to."""
        return self.names[side].get(rank, "")


def _merged(before: list[str], after: list[str]) -> list[str]:
    """Return both lists as one that keeps the order of each."""
    names = list(before)
    at = 0
    for name in after:
        if name in names:
            at = names.index(name) + 1
        else:
            names.insert(at, name)
            at += 1
    return names
