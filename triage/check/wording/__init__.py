"""Wording: what a tired person can read, orders that can be followed, and no trade word left unexplained."""
