"""A file of other words to begin with: every text of the guide, each with itself as what stands in its place.

A pair of which nothing was changed changes nothing, so the file can be read from its first day on, and a
translator types over one line after the other.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator

from triage.guide.fitting import WORDS
from triage.guide.model import Guide
from triage.guide.rewording import HELD, texts_of_value

FILE = WORDS

_HEAD = """\
# Other words for the texts of this guide, text for text.
# Type over what stands behind 'here:', between the quotes, and leave 'shipped:' as it is.
# A text that is still the same on both lines is simply shown as it is, so this can be put to use half done.
# Leave none empty. Write \\" for a quote inside a text. What stands in {braces} is a number or a sum: it must
# stand in your text too, as it is, as often as it did. `triage check` says where one is missing.
"""


def words_text(guide: Guide, language: str = "") -> str:
    """Return the file for a guide; `language` is what its words will be in, where that is another one."""
    lines = [_HEAD, *([f"language: {quoted(language)}"] if language else []), "words:"]
    for heading, texts in _parts(guide):
        lines.append(f"  # {heading}")
        for text in texts:
            lines += [f"  - shipped: {quoted(text)}", f"    here: {quoted(text)}"]
    return "\n".join((*lines, ""))


def _parts(guide: Guide) -> Iterator[tuple[str, list[str]]]:
    """Yield each part of a guide that has texts of its own, by its name, and those not met before."""
    met: set[str] = set()
    for heading, value in _values(guide):
        texts = list(_new(texts_of_value(value), met))
        if texts:
            yield heading, texts


def _values(guide: Guide) -> Iterator[tuple[str, object]]:
    yield "the first page", guide.front
    for held in HELD:
        for name, value in getattr(guide, held).items():
            yield f"{held.replace('_', '-')}: {name}", value


def _new(texts: Iterable[str], met: set[str]) -> Iterator[str]:
    for text in texts:
        if text not in met:
            met.add(text)
            yield text


def quoted(text: str) -> str:
    """Return a text in double quotes, as YAML reads it back letter for letter."""
    return re.sub(
        r"[\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff]", _escaped, json.dumps(text, ensure_ascii=False)
    )


def _escaped(sign: re.Match[str]) -> str:
    """A sign that YAML takes for a line's end, or refuses, by its number."""
    return f"\\u{ord(sign[0]):04x}"
