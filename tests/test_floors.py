"""A floor of the house imports only from floors below it: the code is held to the table in DEVELOPERS.md."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

HOUSE = Path(__file__).parents[1]
CODE = HOUSE / "triage"
DOOR = {"__init__.py", "__main__.py"}
"""What stands before the house: it is on no floor."""


def floors() -> dict[str, int]:
    """Each file or folder of the table with the number of its floor, the lowest first."""
    table = (HOUSE / "DEVELOPERS.md").read_text(encoding="utf-8").split("## The house")[1].split("\n## ")[0]
    rows = re.findall(r"^\| (`[^|]+) \|", table, re.MULTILINE)
    return {name: number for number, row in enumerate(rows) for name in re.findall("`([^`]+)`", row)}


def floor_of(path: str, table: dict[str, int]) -> int | None:
    """The floor of a file, by the longest name of the table that it is, or lies in."""
    names = [name for name in table if path == name or (name.endswith("/") and path.startswith(name))]
    return table[max(names, key=len)] if names else None


def imported(tree: ast.Module) -> Iterator[str]:
    """Yield the modules of this project that a file imports while it runs, at its head or in a function."""
    for node in ast.walk(tree):
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test):
            node.body = []
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").partition(".")[0] == "triage":
            yield from (f"{node.module}.{each.name}" for each in node.names)
        elif isinstance(node, ast.Import):
            yield from (each.name for each in node.names if each.name.startswith("triage."))


def file_of(module: str) -> str | None:
    """The file that holds a module, or the name that is taken from it."""
    parts = module.split(".")[1:]
    while parts:
        for file in ("/".join(parts) + ".py", "/".join(parts) + "/__init__.py"):
            if (CODE / file).is_file():
                return file
        parts.pop()
    return None


def climbing(files: dict[str, str], table: dict[str, int]) -> Iterator[str]:
    """Yield each import that leads to a higher floor, and each file that is on none."""
    for path, code in files.items():
        here = floor_of(path, table)
        if here is None:
            yield f"{path} is on no floor"
            continue
        for file in filter(None, map(file_of, imported(ast.parse(code)))):
            there = floor_of(file, table)
            if there is not None and there > here:
                yield f"{path} imports {file}"


def test_no_floor_imports_from_one_above_it() -> None:
    """Also not inside a function; what is imported for types alone is no floor's business."""
    files = {
        file.relative_to(CODE).as_posix(): file.read_text(encoding="utf-8") for file in CODE.rglob("*.py")
    }

    assert list(climbing({path: code for path, code in files.items() if path not in DOOR}, floors())) == []


def test_the_table_names_what_there_is() -> None:
    """A file or folder that has gone is taken out of the table."""
    assert [
        name for name in floors() if not any((place / name).exists() for place in (CODE, HOUSE / "knowledge"))
    ] == []


def test_an_import_upwards_is_found() -> None:
    """The face in a sum, at the head or hidden in a function, and a file that nobody placed."""
    wrong = {
        "units.py": "from triage.plain import run\n",
        "rearing/plan.py": "def late():\n    import triage.session.plan\n",
        "walk.py": "if TYPE_CHECKING:\n    from triage.plain import run\n",
        "stray.py": "",
    }
    assert list(climbing(wrong, floors())) == [
        "units.py imports plain.py",
        "rearing/plan.py imports session/plan.py",
        "stray.py is on no floor",
    ]
