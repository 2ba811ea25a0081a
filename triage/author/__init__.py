"""For authors: what a new part of the guidance begins as, and what else it asks for."""
