"""This holding: whom to phone, where it is, and what the people here like and may do."""
