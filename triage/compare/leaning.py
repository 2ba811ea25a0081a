"""Which changed statements a lamb meets on its way: the nodes that it comes to, and all that they lean on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from triage.review.statements import leans_of


class Leaning:
    """The changed statements that each statement of one guide is, or leans on."""

    def __init__(self, values: Mapping[str, object], changed: frozenset[str]) -> None:
        self._values = values
        self._changed = changed
        self._found: dict[str, frozenset[str]] = {}

    def met(self, nodes: Iterable[str]) -> Iterator[str]:
        """Yield the changed statements that a walk over these nodes meets."""
        for node in nodes:
            yield from self.under(f"node/{node}")

    def under(self, key: str) -> frozenset[str]:
        """Return the changed statements that a statement is, or leans on, through others as well."""
        if key not in self._found:
            self._found[key] = frozenset()  # what leans on itself ends here
            mine = {key} & self._changed
            for each in self._under(key):
                mine |= self.under(each)
            self._found[key] = frozenset(mine)
        return self._found[key]

    def _under(self, key: str) -> Iterator[str]:
        value = self._values.get(key)
        if value is not None and not key.startswith("source/"):
            yield from dict.fromkeys(leans_of(value))
