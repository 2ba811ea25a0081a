"""Standing behind the guidance: its statements, who has read them, what changed, when to read it again."""
