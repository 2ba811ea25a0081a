"""The file of a holding: plain YAML that a person can edit; a wrong line never costs the right ones."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from triage.guide.text import Fields, Text, read_text
from triage.holding.fields import BY_NAME, FIELDS, HoldingField, text_of, with_text
from triage.holding.holding import HeldRead, Holding
from triage.problems import Place, Problem, nearest
from triage.whole_file import write_whole

BIGGEST = 100_000
HEAD = """\
# This holding. Change it here, or by `triage setup`. An empty value means that it is not kept.
# `triage setup --show` says what is wrong with it, if anything is.
"""


def read_holding(path: Path) -> HeldRead:
    """Read a holding's file. A missing one is an empty holding; never raises for what is there."""
    try:
        if not path.exists():
            return HeldRead(Holding())
        if not path.is_file():
            return _unreadable(path, "this is not a file")
        with path.open("rb") as file:
            raw = file.read(BIGGEST + 1)
        if len(raw) > BIGGEST:
            return _unreadable(path, f"it is longer than {BIGGEST:,} bytes")
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return _unreadable(path, "it is not UTF-8 text; save it as UTF-8")
    except OSError as error:
        return _unreadable(path, f"it can't be read: {error.strerror or error}")
    if not _says_anything(text):
        return HeldRead(Holding())
    problems: list[Problem] = []
    written = read_text(text, str(path), problems)
    holding = _fill(written, problems) if written else Holding()
    return HeldRead(holding, tuple(problems))


def _says_anything(text: str) -> bool:
    return any(line.strip() and not line.lstrip().startswith("#") for line in text.splitlines())


def _unreadable(path: Path, why: str) -> HeldRead:
    return HeldRead(Holding(), (Problem(Place(str(path)), why, "unreadable"),))


def _fill(written: Fields, problems: list[Problem]) -> Holding:
    holding = Holding()
    for name, value in written.fields.items():
        if name not in BY_NAME:
            what = f"there is no field '{name}'{nearest(name, BY_NAME)}"
            problems.append(Problem(written.keys[name], what, "no-such-name"))
            continue
        text = _text(BY_NAME[name], value)
        if text == "":
            continue
        came = with_text(holding, name, text, "metric") if text else "this should be one value"
        if isinstance(came, str):
            problems.append(Problem(value.place, f"{name}: {came}", "value"))
        else:
            holding = came
    return holding


def _text(field: HoldingField, value: Any) -> str | None:
    """Return a value as it would be typed; a map of people too. None for any other shape."""
    if isinstance(value, Text):
        return value.text.strip()
    if field.name == "taught" and isinstance(value, Fields):
        pairs = [(who, what) for who, what in value.fields.items() if isinstance(what, Text)]
        if len(pairs) == len(value.fields):
            return "; ".join(f"{who}: {what.text}" for who, what in pairs)
    return None


def as_text(holding: Holding) -> str:
    """Return a holding as the text of its file, each field with what it is for above it."""
    lines = [HEAD]
    for field in FIELDS:
        lines.append(f"# {field.ask} Like: {field.example}")
        lines.append(f"{field.name}: {_quoted(text_of(holding, field.name))}\n")
    return "\n".join(lines)


def _quoted(text: str) -> str:
    """Return a text quoted so that no sign in it can be taken for anything else (YAML 1.2, 7.3.1)."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    plain = "".join(sign if sign.isprintable() else f"\\U{ord(sign):08x}" for sign in escaped)
    return f'"{plain}"'


def write_holding(holding: Holding, path: Path) -> str:
    """Write a holding whole or not at all. Returns what went wrong as a sentence, or an empty text."""
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        write_whole(as_text(holding), path)
        path.chmod(0o600)
    except OSError as error:
        return f"It could not be written to {path}: {error.strerror or error}."
    return ""
