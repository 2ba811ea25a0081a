"""The files of a knowledge folder."""

from __future__ import annotations

from triage.guide.find import Folder

OWN = "own"
"""How the folder is called, in places and digests, that fits the guide to a holding."""

CHANGES = "changes.yaml"
REVIEWS = "reviews"
ASIDE = (CHANGES, REVIEWS)
"""What is about the guidance and no part of it: why it was changed, and who has signed it."""


KNOWN = ".known"
"""The folder for what the program keeps beside a guide; no guidance is read from names with a dot."""


def list_files(folder: Folder) -> list[tuple[str, Folder]] | str:
    """List a knowledge folder's files by their path inside it, or tell why that can't be done."""
    try:
        files = [each for each in _files(folder) if each[0].partition("/")[0] not in ASIDE]
    except OSError as error:
        return f"the knowledge folder {folder} can't be read: {error.strerror or error}"
    if not any(name == "guide.yaml" for name, _ in files):
        return f"there is no guide.yaml in the knowledge folder {folder}"
    return files


def own_files(folder: Folder | None) -> list[tuple[str, Folder]] | str:
    """List the files of an own folder by their path inside it; there are none where there is no folder."""
    if folder is None:
        return []
    try:
        return [each for each in _files(folder) if each[0].partition("/")[0] not in ASIDE]
    except OSError as error:
        return f"your own folder {folder} can't be read: {error.strerror or error}"


def digest_of(folder: Folder, own: Folder | None = None) -> str | None:
    """Return a digest of all guidance in a folder and an own folder; None where a file can't be read."""
    import hashlib  # where the guide is read ahead it is the child that needs it

    files, mine = list_files(folder), own_files(own)
    if isinstance(files, str) or isinstance(mine, str):
        return None
    digest = hashlib.sha256()
    try:
        for name, file in (*files, *((f"{OWN}/{name}", file) for name, file in mine)):
            # As git may write lines' ends anew, they are no change of the guidance.
            held = file.read_bytes()
            held = held.replace(b"\r\n", b"\n") if b"\r" in held else held
            digest.update(name.encode() + b"\0" + held + b"\0")
    except OSError:
        return None
    return digest.hexdigest()


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
