"""Plain ASCII for terminals and locales that have no more."""

from __future__ import annotations

_PLAIN = {"°": "", "\u2019": "'", "\u2018": "'", "\u201c": '"', "\u201d": '"', "\u2013": "-", "\u2014": "-"}
_TABLE = str.maketrans(_PLAIN)


def to_ascii(text: str) -> str:
    """Return a text with each character in ASCII: `37 °C` is `37 C`; what has no twin becomes `?`."""
    import unicodedata

    plain = unicodedata.normalize("NFKD", text.translate(_TABLE))
    kept = "".join(each for each in plain if not unicodedata.combining(each))
    return kept.encode("ascii", "replace").decode("ascii")


def can_show(encoding: str | None) -> bool:
    """Whether an output encoding can show the degree sign, the one sign beyond ASCII used here."""
    try:
        "°".encode(encoding or "ascii")
    except (LookupError, UnicodeEncodeError):
        return False
    return True
