"""A holding as the text of its file: each field with what it is for above it."""

from __future__ import annotations

from triage.holding.fields import FIELDS, text_of
from triage.holding.holding import Holding

HEAD = """\
# This holding. Change it here, or by `triage setup`. An empty value means that it is not kept.
# `triage setup --show` says what is wrong with it, if anything is.
# Setup writes this file anew. Lines of your own go to a file beside it, whose name ends in .before.
"""


def as_text(holding: Holding) -> str:
    """Return the text of a holding's file."""
    lines = [HEAD]
    for field in FIELDS:
        lines.append(f"# {field.ask} Like: {field.example}")
        lines.append(_people(holding) if field.name == "taught" else _line(holding, field.name))
    return "\n".join(lines)


def _line(holding: Holding, name: str) -> str:
    return f"{name}: {_quoted(text_of(holding, name))}\n"


def _people(holding: Holding) -> str:
    """Return who was taught what, a line for each: a name or a skill may hold any sign."""
    if not holding.taught:
        return 'taught: ""\n'
    return "\n".join(
        ["taught:", *(f"  {_quoted(who)}: {_quoted(what)}" for who, what in holding.taught.items()), ""]
    )


def _quoted(text: str) -> str:
    """Return a text quoted so that no sign in it can be taken for anything else (YAML 1.2, 7.3.1)."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    plain = "".join(sign if sign.isprintable() else f"\\U{ord(sign):08x}" for sign in escaped)
    return f'"{plain}"'
