"""A lamb's story: everything that was answered, done and seen, in the order of time."""

from triage.timeline.blocks import blocks
from triage.timeline.entries import Entry, timeline
from triage.timeline.plot import Reading, plot, series

__all__ = ["Entry", "Reading", "blocks", "plot", "series", "timeline"]
