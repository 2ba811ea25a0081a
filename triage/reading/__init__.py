"""Reading: every statement of the guide as a page, with what it leans on, what leans on it, and a search."""
