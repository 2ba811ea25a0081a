"""What the fields of one record ask of each other.

The limits stand beside the fields (`fields.py`) and are told to editors as JSON Schema. When a guide is
read they are looked up in `links.py` and `rule_links.py`, where what was written is at hand for a message.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Protocol


class Limit(Protocol):
    """One condition on which fields are written together."""

    def schema(self) -> dict[str, Any]:
        """Return the condition as JSON Schema."""


def _forbids(field: str, *others: str) -> dict[str, Any]:
    """Return what a field asks by being there: that others are not.

    Editors say "property not allowed" of this, and of a plain `not` only that a schema is not met.
    """
    return {"dependencies": {field: {"properties": dict.fromkeys(others, False)}}}


@dataclass(frozen=True)
class ExactlyOne:
    """One of these kinds, and one only; any of a kind's fields shows that it is there."""

    kinds: tuple[tuple[str, ...], ...]

    @staticmethod
    def of(*fields: str) -> ExactlyOne:
        """Return the limit where each kind is a single field."""
        return ExactlyOne(tuple((field,) for field in fields))

    def schema(self) -> dict[str, Any]:
        """Return the condition as JSON Schema."""
        fields = [field for kind in self.kinds for field in kind]
        says = f"Write one of {', '.join(fields)} here."
        some = {"anyOf": [{"required": [field], "errorMessage": says} for field in fields]}
        alone = [
            _forbids(field, *(other for other in fields if other not in kind))
            for kind in self.kinds
            for field in kind
        ]
        return {"allOf": [some, *alone]}


@dataclass(frozen=True)
class Needs:
    """A field that asks for another one beside it."""

    field: str
    other: str

    def schema(self) -> dict[str, Any]:
        """Return the condition as JSON Schema."""
        return {"dependencies": {self.field: [self.other]}}


@dataclass(frozen=True)
class NotBoth:
    """Two fields that do not go together."""

    field: str
    other: str

    def schema(self) -> dict[str, Any]:
        """Return the condition as JSON Schema."""
        return _forbids(self.field, self.other)


@dataclass(frozen=True)
class Lacks:
    """A field whose own map may not hold one that it could have elsewhere."""

    field: str
    inner: str

    def schema(self) -> dict[str, Any]:
        """Return the condition as JSON Schema."""
        return {"properties": {self.field: {"properties": {self.inner: False}}}}
