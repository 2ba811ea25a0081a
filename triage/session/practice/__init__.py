"""The rooms of practice: who practises, a round, a drill, and what was shown."""
