"""A guide as a key: told apart by being itself, so that what is worked out from it is worked out once."""

from __future__ import annotations

from triage.guide.model import Guide


class Same:
    """One guide, and no other that says the same. It is held, so that its identity is not given away anew."""

    def __init__(self, guide: Guide) -> None:
        self.guide = guide

    def __hash__(self) -> int:
        return id(self.guide)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Same) and other.guide is self.guide
