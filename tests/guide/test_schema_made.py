"""The schemas and the reader agree on files made at random from the table of fields."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from hypothesis import event, given, settings
from hypothesis import strategies as st
from jsonschema import Draft7Validator

from tests.conftest import SMALL, write_small
from tests.guide.editor import as_editor
from tests.guide.made import Made, Names, emit, how_tos, made, spoiled, topics
from triage.guide import fields
from triage.guide.names import names_in
from triage.guide.read import read_guide
from triage.guide.schema import file_schema, schema_name
from triage.problems import errors

UNSAID = re.compile(
    "|".join(
        (
            r"write the lower number first",
            r"has no choice|is not a choice of",
            r"is chosen, not measured|is measured; use",
            r"is in .*; .*(is measured in|needs a number of time)",
            r"is already defined at|is here twice",
            r"the sums? (take|need|know)|the sum '|is the name of a sum",
            r"says it is never unsure",
            r"multiplied are no weight, volume or count",
            r"unless_told|says what a walk is about|holds for the whole walk",
        )
    )
)
"""What a schema can't say: how one number stands to another, and what hangs on the thing named."""


def entry(shape: object) -> Callable[[Names], Made]:
    """Return the making of a file with one entry."""
    return lambda names: st.fixed_dictionaries({"made": made(shape, names)})


MAKES: Mapping[str, Callable[[Names], Made]] = {
    "guide.yaml": lambda names: made(fields.FRONT, names),
    "findings/made.yaml": entry(fields.FINDING),
    "topics/made.yaml": topics,
    "how-to/made.yaml": how_tos,
    "numbers.yaml": entry(fields.NUMBER),
    "glossary.yaml": entry(fields.TERM),
    "sources.yaml": entry(fields.SOURCE),
    "rules.yaml": entry(fields.RULE),
    "cupboard.yaml": entry(fields.ITEM),
}
BESIDE = {name: SMALL[name] for name in ("numbers.yaml", "sources.yaml")}
"""Files whose own entries stay beside what is made, as other files name them."""


@pytest.fixture(scope="module")
def small_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the small guide, for a made file at a time."""
    return write_small(tmp_path_factory.mktemp("small"))


@pytest.mark.parametrize("file", MAKES)
def test_the_schema_agrees_with_the_reader(file: str, small_folder: Path) -> None:
    """What the reader accepts the schema accepts, and what it refuses the schema refuses, but for UNSAID."""
    names = names_in(small_folder).names
    path = small_folder / file
    before = SMALL.get(file)

    @settings(max_examples=100, deadline=None)
    @given(st.data())
    def agrees(data: st.DataObject) -> None:
        tree = data.draw(MAKES[file](names))
        if data.draw(st.booleans(), "spoil it"):
            tree = data.draw(spoiled(tree))
        text = emit(tree, bare=data.draw(st.booleans(), "leave the quotes out"))
        if file in BESIDE:
            text = BESIDE[file] + (text[1:-1] + "\n" if len(tree) == 1 else "")
        path.write_text(text, encoding="utf-8")
        refused = [each.what for each in errors(read_guide(small_folder).problems) if each.place.file == file]
        schema = file_schema(schema_name(file), names_in(small_folder).names)
        said = [each.message for each in Draft7Validator(schema).iter_errors(as_editor(text))]
        event("refused" if refused else "accepted")
        if not refused:
            assert not said
        elif not all(map(UNSAID.search, refused)):
            assert said, refused

    try:
        agrees()
    finally:
        path.unlink()
        if before is not None:
            path.write_text(before, encoding="utf-8")
