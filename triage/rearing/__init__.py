"""Raising a lamb: what is due by its age, its milk week by week, its growth, its energy, and weaning.

Everything is worked out from the guide and what is known of the lamb; nothing here prints or asks.
"""

from triage.rearing.plan import Plan, plan_of
from triage.rearing.reared import Reared

__all__ = ["Plan", "Reared", "plan_of"]
