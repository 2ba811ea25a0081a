"""The files of a knowledge folder."""

from __future__ import annotations

from triage.guide.find import Folder


def list_files(folder: Folder) -> list[tuple[str, Folder]] | str:
    """List a knowledge folder's files by their path inside it, or tell why that can't be done."""
    try:
        files = _files(folder)
    except OSError as error:
        return f"the knowledge folder {folder} can't be read: {error.strerror or error}"
    if not any(name == "guide.yaml" for name, _ in files):
        return f"there is no guide.yaml in the knowledge folder {folder}"
    return files


def _files(folder: Folder) -> list[tuple[str, Folder]]:
    """List the YAML files by their path inside the folder, in a settled order."""
    found: list[tuple[str, Folder]] = []
    for entry in sorted(folder.iterdir(), key=lambda each: each.name):
        if entry.name.startswith("."):
            continue
        if entry.is_dir():
            inner = sorted(entry.iterdir(), key=lambda each: each.name)
            found += [(f"{entry.name}/{each.name}", each) for each in inner if _is_yaml(each.name)]
        elif _is_yaml(entry.name):
            found.append((entry.name, entry))
    return found


def _is_yaml(name: str) -> bool:
    return name.endswith((".yaml", ".yml")) and not name.startswith(".")
