"""What changed between two guides: which lambs end otherwise, and all that says something else than before.

`compare(old, new)` returns a `Comparison`. Every lamb is followed through both guides at once; how is told in
`joint.py`.
"""

from triage.compare.compared import (
    ActDifference,
    Comparison,
    Difference,
    LostCaution,
    LostRule,
    NumberMoved,
    Reworded,
)
from triage.compare.engine import compare
from triage.compare.lambs import Said

__all__ = [
    "ActDifference",
    "Comparison",
    "Difference",
    "LostCaution",
    "LostRule",
    "NumberMoved",
    "Reworded",
    "Said",
    "compare",
]
