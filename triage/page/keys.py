"""Every key, declared once: both faces, the help line and the prompt come from this table."""

from __future__ import annotations

from typing import NamedTuple, get_args

from triage.page.page import Kind


class Key(NamedTuple):
    """A key, what it is called in code, a word for the key line, and where it works."""

    key: str
    name: str
    word: str
    kinds: tuple[Kind, ...] = get_args(Kind)
    in_view: bool = True
    """Whether the key line shows it; the others stand on the page that `?` opens."""


_WALK: tuple[Kind, ...] = ("ask", "act", "end")
_REAL: tuple[Kind, ...] = (*_WALK, "side", "lambs", "lamb", "form")
"""Pages about animals that there are."""

KEYS = (
    Key("d", "done", "done", ("act", "round")),
    Key("b", "back", "back"),
    Key("g", "go-on", "go on", ("lamb",)),
    Key("f", "afresh", "look afresh", ("lamb",)),
    Key("k", "looked", "look done", ("lamb",)),
    Key("c", "card", "its card", ("lamb",)),
    Key("c", "contents", "contents", ("read",)),
    Key("p", "plan", "its plan", ("lamb",)),
    Key("x", "close", "end its care", ("lamb",)),
    Key("?", "how", "how and why", (*_WALK, "debrief")),
    Key("v", "vet", "vet", _REAL),
    Key("w", "working", "working", ("act", "end", "debrief")),
    Key("a", "answers", "answers", (*_WALK, "debrief")),
    Key("l", "lamb", "lamb", _WALK),
    Key("o", "lambs", "others", (*_WALK, "side", "lamb", "form")),
    Key("h", "holding", "this holding", ("lambs",)),
    Key("u", "units", "other units", tuple(kind for kind in get_args(Kind) if kind != "read"), in_view=False),
    Key("u", "units", "other units", ("read",)),
    Key("t", "light", "another light, on the full screen", in_view=False),
    Key("q", "leave", "leave"),
)


def keys_for(kind: Kind, in_view: bool = False) -> tuple[Key, ...]:
    """Return the keys that work on a kind of page; `in_view` keeps those of the key line."""
    return tuple(key for key in KEYS if kind in key.kinds and (key.in_view or not in_view))


def named(key: str, kind: Kind) -> str:
    """Return what a key does on a kind of page, or an empty text: a wrong key does no harm."""
    return next((each.name for each in keys_for(kind) if each.key == key), "")
