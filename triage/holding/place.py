"""Where things are kept: the platform's own folders, or why there is no such place."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

APP = "bummer-triage"
NO_HOME = "this machine names no home folder"


@dataclass(frozen=True)
class Nowhere:
    """There is no place to keep something; `why` is half a sentence."""

    why: str


def holding_file() -> Path | Nowhere:
    """Return where the holding is written down, in the platform's folder for settings."""
    return _in("user_config_path", "holding.yaml")


def shelf_file() -> Path | Nowhere:
    """Return where it is written down what is on the shelf, beside the holding."""
    return _in("user_config_path", "shelf.txt")


def own_folder() -> Path | None:
    """Return the folder that fits the guide to this holding; None where there is none.

    It lies beside the holding, or where TRIAGE_OWN says; TRIAGE_OWN left empty means none.
    """
    named = os.environ.get("TRIAGE_OWN")
    if named is not None:
        return Path(named) if named else None
    place = _in("user_config_path", "own")
    if isinstance(place, Nowhere):
        return None
    try:
        return place if place.is_dir() else None
    except PermissionError:
        return place  # there may be one: it is told that it can't be read, and not left out in silence
    except OSError:
        return None


def casebook_file() -> Path | Nowhere:
    """Return where the casebook is, in the platform's folder for a program's data."""
    return _in("user_data_path", "casebook.sqlite")


def cache_folder() -> Path | Nowhere:
    """Return the platform's folder for what can be made again at any time."""
    return _in("user_cache_path", "")


def _in(
    folder: Literal["user_config_path", "user_data_path", "user_cache_path"], name: str
) -> Path | Nowhere:
    import platformdirs

    try:
        place = Path(getattr(platformdirs, folder)(APP, appauthor=False)) / name
    except (OSError, RuntimeError, KeyError):
        return Nowhere(NO_HOME)
    # Earlier versions of the library leave an unknown home a tilde: a folder of that name would be made here.
    return place if place.is_absolute() else Nowhere(NO_HOME)
