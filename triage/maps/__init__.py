"""Maps: the way through a topic, as values, as a drawing and as lines of text."""
