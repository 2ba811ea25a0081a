"""What is known of a lamb as one whole number, so that two lambs are compared and looked up at once.

Each finding has some bits of its own: nought where nothing is known of it, else its answer's place and one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

Known = int
"""What is known: the answers to all findings, packed."""


class Packing:
    """Where the bits of each finding are, the urgency of the walk first."""

    def __init__(self, answers: Iterable[int]) -> None:
        self._offsets: list[int] = []
        self._masks: list[int] = []
        offset = 0
        for count in answers:
            width = count.bit_length()
            self._offsets.append(offset)
            self._masks.append(((1 << width) - 1) << offset)
            offset += width
        self.urgent = self._masks[0]
        """The bits of the urgency, which stand lowest."""

    def mask(self, finding: int) -> int:
        """Return the bits that belong to a finding."""
        return self._masks[finding]

    def bits(self, finding: int, answer: int) -> Known:
        """Return one answer, packed."""
        return (answer + 1) << self._offsets[finding]

    def answer(self, known: Known, finding: int) -> int | None:
        """Return the answer to a finding among what is known, or None."""
        held = (known & self._masks[finding]) >> self._offsets[finding]
        return held - 1 if held else None

    def known_of(self, known: Known) -> Iterator[int]:
        """Yield the findings of which something is known."""
        return (finding for finding, mask in enumerate(self._masks) if known & mask)
