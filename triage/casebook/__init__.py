"""The casebook: lambs, their walks and what was seen of them, kept in one SQLite file."""
