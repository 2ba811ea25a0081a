"""Laying a person's own files over those of a guide, before either becomes a value.

A file of the same path is laid over the guide's: a map goes into a map entry by entry, and anything else
takes the place of what was there. `name+` adds to the list of that name and takes nothing away. There is no
sign for taking an entry out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from triage.guide.files import OWN
from triage.guide.find import Folder
from triage.guide.shapes import Reading
from triage.guide.text import Fields, Items, Written
from triage.problems import Place

Layers = list[tuple[str, Folder]]

MORE = "+"
"""At the end of a name: what follows is added to the list of that name."""

WORDS = "words.yaml"
"""Other words for texts of the guide; they are laid over it last (`rewording.py`)."""


def layered(files: Layers, own: Layers) -> Iterator[tuple[str, Layers]]:
    """Yield the path of each file, and where it is read from: the guide, and then the person's own."""
    mine = {name: file for name, file in own if name != WORDS}
    for name, file in files:
        over = mine.pop(name, None)
        yield name, [(name, file), *([(f"{OWN}/{name}", over)] if over is not None else [])]
    yield from ((name, [(f"{OWN}/{name}", file)]) for name, file in mine.items())


def fitted(layers: Sequence[Fields | None], reading: Reading) -> Fields | None:
    """Return the layers of a file as one; None where any of them could not be read."""
    whole: Fields | None = None
    for layer in layers:
        if layer is None:
            return None
        whole = layer if whole is None else _over(whole, layer, reading)
    return whole


def _over(under: Fields, over: Fields, reading: Reading) -> Fields:
    fields, keys = dict(under.fields), dict(under.keys)
    for key, written in over.fields.items():
        name, place = key.removesuffix(MORE), over.keys[key]
        if key.endswith(MORE):
            value = _added(fields.get(name), written, place, reading)
        elif isinstance(written, Fields) and isinstance(fields.get(name), Fields):
            value = _over(fields[name], written, reading)
        else:
            value = written
        if name in fields and isinstance(fields[name], Fields) and isinstance(value, Fields):
            place = keys[name]  # an entry that is only fitted stays where it was written
        fields[name], keys[name] = value, place
    return Fields(fields, keys, under.place)


def _added(under: Written | None, more: Written, place: Place, reading: Reading) -> Written:
    old = under.items if isinstance(under, Items) else () if under is None else (under,)
    if not isinstance(more, Items) or isinstance(under, Fields):
        reading.wrong(place, "a name with + adds to a list; write a list after it, each line '- ...'")
        return more if under is None else under
    return Items((*old, *more.items), more.place)
