"""Damage to the shipped guide, such as a tired editor does, and who notices it."""
