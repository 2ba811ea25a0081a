"""The colours of the book: every text stands at least 7:1 against all that it is set on."""

from __future__ import annotations

LIGHT = {
    "page": "#fbfaf6",
    "lit": "#f1ecdb",
    "ink": "#1d1c19",
    "quiet": "#45423a",
    "link": "#17493b",
    "edge": "#7d786b",
    "soft": "#dbd6c8",
    "now": "#1d1c19",
    "now-ink": "#fbfaf6",
}
DARK = {
    "page": "#171613",
    "lit": "#2a2822",
    "ink": "#efebe1",
    "quiet": "#cbc6b9",
    "link": "#b5d9c8",
    "edge": "#8f897a",
    "soft": "#3d3a33",
    "now": "#efebe1",
    "now-ink": "#171613",
}
PAPER = {
    "page": "#ffffff",
    "lit": "#ffffff",
    "ink": "#000000",
    "quiet": "#000000",
    "link": "#000000",
    "edge": "#000000",
    "soft": "#777777",
    "now": "#000000",
    "now-ink": "#ffffff",
}
"""Each colour by what it is for: `edge` is the rim of what can be touched, `soft` parts things."""

TEXTS = (
    *((ink, ground) for ink in ("ink", "quiet", "link") for ground in ("page", "lit")),
    ("now-ink", "now"),
)
"""Which colour of a text stands on which ground."""

RIMS = tuple(("edge", ground) for ground in ("page", "lit"))
"""What shows the bounds of a target, which needs 3:1."""


def variables(colours: dict[str, str]) -> str:
    """Return colours as properties of a style sheet."""
    return "".join(f"--{name}:{value};" for name, value in colours.items())
