"""The handover: what a keeper says to a vet on the phone, and what stands behind each line of it."""

from triage.handover.composing import handover_of
from triage.handover.situation import Handover, Situation, Told

__all__ = ["Handover", "Situation", "Told", "handover_of"]
