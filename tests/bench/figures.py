"""Figures and the one table that every measuring script prints."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

HEADS = ("what", "measured", "baseline", "ratio", "limit", "")


@dataclass(frozen=True, slots=True)
class Figure:
    """One measurement, the baseline it stands beside, and the most that it or their ratio may be."""

    what: str
    measured: float
    unit: str = "ms"
    baseline: float | None = None
    limit: float | None = None
    limit_ratio: float | None = None

    @property
    def ratio(self) -> float | None:
        """How many baselines the measured value is."""
        return self.measured / self.baseline if self.baseline else None

    @property
    def limited(self) -> bool:
        """Whether any limit is set on this figure."""
        return self.limit is not None or self.limit_ratio is not None

    @property
    def passed(self) -> bool:
        """Whether every limit set is kept."""
        kept = self.limit is None or self.measured <= self.limit
        if self.limit_ratio is None:
            return kept
        return kept and self.ratio is not None and self.ratio <= self.limit_ratio

    def cells(self) -> tuple[str, ...]:
        """Return the figure as a row of texts."""
        ratio = "" if self.ratio is None else f"{self.ratio:.2f}"
        limits = [] if self.limit is None else [shown(self.limit, self.unit)]
        limits += [] if self.limit_ratio is None else [f"ratio {self.limit_ratio:.2f}"]
        verdict = ("pass" if self.passed else "FAIL") if self.limited else ""
        beside = "" if self.baseline is None else shown(self.baseline, self.unit)
        return self.what, shown(self.measured, self.unit), beside, ratio, ", ".join(limits), verdict


def shown(value: float, unit: str) -> str:
    """Return a value with its unit; a count is whole."""
    return f"{value:.0f}" if unit == "count" else f"{value:.1f} {unit}"


def table(sections: Sequence[tuple[str, Sequence[Figure]]]) -> str:
    """Return sections of figures as one table with shared columns; a section's title names its baseline."""
    rows = [HEADS, *(figure.cells() for _, figures in sections for figure in figures)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(HEADS))]
    lines = [_line(HEADS, widths), "  ".join("-" * width for width in widths)]
    for title, figures in sections:
        lines += [title, *(_line(figure.cells(), widths) for figure in figures)]
    return "\n".join(lines)


def _line(cells: Sequence[str], widths: Sequence[int]) -> str:
    what, *numbers = (
        cell.ljust(width) if not column else cell.rjust(width)
        for column, (cell, width) in enumerate(zip(cells, widths, strict=True))
    )
    return "  ".join((what, *numbers)).rstrip()


def report(*sections: tuple[str, Sequence[Figure]]) -> int:
    """Print sections as one table; return 1 when any limit is exceeded, else 0."""
    print(table(sections))
    failed = [figure.what for _, figures in sections for figure in figures if not figure.passed]
    if failed:
        print(f"\nOver the limit: {'; '.join(failed)}")
    return int(bool(failed))


def percentile(values: Sequence[float], share: float) -> float:
    """Return the smallest value that at least this share of the values do not exceed."""
    return sorted(values)[max(0, math.ceil(share * len(values)) - 1)]


def middle_and_best(
    what: str, ours: Sequence[float], theirs: Sequence[float], limit_ratio: float | None = None
) -> list[Figure]:
    """Return two figures, both held to the limit: other jobs can make either one pass by luck."""
    return [
        Figure(f"{what}, median", median(ours), baseline=median(theirs), limit_ratio=limit_ratio),
        Figure(f"{what}, best", min(ours), baseline=min(theirs), limit_ratio=limit_ratio),
    ]
