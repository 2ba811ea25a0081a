"""Finding the holding in its usual place; light to load, as it is done beside other work."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from pathlib import Path

    from triage.holding.holding import HeldRead


class Found(NamedTuple):
    """What was read of the holding, and where it is; no place where there is none."""

    place: Path | None
    read: HeldRead | None
    there: bool


def find_holding() -> Found:
    """Read the holding from its usual place."""
    from triage.holding.file import read_holding
    from triage.holding.place import Nowhere, holding_file

    place = holding_file()
    if isinstance(place, Nowhere):
        return Found(None, None, False)
    read = read_holding(place)
    # A folder that may not be looked into makes Path.exists raise, and the guide must open all the same.
    return Found(place, read, bool(read.problems) or os.path.exists(place))
