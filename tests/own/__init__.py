"""An own folder, and what is held to its check before it is used."""
